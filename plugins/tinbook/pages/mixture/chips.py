"""The strip of tins at the bench: the house's own and those a mixture is written for, drawn to one scale."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from tinbook.pages.base.icons import icon
from tinbook.pages.spelling import formats
from tinbook.plans.base.scaling import TinRow

EM = 0.0095
"""em for 1 mm in the strip: a 25 cm tin stands 2.4 em high."""
NAMED = {"round": "Round", "square": "Square"}
"""Shapes with a group of their own; the rest stand together, each under its shape."""
REST = "Other"
NOT_OWNED = "to borrow"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChipView:
    """A tin to touch: its name in the data, the words under it, its description, its drawing."""

    name: str
    label: str
    words: str
    plan: Markup
    lent: bool
    chosen: bool


@dataclass(frozen=True, slots=True)
class ChipGroup:
    """Chips under their shape."""

    title: str
    chips: tuple[ChipView, ...]


def chips(rows: Sequence[TinRow], written: str) -> tuple[ChipGroup, ...]:
    """The tins of a table that the house owns, and the `written` one, by shape. The rest are under "Other size"."""
    shown = [row for row in rows if row.owned or row.tin.name == written]
    shapes = Counter(row.tin.shape for row in shown)
    groups: dict[str, list[ChipView]] = {}
    for row in shown:
        title = NAMED.get(row.tin.shape, REST)
        groups.setdefault(title, []).append(_chip(row, row.tin.name == written, alone=shapes[row.tin.shape] == 1))
    order = sorted(groups, key=lambda title: title == REST)
    return tuple(ChipGroup(title, tuple(groups[title])) for title in order)


def _chip(row: TinRow, chosen: bool, alone: bool) -> ChipView:
    tin, lent = row.tin, not row.owned
    return ChipView(
        name=tin.name,
        label=_label(row, alone),
        words=", ".join(
            word for word in (formats.cups_said(tin.name), tin.size_label_in, NOT_OWNED if lent else "") if word
        ),
        plan=icon(tin, row.owned, EM),
        lent=lent,
        chosen=chosen,
    )


def _label(row: TinRow, alone: bool) -> str:
    """As short as tells them apart: `20`, `23×33`, `2 lb`, `ring`; `heart 20` beside another heart."""
    tin = row.tin
    bare = tin.name.replace(" cm", "").replace(" in", "").replace(" x ", "×")
    sizes = bare.replace(tin.shape, "").strip()
    if tin.shape in NAMED or "×" in sizes or not bare.startswith(tin.shape):
        return formats.kept_together(tin.shape if tin.kind.in_trays and alone else sizes)
    return formats.kept_together(tin.shape if alone else bare)
