"""The tins: one row for each outline, the house's own among them, and the factor from any to any."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding, scaling
from tinbook.models import Book
from tinbook.models.ledger import once
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.tins import SHAPES, Sizes, Tin, standard_tins
from tinbook.tins.trade import true_mm

MATRIX_SHAPES = ("round", "square")
EGGS = (3, 4, 5, 6, 8, 10)
"""The egg counts for which a recipe's scaling to another tin is shown."""
OWN_DEPTH = saying("by_own_depth")
"""What a factor goes by where the two cakes are not baked to the same depth."""
BAKED_MM = (50.0, 75.0, 100.0)
"""How deep a cake is baked, by its name in centimetres: common practice, no source."""


@once
def house_outlines(book: Book) -> tuple[tuple[Tin, bool], ...]:
    """Every outline a recipe's tables show, once, and whether the house owns it: the standard ones of the everyday
    shapes and of those the house asks for, every tin the house owns, and what it only knows where its shape is shown.

    A tin of the house has a row of its own, with its own depth and measure; if it owns two depths, the deeper one.
    """
    shown = tuple(key for key, shape in SHAPES.items() if shape.everyday or key in book.house.also_show)
    return _outlines(book, shown)


@once
def all_outlines(book: Book) -> tuple[tuple[Tin, bool], ...]:
    """The same with every standard outline of every shape, for pages about tins."""
    return _outlines(book, tuple(SHAPES))


def _outlines(book: Book, shapes: tuple[str, ...]) -> tuple[tuple[Tin, bool], ...]:
    known: dict[tuple[str, Sizes], tuple[Tin, bool]] = {}
    shown = [own for own in book.tins if own.have or own.tin.shape in shapes]
    for own in sorted(shown, key=lambda own: (own.have > 0, own.tin.depth_mm or 0), reverse=True):
        known.setdefault((own.tin.shape, own.tin.sizes_mm), (own.measured_tin, own.have > 0))
    missing = [tin for tin in standard_tins(shapes, book.house.tins_sold_in) if (tin.shape, tin.sizes_mm) not in known]
    order = list(SHAPES)
    rows = [*known.values(), *((tin, False) for tin in missing)]
    return tuple(sorted(rows, key=lambda row: (order.index(row[0].shape), row[0].area_mm2)))


@dataclass(frozen=True, slots=True, kw_only=True)
class TinFacts:
    """A tin's sizes: area cm², perimeter mm, ml to the brim at `depth_mm`, ml at the batter depth at which tins are
    compared, and the nearest other tin of the house.

    Anything that ends in `shown` and a unit is rounded for print.
    """

    tin: Tin
    owned: bool
    depth_mm: float
    area_cm2: float
    perimeter_mm: float
    brim_ml: float
    compared_ml: float
    area_shown_cm2: float
    perimeter_shown_cm: float
    brim_shown_ml: float
    nearest: Tin | None
    nearest_factor: float
    nearest_factor_shown: float

    @property
    def tray_ml(self) -> float:
        """The ml compared; for cups, a whole tray's."""
        return self.compared_ml * self.tin.holes

    @property
    def tray_brim_shown_ml(self) -> float:
        """ml to the brim; for cups, a whole tray's."""
        return rounding.litres(self.brim_ml * self.tin.holes)


@dataclass(frozen=True, slots=True, kw_only=True)
class TinToTin:
    """From one tin to another: the factor, exact and as printed, and what each of EGGS becomes."""

    old: TinFacts
    new: TinFacts
    factor: float
    factor_shown: float
    eggs: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Shelf:
    """All tins, and `factors[i][j]`: batter for tin j over batter for tin i, at the same batter depth.

    `house`: the tins the house owns; where it owns fewer than two, those of the matrix.
    """

    tins: tuple[TinFacts, ...]
    house: tuple[TinFacts, ...]
    matrix: tuple[tuple[Tin, bool], ...]
    factors: tuple[tuple[float, ...], ...]
    factors_shown: tuple[tuple[float, ...], ...]
    house_factors_shown: tuple[tuple[float, ...], ...]
    depth_mm: float
    worked: Worked
    sizes_worked: Worked


def batter_depth_mm(book: Book) -> float:
    """The batter depth at which tins are compared: half the depth the house usually works in."""
    return book.house.usual_deep_mm / 2


def depths_mm(book: Book) -> tuple[float, ...]:
    """The depths a cake can be baked to, mm: those of the trade, with the house's usual one in place of the nearest."""
    usual = book.house.usual_deep_mm
    trade = [true_mm(named, book.house.tins_sold_in) for named in BAKED_MM]
    nearest = min(trade, key=lambda deep: abs(deep - usual))
    return tuple(usual if deep == nearest else deep for deep in trade)


def factor_between(old: Tin, new: Tin, depth_mm: float) -> float:
    """How many times the mixture for `old` fills `new`, batter `depth_mm` deep in both; cups by what they hold."""
    return scaling.factor(_compared_ml(new, depth_mm), _compared_ml(old, depth_mm))


def factor_shown(old: Tin, new: Tin, book: Book) -> float:
    """That factor at the depth the house's tins are compared at, rounded for print."""
    return rounding.factor(factor_between(old, new, batter_depth_mm(book)))


