"""Portions at a glance: every tin, what a portion weighs, and the published chart beside ours."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts, Served
from tinbook.models import Book
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.worked import Worked
from tinbook.plans.portions.cut import Cut
from tinbook.plans.portions.cutting import Portion, cut_of, portion_sizes, ring_cut
from tinbook.plans.portions.tables import portion_grams, portions_worked
from tinbook.tins import Tin

STEP_G = 5.0
INCH_MM = 25.4
CHART_MM = {"dessert": (INCH_MM, 2 * INCH_MM), "broad": (1.5 * INCH_MM, 2 * INCH_MM)}
"""The portions of the published chart, exactly."""


@dataclass(frozen=True, slots=True)
class TinPortions:
    """A tin and its plans by kind of portion; for a round, the second plans too."""

    tin: Tin
    owned: bool
    cuts: Mapping[str, Cut]
    ring_cuts: Mapping[str, Cut]


@dataclass(frozen=True, slots=True)
class PortionWeights:
    """The weight of a portion of one kind of cake at each height, by kind of portion and in the order of heights."""

    title: str
    grams: Mapping[str, tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class SameWeight:
    """How long a portion of the same width must be at another height to weigh the same."""

    height_mm: float
    long_shown_mm: Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Against:
    """A size on the published chart and what our plans give for it, in exact inches."""

    served: Served
    dessert: int
    broad: int
    dessert_off_percent: float
    broad_off_percent: float


@dataclass(frozen=True, kw_only=True)
class Glance:
    """Everything on one page."""

    portions: Mapping[str, Portion]
    height_mm: float
    heights_mm: tuple[float, ...]
    tins: tuple[TinPortions, ...]
    weights: tuple[PortionWeights, ...]
    same: tuple[SameWeight, ...]
    against: tuple[Against, ...]
    worked: Worked
    same_worked: Worked


def glance(book: Book, facts: Facts) -> Glance:
    """At the heights the house makes its cakes, the usual one first."""
    sizes, heights = portion_sizes(book, facts), finishing(book.finish, facts).heights_mm
    return Glance(
        portions=sizes,
        height_mm=heights[0],
        heights_mm=heights,
        tins=tuple(TinPortions(tin, owned, *plans_of(tin, book, facts)) for tin, owned in all_outlines(book)),
        weights=tuple(_weights(key, sizes, heights, book, facts) for key, kind in facts.kinds.items() if kind.rise),
        same=tuple(
            SameWeight(
                height,
                {kind: rounding.ruler(portion.long_mm * heights[0] / height) for kind, portion in sizes.items()},
            )
            for height in heights
        ),
        against=tuple(against(served) for served in facts.portions.values()),
        worked=portions_worked(sizes, saying("cake_to_cut", high_mm=heights[0]), facts),
        same_worked=_same_worked(sizes, heights[0], facts),
    )


def plans_of(tin: Tin, book: Book, facts: Facts) -> tuple[Mapping[str, Cut], Mapping[str, Cut]]:
    """The plans of one tin by kind of portion, and the second ones of a round."""
    sizes, height_mm = portion_sizes(book, facts), finishing(book.finish, facts).heights_mm[0]
    cuts = {kind: cut_of(tin, portion, height_mm) for kind, portion in sizes.items()}
    ring_cuts = {kind: cut for kind, portion in sizes.items() if (cut := ring_cut(tin, portion))}
    return cuts, ring_cuts


def usual_grams(portion: Portion, book: Book, facts: Facts, height_mm: float, kind: str = "creamed") -> float:
    """The exact weight of a portion: baked cake of one kind, without filling or coats."""
    row = facts.kinds[kind]
    rise = (book.finish.rise or {}).get(kind) or (row.rise.typical if row.rise else 1.0)
    return portion_grams(portion, row, height_mm, rise)


def shown_g(grams: float) -> float:
    """As a guest would be told."""
    return rounding.at_least_one(grams, STEP_G)


def _weights(
    key: str, sizes: Mapping[str, Portion], heights: tuple[float, ...], book: Book, facts: Facts
) -> PortionWeights:
    grams = {
        kind: tuple(shown_g(usual_grams(portion, book, facts, height, key)) for height in heights)
        for kind, portion in sizes.items()
    }
    return PortionWeights(facts.kinds[key].title, grams)


def against(served: Served) -> Against:
    """Our counts for one size on the published chart."""
    tin = Tin(shape=served.shape, sizes_mm=tuple(inches * INCH_MM for inches in served.inches))
    ours = {kind: cut_of(tin, Portion(kind, *sides, ""), 0.0).count for kind, sides in CHART_MM.items()}
    off = {kind: rounding.half_up(100.0 * (count / getattr(served, kind) - 1.0), 1.0) for kind, count in ours.items()}
    return Against(
        served=served,
        dessert=ours["dessert"],
        broad=ours["broad"],
        dessert_off_percent=off["dessert"],
        broad_off_percent=off["broad"],
    )


def _same_worked(sizes: Mapping[str, Portion], usual_mm: float, facts: Facts) -> Worked:
    """How a portion of the same weight was worked out, from the house's usual height."""
    written = tuple(
        saying("portion_size", kind=portion.kind, short_mm=portion.short_mm, long_mm=portion.long_mm)
        for portion in sizes.values()
    )
    sources = (portion.said_by for portion in sizes.values() if portion.said_by in facts.sources)
    inputs = (saying("usual_height", high_mm=usual_mm), *written)
    return Worked(saying("same_weight"), inputs, tuple(dict.fromkeys(sources)) or ("our own judgement",))
