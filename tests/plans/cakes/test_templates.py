"""Templates of a whole cake: each decoration's at its tier's size, a plan for each tier with dowels."""

from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.plans.cakes.templates import templates_of_cake
from tinbook.plans.true_size.dowelling import dowel_template
from tinbook.plans.true_size.parts import part_templates

LIGHT = {"technique": "lighthouse-for-the-front", "on": "board"}
CAKE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def wide(_: object) -> float:
    return 20.0


def test_every_part_and_every_dowel_plan_is_there_once(made: Made, demo: Loaded) -> None:
    cake = made({**CAKE, "decorations": [LIGHT, LIGHT, {**LIGHT, "tier": "2"}]})
    large, _, small = (part_templates(figure.parts, wide) for figure in cake.figures)
    plans = [dowel_template(each.plan) for each in cake.stacked.dowels if each]
    assert templates_of_cake(cake, wide, demo.facts) == (*large, *small, *plans) and len(plans) == 2


def test_a_bare_tier_has_none(made: Made, demo: Loaded) -> None:
    assert templates_of_cake(made({**CAKE, "tiers": "20 cm"}), wide, demo.facts) == ()


def test_a_dowel_through_all_tiers_has_its_hole_in_each_plan(made: Made, demo: Loaded) -> None:
    whole = made({**CAKE, "travels": "whole"})
    plans = templates_of_cake(whole, wide, demo.facts)
    assert plans == tuple(dowel_template(each.plan, 12.0) for each in whole.stacked.dowels if each)
    assert all(len(each.strokes) == len(dowel_template(dowels.plan).strokes) + 1
               for each, dowels in zip(plans, whole.stacked.dowels, strict=False) if dowels)  # fmt: skip