def _compared_ml(tin: Tin, depth_mm: float) -> float:
    return tin.brim_ml() / 2 if tin.kind.kept == "share" else tin.volume_ml(depth_mm)


def tin_to_tin(old: TinFacts, new: TinFacts) -> TinToTin:
    """What to multiply a recipe for one tin by for another; cups by the tray, as nobody bakes a single one."""
    factor = scaling.factor(new.tray_ml, old.tray_ml)
    return TinToTin(
        old=old,
        new=new,
        factor=factor,
        factor_shown=rounding.factor(factor),
        eggs=tuple(scaling.whole_eggs(eggs, factor).eggs for eggs in EGGS),
    )


def shelf(book: Book) -> Shelf:
    """Everything the page of tins shows."""
    depth_mm = batter_depth_mm(book)
    outlines = all_outlines(book)
    rows = tuple(tin_facts(tin, owned, book) for tin, owned in outlines)
    matrix = tuple((tin, owned) for tin, owned in outlines if tin.shape in MATRIX_SHAPES)
    owned_rows = tuple(row for row in rows if row.owned)
    house = owned_rows if len(owned_rows) > 1 else tuple(row for row in rows if row.tin.shape in MATRIX_SHAPES)
    factors = tuple(tuple(factor_between(old, new, depth_mm) for new, _ in matrix) for old, _ in matrix)
    shown = tuple(tuple(rounding.factor(factor) for factor in line) for line in factors)
    return Shelf(
        tins=rows,
        house=house,
        matrix=matrix,
        factors=factors,
        factors_shown=shown,
        house_factors_shown=tuple(tuple(tin_to_tin(old, new).factor_shown for new in house) for old in house),
        depth_mm=depth_mm,
        worked=_worked(depth_mm),
        sizes_worked=_sizes_worked(book, depth_mm),
    )


def at_depths(row: TinFacts, book: Book) -> tuple[TinFacts, ...]:
    """A tin as it is compared for each of the depths a cake can be baked to."""
    return tuple(tin_facts(row.tin, row.owned, book, baked_mm) for baked_mm in depths_mm(book))


def tin_facts(tin: Tin, owned: bool, book: Book, baked_mm: float | None = None) -> TinFacts:
    """What a tin measures and holds, and the nearest other one of the house; compared for a cake `baked_mm` deep, or
    as deep as the house usually bakes."""
    depth_mm = batter_depth_mm(book) if baked_mm is None else baked_mm / 2
    as_house = tin.kind.everyday and tin.kind.kept == "depth"
    deep_mm = tin.depth_mm or (book.house.usual_deep_mm if as_house else tin.brim_mm)
    nearest = _nearest(tin, book, depth_mm)
    factor = factor_between(tin, nearest, depth_mm) if nearest else 0.0
    area_cm2, perimeter_mm, brim_ml = tin.area_mm2 / 100, tin.perimeter_mm, tin.brim_ml(deep_mm)
    return TinFacts(
        tin=tin,
        owned=owned,
        depth_mm=deep_mm,
        area_cm2=area_cm2,
        perimeter_mm=perimeter_mm,
        brim_ml=brim_ml,
        compared_ml=_compared_ml(tin, depth_mm),
        area_shown_cm2=rounding.half_up(area_cm2, 1.0),
        perimeter_shown_cm=rounding.half_up(perimeter_mm / 10, 0.5),
        brim_shown_ml=rounding.litres(brim_ml),
        nearest=nearest,
        nearest_factor=factor,
        nearest_factor_shown=rounding.factor(factor),
    )


MOST_APART = 2.0
"""A tin that takes more than this many times the mixture, or less than that fraction of it, is never the nearest."""


def _nearest(tin: Tin, book: Book, depth_mm: float) -> Tin | None:
    """The owned tin that could replace another: of the same purpose, and of its own or an everyday shape, nearest in
    mixture. None if none is near; cups, and outlines a house has drawn, have no replacement."""
    if tin.kind.purpose in ("cups", "outline"):
        return None
    near: dict[Tin, float] = {}
    for other, had in all_outlines(book):
        alike = other.kind.everyday or other.shape == tin.shape or other.kind.purpose != "cake"
        if had and other != tin and other.kind.purpose == tin.kind.purpose and alike:
            ratio = factor_between(tin, other, depth_mm)
            near[other] = max(ratio, 1.0 / ratio)
    nearest = min(near, key=lambda other: near[other], default=None)
    return nearest if nearest and near[nearest] <= MOST_APART else None


def _worked(depth_mm: float) -> Worked:
    inputs = saying("tins_compared_at", deep_mm=depth_mm), saying("tin_volume")
    return Worked(saying("tin_to_tin"), inputs, ("common practice",))


def _sizes_worked(book: Book, depth_mm: float) -> Worked:
    inputs = (
        saying("depth_of_the_house", deep_mm=book.house.usual_deep_mm),
        saying("nearest_by_batter", deep_mm=depth_mm),
        saying("sizes_of_the_trade", sold=book.house.tins_sold_in),
    )
    return Worked(saying("tin_volume"), inputs, ("common practice",))
