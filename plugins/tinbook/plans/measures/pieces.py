"""The small sums of a bake: how many pieces a batter gives, how much they need, what can be made of what is left."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import pieces, rounding, scaling
from tinbook.facts import Facts
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked

BATTERS_G = (500.0, 750.0, 1000.0, 1200.0, 1500.0, 2000.0, 3000.0)
EACH_G = (20.0, 30.0, 45.0, 60.0, 75.0, 100.0)
COUNTS = (6, 12, 18, 24, 36, 48)
EGGS = (1, 2, 3, 4, 5, 6, 7, 8)
CUPCAKE = "cupcake"


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecesRow:
    """`batter_g` in cases of `each_g`: how many, the range as more or less stays in the bowl, what is left, and what
    one weighs when it is baked."""

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
    """A recipe for `asked` of something (eggs, 100 g), made with the `left` that there is: what to multiply by."""

    asked: float
    left: float
    exact_factor: float
    shown_factor: float


@dataclass(frozen=True, kw_only=True)
class SmallSums:
    """All of them, and the shares the page's own script needs: what stays in the bowl, what is lost in baking."""

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


def small_sums(facts: Facts, batters_g: tuple[float, ...] = BATTERS_G) -> SmallSums:
    """The tables, for the batters asked or the usual ones."""
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
        for each_g in EACH_G:
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
        for each_g in EACH_G:
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
