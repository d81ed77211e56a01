"""Templates of a whole cake: each decoration's at its tier's size, a plan for each tier with dowels."""

from tests.plans.cakes.conftest import Made

from tinbook.plans.cakes.templates import templates_of_cake
from tinbook.plans.true_size.dowelling import dowel_template
from tinbook.plans.true_size.parts import part_templates

LIGHT = {"technique": "lighthouse-for-the-front", "on": "board"}
CAKE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def wide(_: object) -> float:
    return 20.0


def test_every_part_and_every_dowel_plan_is_there_once(made: Made) -> None:
    cake = made({**CAKE, "decorations": [LIGHT, LIGHT, {**LIGHT, "tier": "2"}]})
    large, _, small = (part_templates(figure.parts, wide) for figure in cake.figures)
    plans = [dowel_template(each.plan) for each in cake.stacked.dowels if each]
    assert templates_of_cake(cake, wide) == (*large, *small, *plans) and len(plans) == 2


def test_a_bare_tier_has_none(made: Made) -> None:
    assert templates_of_cake(made({**CAKE, "tiers": "20 cm"}), wide) == ()
