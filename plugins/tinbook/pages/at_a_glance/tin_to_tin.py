"""From tin to tin: the matrix with its heads, and the answer beside it before any script has run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from markupsafe import Markup

from tinbook.pages.at_a_glance.on_hand import shows_on_hand
from tinbook.pages.base.icons import EM, icon, paths, plan
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import factor_by
from tinbook.plans.base.shelf import EGGS, MATRIX_SHAPES, Shelf, TinFacts, shelf, tin_to_tin
from tinbook.tins import SHAPES, Tin

WIDEST_EM = 5.0
"""How wide the larger of two tins is drawn, one laid on the other."""
SAID_EGGS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixHead:
    """A tin of the matrix: its name for the scripts, its drawing, its size as the house gives it, its other name."""

    name: str
    called: str
    drawn: Markup
    shape: str
    size: str
    also: str
    owned: bool
    first: bool
    long: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MatrixCell:
    """A factor, spelled; `more` if it takes more mixture than the tin on the left; `first` begins another shape."""

    text: str
    more: bool
    same: bool
    first: bool


@dataclass(frozen=True, slots=True)
class MatrixLine:
    """A tin on the left and the factors to every tin along the top."""

    head: MatrixHead
    cells: tuple[MatrixCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Matrix:
    """Factors from every tin on the left to every tin along the top. `widest_em`: how wide the widest is drawn."""

    title: str
    unit: str
    heads: tuple[MatrixHead, ...]
    lines: tuple[MatrixLine, ...]
    widest_em: float


@dataclass(frozen=True, slots=True)
class By:
    """What a factor can go by: a key for the script, the words, and whether it does so between these two tins."""

    key: str
    words: str
    told: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TinAnswer:
    """What the page says about two tins, spelled."""

    old: str
    new: str
    plans: Markup
    factor: str
    said_eggs: int
    becomes: int
    ladder: tuple[tuple[int, int], ...]
    brim_old: str
    brim_new: str
    nearest_to: str
    nearest: str
    by: tuple[By, ...]


@dataclass(frozen=True)
class TinToTinView:
    """What both pages of tins say: the answer for two tins, and where it comes from."""

    desk: Desk

    @cached_property
    def shelf(self) -> Shelf:
        """The sums."""
        return shelf(self.desk.book)

    @property
    def answer(self) -> TinAnswer:
        """From the first of the house's tins to the second."""
        return answer(*self.shelf.house[:2])

    @property
    def from_name(self) -> str:
        """The name of the tin the answer starts from, for the script."""
        return self.shelf.house[0].tin.name

    @property
    def to_name(self) -> str:
        """And of the one it goes to."""
        return self.shelf.house[1].tin.name

    @property
    def on_hand(self) -> bool:
        """Whether there is a page of what fits the house's tins."""
        return shows_on_hand(self.desk.book)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.shelf.worked,), self.desk.facts)


def matrix(
    title: str, olds: Sequence[tuple[Tin, bool]], news: Sequence[tuple[Tin, bool]], shown: Sequence[Sequence[float]]
) -> Matrix:
    """The matrix from `olds` to `news`, each tin with whether it is owned; `shown` are the factors as printed."""
    rows, heads = _heads(olds), _heads(news)
    lines = []
    for head, factors in zip(rows, shown, strict=True):
        cells = (
            MatrixCell(text=formats.fixed(factor, 2), more=factor > 1, same=head.name == above.name, first=above.first)
            for factor, above in zip(factors, heads, strict=True)
        )
        lines.append(MatrixLine(head, tuple(cells)))
    sides = [side for tin, _ in (*olds, *news) for side in tin.bounds_mm]
    unit = "in" if olds[0][0].sold == "inches" else "cm"
    return Matrix(title=title, unit=unit, heads=heads, lines=tuple(lines), widest_em=round(max(sides) * EM, 2))


def _heads(tins: Sequence[tuple[Tin, bool]]) -> tuple[MatrixHead, ...]:
    groups = [tin.shape if tin.shape in MATRIX_SHAPES else "" for tin, _ in tins]
    heads = []
    for place, (tin, owned) in enumerate(tins):
        names = [tin.size_label.split(",")[0], tin.size_label_in.split(",")[0]]
        size, also = names[::-1] if tin.sold == "inches" and names[1] else names
        bare = size.removesuffix(" cm").removesuffix(" in").replace(" x ", "×")
        short = f"{tin.holes} cups" if tin.kind.in_trays else bare.replace("number ", f"no.{formats.NBSP}")
        heads.append(
            MatrixHead(
                name=tin.name,
                called=called(tin),
                drawn=icon(tin, owned),
                shape=SHAPES[tin.shape].title,
                size=short,
                also=formats.tin_words(also),
                owned=owned,
                first=place > 0 and groups[place] != groups[place - 1],
                long=len(short) > 4,
            )
        )
    return tuple(heads)


def answer(old: TinFacts, new: TinFacts) -> TinAnswer:
    """The answer for two tins, as the script gives it for any."""
    told = tin_to_tin(old, new)
    em = WIDEST_EM / max(*old.tin.bounds_mm, *new.tin.bounds_mm)
    near = "none"
    if new.nearest:
        near = f"{formats.tin_words(new.nearest.name)}, ×{formats.NBSP}{formats.fixed(new.nearest_factor_shown, 2)}"
    return TinAnswer(
        old=called(old.tin),
        new=called(new.tin),
        plans=plan(new.tin, em, " tb-to") + plan(old.tin, em, " tb-from"),
        factor=formats.fixed(told.factor_shown, 2),
        said_eggs=SAID_EGGS,
        becomes=told.eggs[EGGS.index(SAID_EGGS)],
        ladder=tuple(zip(EGGS, told.eggs, strict=True)),
        brim_old=formats.litres(old.tray_brim_shown_ml),
        brim_new=formats.litres(new.tray_brim_shown_ml),
        nearest_to=called(new.tin),
        nearest=near,
        by=_by(old, new),
    )


def called(tin: Tin) -> str:
    """`round 20 cm`, `12 standard cups`."""
    return formats.tin_words(f"{tin.holes} {tin.name}" if tin.kind.in_trays else tin.name)


def _by(old: TinFacts, new: TinFacts) -> tuple[By, ...]:
    so = factor_by((old.tin, new.tin))
    every = {"depth": "by_depth", "share": "by_brim", "both": "by_depth_and_brim"}
    return tuple(By(key, spell(saying(name)), saying(name) == so) for key, name in every.items())


def script_rows(rows: Sequence[TinFacts]) -> dict[str, Any]:
    """What the browser gets: each tin's name, size, the ml compared, and whether they are a share."""
    heads = (
        "name", "called", "inches", "shape", "title", "width_mm", "length_mm", "drawn", "share", "ml", "brim", "near",
        "near_factor",
    )  # fmt: skip
    return {"heads": heads, "rows": tuple(_script_row(row) for row in rows)}


def _script_row(row: TinFacts) -> tuple[Any, ...]:
    tin = row.tin
    return (
        tin.name,
        called(tin),
        formats.tin_words(tin.size_label_in),
        tin.shape,
        tin.kind.title,
        *tin.bounds_mm,
        paths(tin),
        int(tin.kind.kept == "share"),
        row.tray_ml,
        formats.litres(row.tray_brim_shown_ml),
        row.nearest.name if row.nearest else "",
        row.nearest_factor_shown,
    )
