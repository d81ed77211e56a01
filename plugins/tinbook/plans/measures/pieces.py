"""The small sums of a bake: how many pieces a batter makes, how much they need, what can be made of what is left."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from tinbook.engine import pieces, rounding, scaling
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import same_outline
from tinbook.plans.base.worked import Worked

BATTERS_G = (500.0, 750.0, 1000.0, 1200.0, 1500.0, 2000.0, 3000.0)
EACH_G = (20.0, 30.0, 45.0, 60.0, 75.0, 100.0)
COUNTS = (6, 12, 18, 24, 36, 48)
EGGS = (1, 2, 3, 4, 5, 6, 7, 8)
CUPCAKE = "cupcake"
CASE_G = 45.0
"""What a case takes if the house has logged none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecesRow:
    """`batter_g` in cases of `each_g`: how many, the range as more or less stays in the bowl, what is left, and the
    weight of one when baked."""

    batter_g: float
    each_g: float
    count: int
    count_low: int
    count_high: int
    left_g: float
    baked_g: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededRow:
    """`count` pieces of `each_g`: the batter to mix, and its range."""

    count: int
    each_g: float
    batter_g: float
    batter_low_g: float
    batter_high_g: float


@dataclass(frozen=True, slots=True)
class LeftRow:
    """A recipe for `asked` of something (eggs, 100 g), made with the `left` you have: what to multiply by."""

    asked: float
    left: float
    exact_factor: float
    shown_factor: float


@dataclass(frozen=True, kw_only=True)
class SmallSums:
    """All of them, and the figures the page's script needs: what a case takes, what stays in the bowl, what is lost in
    baking. `each_g` are the sizes in the tables; `logged` says whether the house's own is among them."""

    each_g: tuple[float, ...]
    case_g: float
    logged: bool
    pieces: tuple[PiecesRow, ...]
    needed: tuple[NeededRow, ...]
    left: tuple[LeftRow, ...]
    lost: float
    lost_low: float
    lost_high: float
    baked_off: float
    pieces_worked: Worked
    needed_worked: Worked
    left_worked: Worked


def logged_case_g(book: Book) -> float | None:
    """What the house puts into a case: the median of its logged bakes in trays as the recipe has, to 1 g."""
    logged = [
        entry.batter
        for entry in book.bakes
        if entry.batter
        and (mixture := book.mixtures.get(entry.of))
        and mixture.kind == CUPCAKE
        and any(same_outline(entry.tin, tin) for _, tin in mixture.tins)
    ]
    return rounding.half_up(median(logged), 1.0) if logged else None


def small_sums(book: Book, facts: Facts, batters_g: tuple[float, ...] = BATTERS_G) -> SmallSums:
    """The tables, for these batters or the usual ones, in cases of the usual sizes and the house's own."""
    own_g = logged_case_g(book)
    sizes_g = EACH_G if own_g is None else tuple(sorted({*EACH_G, own_g}))
    lost = facts.numbers["batter left in the bowl"]
    low, high = lost.low or lost.value, lost.high or lost.value
    loss = facts.kinds[CUPCAKE].loss
    assert loss is not None  # cupcakes are baked
    inputs = (
        saying("batter_lost", share=lost.value, low=low, high=high),
        saying("cupcake_loses", share=loss.typical, low=loss.low, high=loss.high),
    )
    sources = tuple(dict.fromkeys((lost.source, loss.source)))
    rows = []
    for batter_g in batters_g:
        for each_g in sizes_g:
            count, left_g = pieces.pieces_from(batter_g, each_g, lost.value)
            least, most = (pieces.pieces_from(batter_g, each_g, bound)[0] for bound in (high, low))
            baked_g = rounding.half_up(each_g * (1 - loss.typical), 1.0)
            rows.append(
                PiecesRow(
                    batter_g=batter_g,
                    each_g=each_g,
                    count=count,
                    count_low=least,
                    count_high=most,
                    left_g=rounding.half_up(left_g, 1.0),
                    baked_g=baked_g,
                )
            )
    needed = []
    for count in COUNTS:
        for each_g in sizes_g:
            usual_g, low_g, high_g = (
                rounding.half_up(pieces.batter_for(count, each_g, share), 1.0) for share in (lost.value, low, high)
            )
            needed.append(
                NeededRow(count=count, each_g=each_g, batter_g=usual_g, batter_low_g=low_g, batter_high_g=high_g)
            )
    left = [
        LeftRow(float(written), float(eggs), factor, rounding.factor(factor))
        for written in EGGS
        for eggs in EGGS
        for factor in [scaling.factor(eggs, written)]
    ]
    return SmallSums(
        each_g=sizes_g,
        case_g=CASE_G if own_g is None else own_g,
        logged=own_g is not None,
        pieces=tuple(rows),
        needed=tuple(needed),
        left=tuple(left),
        lost=lost.value,
        lost_low=low,
        lost_high=high,
        baked_off=loss.typical,
        pieces_worked=Worked(saying("how_many"), inputs, sources),
        needed_worked=Worked(saying("batter_needed"), inputs[:1], (lost.source,)),
        left_worked=Worked(saying("from_left"), (saying("left_in_one_unit"),), ("common practice",)),
    )
