"""What stands under each tier, how much it carries, and the dowel through all of it."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from shapely import Point, Polygon
from tests.every import many
from tests.plans.cakes.conftest import Design, Made, bakes, cakes, design, made

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.making.held import HeldUp, held_up
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.tins.growth import ring_round

__all__ = ["bakes", "design", "made"]
THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def held(cake: WholeCake, demo: Loaded) -> HeldUp:
    return held_up(cake, cake_weights(cake, demo.book, demo.facts))


@many(40)
@given(data=cakes())
def test_dowels_share_what_stands_on_them_and_stand_under_it(
    data: dict[str, Any], demo: Loaded, design: Design, bakes: Bakes
) -> None:
    """By shapely: each stands inside the outline of the tier above by the inset, no two nearer than two diameters."""
    found = design(data)
    if cake_flaws(found, demo.book, demo.facts):
        return
    cake = whole_cake("tide-cake", found, demo.book, demo.facts, bakes=bakes)
    weights = cake_weights(cake, demo.book, demo.facts)
    for each in held_up(cake, weights).tiers:
        if each.under is None:
            assert each.held_by in ("board", "foam") and each.each_g is None
            continue
        plan = each.under.plan
        assert each.each_g is not None
        assert each.each_g * plan.count == pytest.approx(each.stands.mass_g)
        inside = Polygon(ring_round(plan.above, 0.0)).buffer(-plan.inset_mm + 0.5)
        assert all(inside.contains(Point(place)) for place in plan.places)
        apart = [Point(one).distance(Point(other)) for one in plan.places for other in plan.places if one != other]
        assert min(apart) >= 2.0 * plan.across_mm


def test_the_lowest_stands_on_the_board_with_all_of_it(made: Made, demo: Loaded) -> None:
    cake = made(THREE)
    found, weights = held(cake, demo), cake_weights(cake, demo.book, demo.facts)
    assert [(spell(each.said), each.held_by) for each in found.tiers] == [
        ("base, round 25 cm", "board"), ("middle, round 20 cm", "dowels"), ("top, round 15 cm", "dowels"),
    ]  # fmt: skip
    assert found.tiers[0].stands.mass_g == pytest.approx(sum(each.whole.mass_g for each in weights.tiers))
    assert [each.card_mm for each in found.tiers] == [250.0, 200.0, 150.0]


def test_a_dowel_through_what_is_driven_whole_or_is_tall(made: Made, demo: Loaded) -> None:
    """Three tiers of 111 mm, each on a card of 3, on 3 mm of paste and a foot of 272 mm are 1.2 times as tall as wide; driven whole they want it all the same,
    8 mm into the drum and 20 mm short of the top. Five are 2.0 times. Never on pillars."""
    assert held(made(THREE), demo).through_mm is None
    assert held(made({**THREE, "travels": "whole"}), demo).through_mm == pytest.approx(3.0 + 3 * 114.0 - 20.0 + 8.0)
    assert held(made({**THREE, "through dowel": "yes"}), demo).through_mm == pytest.approx(3.0 + 3 * 114.0 - 20.0 + 8.0)
    tall = made({**THREE, "tiers": ["25 cm", "23 cm", "20 cm", "18 cm", "15 cm"]})
    assert held(tall, demo).through_mm == pytest.approx(3.0 + 5 * 114.0 - 20.0 + 8.0)
    pillars = {"tiers": ["25 cm", "23 cm", "20 cm", {"tier": "18 cm", "on pillars": "60 mm"}, "15 cm"]}
    assert held(made({**THREE, **pillars}), demo).through_mm is None
    assert held(made({**THREE, "travels": "whole", "through dowel": "no"}), demo).through_mm is None
    assert held(made({**THREE, "tiers": ["20 cm"]}), demo).through_mm is None


def test_what_hangs_or_stands_is_said_with_its_weight(made: Made, demo: Loaded) -> None:
    cake = made({**THREE, "decorations": [
        {"technique": "heron-for-the-side", "on": "side", "tier": "2"},
        {"technique": "lighthouse-for-the-front", "on": "top", "sized for": "round 15 cm"},
        {"technique": "lighthouse-for-the-front", "on": "board"},
    ]})  # fmt: skip
    told = [spell(each) for each in held(cake, demo).remarks]
    assert len(told) == 3
    assert "hung on the side" in told[0] and "clear of the coat" in told[0]
    assert "on top, its centre of gravity" in told[1] and told[1].startswith("lighthouse for the front: ")
    assert "ask somebody who builds cakes like that" in told[2]
    assert held(made({"tiers": "20 cm", "mixture": "madeira-cake"}), demo).remarks == ()
