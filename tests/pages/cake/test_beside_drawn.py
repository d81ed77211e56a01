"""What is served beside a cake is drawn beside it, to scale, with nothing over anything else."""

from __future__ import annotations

import pytest
from tests.pages.cake.conftest import box, shapes
from tests.plans.cakes.conftest import Made

from tinbook.pages.cake.beside_drawn import beside_paths, served_beside
from tinbook.pages.cake.elevation import elevation

CAKE = {"tiers": "15 cm", "mixture": "madeira-cake"}


def test_a_cake_beside_is_as_wide_and_high_as_it_is(made: Made) -> None:
    cake = made({**CAKE, "beside": ["square 20 cm"]})
    drawn = elevation(cake, "a cake")
    assert drawn is not None
    left, top, right, foot = box(shapes(drawn.svg, "tb-served")[0])
    (tier,) = cake.beside
    assert (right - left, top - foot) == pytest.approx((tier.guide_mm[0], tier.high_mm), abs=0.5)
    assert foot == 0.0
    others = [box(each) for each in (*shapes(drawn.svg, "tb-tier"), *shapes(drawn.svg, "tb-drum"))]
    assert left > max(each[2] for each in others)
    wide = float(drawn.svg.partition('viewBox="')[2].split()[0])
    assert wide < left < right < wide + float(drawn.svg.partition('viewBox="')[2].split()[2])


def test_cups_are_one_cup_and_their_number(made: Made) -> None:
    cake = made({**CAKE, "beside": [{"tier": "36 standard cups", "mixture": "cupcakes"}]})
    paths, right = beside_paths(served_beside(cake), 100.0, 20.0, 1.0)
    assert any("36 ×" in each for each in paths) and right == pytest.approx(120.0 + 70.0)
    assert "M120.0" in paths[0]


def test_domes_and_balls(made: Made) -> None:
    for tin, tag in (("dome 15 cm", "<path"), ("ball 15 cm", "<ellipse")):
        paths, _ = beside_paths(served_beside(made({**CAKE, "beside": [tin]})), 0.0, 20.0, 1.0)
        assert paths[0].startswith(tag)


def test_nothing_beside_changes_nothing(made: Made) -> None:
    assert beside_paths(served_beside(made(CAKE)), 80.0, 20.0, 1.0) == ([], 80.0)
