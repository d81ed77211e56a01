"""From tin to tin: the matrix with its heads, and the answer beside it before any script has run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import prod
from typing import Any

from markupsafe import Markup

from tinbook.models import Book
from tinbook.pages.at_a_glance.on_hand import shows_on_hand
from tinbook.pages.base.icons import EM, icon, paths, plan
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import factor_by
from tinbook.plans.base.shelf import (
    EGGS,
    MATRIX_SHAPES,
    OWN_DEPTH,
    Shelf,
    TinFacts,
    at_depths,
    depths_mm,
    shelf,
    tin_to_tin,
)
from tinbook.tins import SHAPES, Tin
from tinbook.units import MM_PER_INCH

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


@dataclass(frozen=True, slots=True)
class Deep:
    """A depth to bake to, spelled, and whether it is the house's usual one."""

    mm: float
    words: str
    usual: bool


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
    def chips(self) -> tuple[MatrixHead, ...]:
        """The tins a phone chooses from; none where there are too many to leaf through."""
        return ()

    @property
    def unit(self) -> str:
        """The unit of the depths."""
        return "in" if self.desk.book.house.tins_sold_in == "inches" else "cm"

    @property
    def depths(self) -> tuple[Deep, ...]:
        """The depths a cake can be baked to."""
        usual = self.desk.book.house.usual_deep_mm
        return tuple(Deep(deep, _length(deep, self.unit), deep == usual) for deep in depths_mm(self.desk.book))

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
            MatrixCell(
                text=_cell(factor, head.name == above.name),
                more=factor > 1,
                same=head.name == above.name,
                first=above.first,
            )
            for factor, above in zip(factors, heads, strict=True)
        )
        lines.append(MatrixLine(head, tuple(cells)))
    sides = [side for tin, _ in (*olds, *news) for side in tin.bounds_mm]
    unit = "in" if olds[0][0].sold == "inches" else "cm"
    return Matrix(title=title, unit=unit, heads=heads, lines=tuple(lines), widest_em=round(max(sides) * EM, 2))


def _cell(factor: float, same: bool) -> str:
    return formats.number(factor) if same and factor == 1 else formats.fixed(factor, 2)


def _length(length_mm: float, unit: str) -> str:
    return formats.number(length_mm / MM_PER_INCH if unit == "in" else length_mm / 10)


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
    plans = [plan(new.tin, em, " tb-to"), plan(old.tin, em, " tb-from")]
    if prod(new.tin.bounds_mm) < prod(old.tin.bounds_mm):
        plans.reverse()  # the smaller lies on the larger
    near = "none"
    if new.nearest:
        near = f"{formats.tin_words(new.nearest.name)}, ×{formats.NBSP}{formats.fixed(new.nearest_factor_shown, 2)}"
    return TinAnswer(
        old=called(old.tin),
        new=called(new.tin),
        plans=plans[0] + plans[1],
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
    by = (By(key, spell(saying(name)), saying(name) == so) for key, name in every.items())
    return (*by, By("own", spell(OWN_DEPTH), False))


def script_rows(rows: Sequence[TinFacts], book: Book) -> dict[str, Any]:
    """What the browser gets: each tin's name, size, whether it is filled to a share, the depth it has, and the ml
    compared and the nearest tin for each depth a cake can be baked to, or once where they are always the same."""
    heads = (
        "name", "called", "inches", "shape", "title", "width_mm", "length_mm", "drawn", "share", "deep_mm", "deep",
        "ml", "brim", "near", "near_factor",
    )  # fmt: skip
    return {"heads": heads, "rows": tuple(_script_row(row, at_depths(row, book)) for row in rows)}


def _script_row(row: TinFacts, at: Sequence[TinFacts]) -> tuple[Any, ...]:
    tin = row.tin
    deep_mm = 0.0 if tin.kind.kept == "share" else tin.depth_mm or 0.0
    unit = "in" if tin.sold == "inches" else "cm"
    return (
        tin.name,
        called(tin),
        formats.tin_words(tin.size_label_in),
        tin.shape,
        tin.kind.title,
        *tin.bounds_mm,
        paths(tin),
        int(tin.kind.kept == "share"),
        deep_mm,
        f"{_length(deep_mm, unit)}{formats.NBSP}{unit}" if deep_mm else "",
        _once([each.tray_ml for each in at]),
        formats.litres(row.tray_brim_shown_ml),
        _once([each.nearest.name if each.nearest else "" for each in at]),
        _once([each.nearest_factor_shown for each in at]),
    )


def _once(values: list[Any]) -> list[Any]:
    return values[:1] if all(value == values[0] for value in values) else values
