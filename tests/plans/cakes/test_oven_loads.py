"""A whole cake through the oven: every tin once, on the shelf by shapely, within its span, in the fewest loads there are.

Layouts are checked by shapely (https://shapely.readthedocs.io).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given
from shapely import box
from tests.every import many
from tests.plans.cakes.conftest import Design, Made, cakes

from tinbook.engine.loads import laid_out
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.scaling import owned_count
from tinbook.plans.cakes.oven_loads import OvenLoad, OvenPlan
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.rules.cakes import cake_flaws

THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "creamed-butter-sponge", "height": "10 cm"}


def in_kitchen(book: Book, **house: Any) -> Book:
    return replace(book, house=book.house.model_copy(update=house))


def check(cake: WholeCake, book: Book, clear_mm: float) -> None:
    """The plan against the cake's own tiers and times, and its layouts by shapely."""
    plan = cake.oven
    baked = [tier for tier in cake.every_tier if tier.baked]
    if plan is None:
        return
    filled = Counter[int]()
    for load in plan.loads:
        _check_shelves(load, book, clear_mm)
        counted = Counter[Any]()
        for each in load.tins:
            assert each.tier.baked is not None and each.tier.baked.time is not None
            time = each.tier.baked.time
            assert time.low_shown_min <= load.high_min and load.low_min <= time.high_shown_min
            assert load.low_min <= load.high_min and load.check_min <= load.low_min
            filled[id(each.tier)] += each.count
            counted[each.tin] += each.count
        for tin, count in counted.items():
            have = owned_count(book, tin)
            assert not have or count <= (max(1, have // tin.holes) if tin.kind.in_trays else have)
        assert sum(mix.mass_g for mix in load.mixes) == pytest.approx(sum(each.batter_g for each in load.tins))
    assert {id(tier): tier.baked.tins for tier in baked if tier.baked} == dict(filled)
    batter = sum(each.batter_g for load in plan.loads for each in load.tins)
    assert batter == pytest.approx(cake.totals.mixture_g)
    eggs = sum(each.eggs for load in plan.loads for each in load.tins)
    assert eggs == pytest.approx(cake.totals.eggs)
    assert cake.totals.bakes == len(plan.loads) <= sum(tier.baked.fit.bakes for tier in baked if tier.baked)


def _check_shelves(load: OvenLoad, book: Book, clear_mm: float) -> None:
    shelf = book.house.oven_shelf
    if shelf is None:
        assert load.shelves == ()
        return
    assert len(load.shelves) <= book.house.shelves
    inside = box(clear_mm, clear_mm, shelf[0] - clear_mm, shelf[1] - clear_mm).buffer(1e-6)
    assert sum(map(len, load.shelves)) == sum(each.count for each in load.tins)
    for on in load.shelves:
        for each in on:
            assert sorted((each.wide_mm, each.deep_mm)) == pytest.approx(sorted(load.of(each).tin.stand_mm))
        drawn = [box(each.x_mm, each.y_mm, each.x_mm + each.wide_mm, each.y_mm + each.deep_mm) for each in on]
        assert all(inside.contains(each) for each in drawn)
        assert all(one.distance(other) >= clear_mm - 1e-6 for one, other in combinations(drawn, 2))


@many(60)
@given(data=cakes())
def test_any_cake(data: dict[str, Any], demo: Loaded, design: Design, bakes: Bakes) -> None:
    found = design(data)
    if not cake_flaws(found, demo.book, demo.facts):
        whole = whole_cake("tide-cake", found, demo.book, demo.facts, bakes=bakes)
        check(whole, demo.book, demo.facts.numbers["oven clearance"].value)


def parted(tins: Sequence[int]) -> Iterator[list[list[int]]]:
    if not tins:
        yield []
        return
    first, *rest = tins
    for loads in parted(rest):
        yield [[first], *loads]
        for nth in range(len(loads)):
            yield [*loads[:nth], [first, *loads[nth]], *loads[nth + 1 :]]


@pytest.mark.parametrize(
    ("tiers", "shelf", "shelves"),
    [
        (["20 cm", "18 cm", "15 cm"], (600.0, 400.0), 1),
        (["18 cm", "15 cm", "13 cm", "10 cm"], (440.0, 360.0), 1),
        (["20 cm", "20 cm", "18 cm"], (440.0, 360.0), 2),
        (["25 cm", "23 cm", "20 cm"], (600.0, 600.0), 1),
    ],
)
def test_no_way_of_parting_the_tins_takes_fewer_loads(
    demo: Loaded, design: Design, tiers: list[str], shelf: tuple[float, float], shelves: int
) -> None:
    """Every way of parting up to eight tins into loads, each held to the same words: one heat, the slowest done before
    any other is overdone, on the shelves, no more of a tin than there are."""
    book = in_kitchen(demo.book, oven_shelf=shelf, shelves=shelves)
    bakes = Bakes(book, demo.facts)
    cake = whole_cake("tide-cake", design({**THREE, "tiers": tiers}), book, demo.facts, bakes=bakes)
    assert cake.oven is not None and cake.oven.proven
    check(cake, book, 10.0)
    tins = [tier.baked for tier in cake.tiers if tier.baked for _ in range(tier.baked.tins)]
    assert len(tins) <= 8

    def can_be(load: list[int]) -> bool:
        inside = [tins[nth] for nth in load]
        times = [each.time for each in inside if each.time]
        counted = Counter(each.fit.tin for each in inside)
        enough = all(not (have := owned_count(book, tin)) or count <= have for tin, count in counted.items())
        together = max(time.likely_min for time in times) <= min(time.high_shown_min for time in times)
        stand = tuple(each.fit.tin.stand_mm for each in inside)
        return enough and together and laid_out(stand, shelf, shelves, 10.0) is not None

    fewest = min(len(loads) for loads in parted(range(len(tins))) if all(map(can_be, loads)))
    assert len(cake.oven.loads) == fewest


def test_a_tin_owned_once_is_used_one_after_the_other(made: Made) -> None:
    """The demo has one 25 cm tin: its tier goes in twice, half the mix each time."""
    cake = made(THREE)
    wide = [each for load in plan_of(cake).loads for each in load.tins if each.tin.bounds_mm[0] == 250.0]
    assert [each.count for each in wide] == [1, 1]
    assert wide[0].batter_g == wide[1].batter_g == pytest.approx(cake.tiers[0].baked.whole.mass_g / 2)  # type: ignore[union-attr]


def test_two_heats_never_share(made: Made) -> None:
    cake = made({"tiers": ["20 cm", "15 cm"], "mixture": "creamed-butter-sponge", "beside": ["12 standard cups"]})
    heats = [{each.tier.baked.batch.slug for each in load.tins if each.tier.baked} for load in plan_of(cake).loads]
    assert len(plan_of(cake).loads) >= 2 and all(heats)
    mixed = made({"tiers": ["20 cm", {"tier": "15 cm", "mixture": "rich-fruit-cake"}], "mixture": "madeira-cake"})
    for load in plan_of(mixed).loads:
        assert len({each.tier.baked.batch.slug for each in load.tins if each.tier.baked}) == 1


def plan_of(cake: WholeCake) -> OvenPlan:
    assert cake.oven is not None
    return cake.oven


def test_a_shelf_nobody_has_measured_is_not_drawn(demo: Loaded, design: Design) -> None:
    book = in_kitchen(demo.book, oven_shelf=None)
    cake = whole_cake("tide-cake", design(THREE), book, demo.facts)
    assert plan_of(cake).loads and all(load.shelves == () for load in plan_of(cake).loads)


def test_foam_alone_bakes_nothing(made: Made) -> None:
    assert made({"tiers": [{"tier": "20 cm", "dummy": "yes"}]}).oven is None
