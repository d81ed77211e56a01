"""How a cake travels: its box and those of its tiers, how high a shelf it needs, what is put together where."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.engine.boards import box_mm
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.cakes import SIDE, TOP
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.cakes.stacking import Level
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import tier_said
from tinbook.plans.cakes.weights import CakeWeights, Heft
from tinbook.plans.cakes.whole import WholeCake


@dataclass(frozen=True, slots=True, kw_only=True)
class Boxed:
    """Something to carry: what it is (None for the whole cake), its box inside in mm, wide, long and high, what it
    weighs, and whether that wants two people."""

    said: Saying | None
    box_mm: tuple[float, float, float]
    box_shown_mm: tuple[float, float, float]
    weight: Heft
    for_two: bool


@dataclass(frozen=True, kw_only=True)
class Journey:
    """What is carried: the whole, or each tier by itself where it is put together on site. `steps`: what is done where;
    `take`: what to take along, each with the grams of it that are worth having; `remarks`: what stands in its way."""

    whole: Boxed | None
    tiers: tuple[Boxed, ...]
    goes_whole: bool
    steps: tuple[Saying, ...]
    take: tuple[Saying, ...]
    warm_c: tuple[float, float]
    remarks: tuple[Saying, ...]


def journey(cake: WholeCake, weights: CakeWeights, book: Book, facts: Facts) -> Journey:
    """How a cake travels. A box leaves as much room beside and above as the house says."""
    drum, goes_whole = cake.stacked.drum, cake.design.goes_whole
    whole = None
    if drum is not None and drum.box_mm and drum.box_shown_mm:
        whole = Boxed(
            said=None,
            box_mm=drum.box_mm,
            box_shown_mm=drum.box_shown_mm,
            weight=weights.whole,
            for_two=not fits(weights.whole.high_g, weights.two_g),
        )
    apart = [each for each in weights.tiers if each.tier.cake is not None]
    tiers = tuple(
        _tier_box(each.tier, level, each.whole, len(cake.tiers), whole, weights.two_g)
        for each, level in zip(apart, cake.stacked.levels, strict=True)
    )
    warm = facts.numbers["cake on the way"]
    return Journey(
        whole=whole,
        tiers=tiers if len(apart) > 1 else (),
        goes_whole=goes_whole,
        steps=tuple(_steps(cake)),
        take=tuple(_take(cake, facts)),
        warm_c=(warm.value if warm.low is None else warm.low, warm.value if warm.high is None else warm.high),
        remarks=tuple(_in_the_way(cake, goes_whole, whole, tiers, book)),
    )


def _tier_box(tier: TierWorked, level: Level, weight: Heft, count: int, whole: Boxed | None, two_g: float) -> Boxed:
    """A tier on its card or, the lowest, on the board of the whole."""
    settled = tier.asked.settled
    lowest = tier.asked.place == 0
    high = (level.top_mm if lowest else tier.high_mm + level.card_mm) + settled["box_above"]
    if lowest and whole is not None:
        sides = whole.box_mm[:2]
    else:
        wide, long = (box_mm(side, settled["box_beside"]) for side in tier.guide_mm)
        sides = wide, long
    inside = (*sides, high)
    return Boxed(
        said=tier_said(tier, count),
        box_mm=inside,
        box_shown_mm=(rounding.ruler_cm(inside[0]), rounding.ruler_cm(inside[1]), rounding.ruler_cm(inside[2])),
        weight=weight,
        for_two=not fits(weight.high_g, two_g),
    )


def _steps(cake: WholeCake) -> list[Saying]:
    """What is put together at home, and what on site."""
    found = []
    if len(cake.tiers) > 1:
        found.append(saying("goes_out_whole") if cake.design.goes_whole else saying("goes_out_in_tiers"))
    if any(figure.on in (SIDE, TOP) for figure in cake.figures):
        found.append(saying("figures_go_on_last"))
    return found


def _take(cake: WholeCake, facts: Facts) -> list[Saying]:
    """What to take along: some of each paste in sight, what sticks, tools, and what holds it up."""
    spare_g = facts.numbers["spare paste"].value
    found = [
        saying("take_paste", paste=total.paste, colour=total.colour.name if total.colour else None, spare_g=spare_g)
        for total in cake.pastes
        if any(amount.what.key != "in_a_decoration" for amount in total.amounts)
    ]
    if any(tier.covered and not tier.covered.paste for tier in cake.tiers):
        found += [saying("take_icing", mixture=total.batch.mixture.name) for total in cake.mixtures[-1:]]
    if cake.figures or len(cake.tiers) > 1:
        found.append(saying("take_glue"))
    if len(cake.tiers) > 1:
        found += [saying("take_spare_dowel")] if any(cake.stacked.dowels) else []
        found.append(saying("take_to_stack"))
    found.append(saying("take_always"))
    return found


def _in_the_way(
    cake: WholeCake, goes_whole: bool, whole: Boxed | None, tiers: tuple[Boxed, ...], book: Book
) -> list[Saying]:
    """Boxes the house does not have, and shelves it is too high for."""
    tallest, shelf = book.house.tallest_box, book.house.fridge_shelf
    found = []
    if tallest and whole and not fits(whole.box_mm[2], tallest):
        told = {"high_mm": whole.box_shown_mm[2], "tallest_mm": tallest}
        too_tall = saying("taller_than_a_box", **told) if goes_whole else saying("whole_taller_than_a_box", **told)
        found.append(too_tall)
    if tallest:
        found += [
            saying("tier_taller_than_a_box", tier=each.said, high_mm=each.box_shown_mm[2], tallest_mm=tallest)
            for each in tiers
            if not fits(each.box_mm[2], tallest)
        ]
    stands_mm = cake.stacked.high_mm
    if shelf and stands_mm and not fits(stands_mm, shelf):
        found.append(saying("too_high_for_the_fridge", high_mm=cake.stacked.high_shown_mm, shelf_mm=shelf))
    return found
