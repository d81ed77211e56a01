"""The sizes of a cake: what is offered can be built, a larger one never takes or serves less, others say why not."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given
from tests.every import many
from tests.plans.cakes.conftest import Design, cakes

from tinbook.loading import Loaded
from tinbook.models import CakeDesign
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.scaling import goes_on_a_shelf, owned_count
from tinbook.plans.cakes.asked import on_the_shelf
from tinbook.plans.cakes.sizes import CakeSize, CakeSizes, cake_sizes, size_called, size_for, stepped
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.tins import read_tin, standard_tins

THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm",
         "decorations": [{"technique": "lighthouse-for-the-front"}]}  # fmt: skip


def sizes(demo: Loaded, design: Design, data: dict[str, Any], **asked: Any) -> CakeSizes:
    return cake_sizes(design(data), demo.book, demo.facts, **asked)


def cake_at(demo: Loaded, cake: CakeDesign, found: CakeSizes, size: CakeSize, bakes: Bakes | None = None) -> WholeCake:
    """The cake worked out whole at a size."""
    return whole_cake("tide-cake", cake, demo.book, demo.facts, tins=size.tins, heights=found.heights, bakes=bakes)


def test_a_step_is_to_the_next_size_that_is_sold() -> None:
    assert [tin and tin.name for tin in (stepped(read_tin("round 20 cm")[1], steps) for steps in (-1, 0, 1, 2))] == [
        "round 18 cm",
        "round 20 cm",
        "round 23 cm",
        "round 25 cm",
    ]
    assert stepped(read_tin("round 21 cm")[1], 1) is None
    assert stepped(read_tin("round 40 cm")[1], 3) is None
    cups = read_tin("12 standard cups")[1]
    assert stepped(cups, 2) is cups


def test_three_tiers_and_their_steps(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, THREE)
    told = {size.key: [tin.across_mm / 10.0 for tin in size.tins] for size in found.sizes}
    assert (
        told["written"] == [25.0, 20.0, 15.0] and told["+1"] == [28.0, 23.0, 18.0] and told["+2"] == [30.0, 25.0, 20.0]
    )
    assert found.written.offered and found.written.borrow == ()
    up = size_called(found, "+1")
    assert up.offered and [tin.name for tin in up.borrow] == ["round 28 cm"]
    assert [spell(each) for each in up.remarks] == ["you have no 28 cm round tin"]


def test_what_cannot_be_says_why(demo: Loaded, design: Design) -> None:
    """The oven takes no 35 cm tin by the demo's shelf with its clearance; parts are for cakes of 10 to 30 cm."""
    others = {size.key: " ".join(spell(each) for each in size.why) for size in sizes(demo, design, THREE).others}
    assert others and all(others.values())
    assert "will not fit in your oven" in others["+4"]
    assert "10 to 30 cm" in others["+3"]


@given(data=cakes())
@many(300)
def test_every_size_offered_can_be_built_and_a_larger_one_takes_and_serves_no_less(
    demo: Loaded, design: Design, bakes: Bakes, data: dict[str, Any]
) -> None:
    cake, book = design(data), demo.book
    assume(not cake_flaws(cake, book, demo.facts))
    found = cake_sizes(cake, book, demo.facts)
    sold = {(tin.shape, tin.sizes_mm) for tin in standard_tins()}
    for size in found.offered:
        for tin in size.tins:
            assert goes_on_a_shelf(tin, book, demo.facts)
            own, owned = on_the_shelf(tin, book)
            assert owned == (owned_count(book, own) > 0)
            assert owned or size.steps == 0 or (tin.shape, tin.sizes_mm) in sold
        if size.steps:
            for lower, upper in pairwise(size.tins):
                assert 49.9 <= lower.bounds_mm[0] - upper.bounds_mm[0] <= 101.7
    made = [cake_at(demo, cake, found, size, bakes) for size in found.offered]
    for size, whole in zip(found.offered, made, strict=True):
        # what a size says before its sums are done is what they give
        assert size.serves == whole.serves == sum(tier.serves for tier in whole.every_tier)
        assert whole.stacked.drum is None or whole.stacked.drum.board.size_mm
        assert {tin.name for tin in size.borrow} == {
            tier.asked.tin.name for tier in whole.tiers if tier.baked and not tier.asked.owned
        }
    for small, large in pairwise(made):
        assert small.serves <= large.serves
        assert small.totals.paste_g <= large.totals.paste_g + 1e-6
        assert sum(each.made_g for each in small.mixtures) <= sum(each.made_g for each in large.mixtures) + 1e-6
        for one, other in zip(small.tiers, large.tiers, strict=True):
            # a deeper tin gives more layers, and so may leave fewer over
            if one.baked and other.baked and one.asked.tin.depth_mm == other.asked.tin.depth_mm:
                assert one.baked.whole.mass_g <= other.baked.whole.mass_g + 1e-6
    for size in found.others:
        if all(isinstance(each, str) for each in size.why):
            with pytest.raises(AskError, match=re.escape(str(size.why[0]))):
                cake_at(demo, cake, found, size, bakes)


def test_guests_get_the_smallest_size_that_serves_them(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, THREE)
    for guests in (10, 40, 73, 74, 90):
        size = size_for(found, guests)
        assert size.serves >= guests
        assert all(other.serves < guests or other.serves >= size.serves for other in found.offered)
    assert size_for(found, 73).key == "written"
    with pytest.raises(AskError, match="serves 5000"):
        size_for(found, 5000)


def test_in_other_tins_a_tier_is_as_high_as_in_its_own(demo: Loaded, design: Design) -> None:
    """As its recipe bakes in the tin it is written in, in as many layers."""
    plain = design({"tiers": "20 cm", "mixture": "madeira-cake"})
    found = cake_sizes(plain, demo.book, demo.facts)
    own = cake_at(demo, plain, found, found.written).tiers[0].cake
    assert own
    for size in found.offered:
        cake = cake_at(demo, plain, found, size).tiers[0].cake
        assert cake and (cake.layers, cake.stands_mm) == (own.layers, pytest.approx(own.stands_mm))


def test_a_top_tier_kept_back_serves_nobody(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, THREE, keep_top=True)
    assert found.written.serves == 73 - 11
    assert size_for(found, 63).area_mm2 > found.written.area_mm2


def test_sizes_with_a_name(demo: Loaded, design: Design) -> None:
    data = {**THREE, "sizes": {"Family": ["20 cm", "15 cm", "10 cm"], "odd": ["21 cm", "16 cm", "11 cm"]}}
    found = sizes(demo, design, data)
    assert size_called(found, "family").tins[0].name == "round 20 cm"
    assert size_called(found, "2").key == size_called(found, "+2").key == "+2"
    odd = size_called(found, "odd")
    assert not odd.offered and "and none is sold" in spell(odd.why[0])
    with pytest.raises(AskError, match='no size "familly"') as told:
        size_called(found, "familly")
    assert told.value.hint == 'did you mean "family"?'


def test_a_cake_in_a_tin_of_one_size_is_offered_as_written(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, {"tiers": "number 1", "mixture": "madeira-cake"})
    assert [size.key for size in found.sizes] == ["written"] and found.written.offered
    cups = sizes(demo, design, {"tiers": "24 standard cups", "mixture": "cupcakes"})
    assert [(size.key, size.serves) for size in cups.sizes] == [("written", 24)]


def test_a_cake_of_foam_alone_serves_nobody_and_is_still_made(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, {"tiers": [{"tier": "20 cm", "dummy": "yes"}]})
    assert found.written.offered and found.written.serves == 0 and found.written.borrow == ()
    small = sizes(demo, design, {"tiers": "round 5 cm", "mixture": "madeira-cake"}, portion="tea slice")
    assert [spell(each) for each in small.written.why] == ["its smallest tier is smaller than a portion"]


def test_figures_grow_and_marks_are_counted_anew(demo: Loaded, design: Design) -> None:
    found = sizes(demo, design, THREE)
    small, large = (cake_at(demo, design(THREE), found, size_called(found, key)) for key in ("-1", "+1"))
    assert small.figures[0].parts_g < large.figures[0].parts_g
    assert small.figures[0].parts.repeats[0].count <= large.figures[0].parts.repeats[0].count
