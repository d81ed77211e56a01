"""A cake as a solid: shells against outer solid less inner solid by scipy, laws over every shape."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import simpson
from tests.every import every

from tinbook.plans.finish.cake import Cake
from tinbook.tins import SHAPES, Tin, read_tin

UPRIGHT = [key for key, shape in SHAPES.items() if shape.solid == "upright" and not shape.in_trays]
COATED = [key for key, shape in SHAPES.items() if not shape.in_trays]


def tins(key: str) -> list[Tin]:
    shape = SHAPES[key]
    return [Tin(shape=key, sizes_mm=sizes, depth_mm=depth) for sizes, depth in shape.standard] or [
        read_tin(shape.example)[1]
    ]


@every("key", UPRIGHT)
def test_a_shell_is_the_outer_solid_less_the_inner_one(key: str) -> None:
    """The outline grows by P(t) dt: its area is integrated from the edges, and a top is put on."""
    for tin in tins(key):
        cake, thickness = Cake(tin, 100.0, 4), 5.0
        if not cake.room_for(thickness):
            continue
        steps = np.linspace(0.0, thickness, 101)
        sides = simpson([cake.outline.grown(by).edge_mm for by in steps], x=steps)
        outer = (cake.outline.area_mm2 + sides) * (cake.height_mm + thickness)
        assert cake.shell_ml(0.0, thickness) * 1000 == pytest.approx(outer - cake.outline.area_mm2 * 100.0, rel=2e-3)


@every("key", COATED)
def test_coats_never_shrink_as_they_thicken(key: str) -> None:
    for tin in tins(key):
        cake = Cake(tin, 100.0, 4)
        coats = [cake.shell_ml(0.0, by) for by in (0.0, 1.0, 2.0, 4.0, 8.0) if cake.room_for(by)]
        assert coats == sorted(coats)
        assert coats[0] == pytest.approx(0.0)
        two = cake.shell_ml(0.0, 2.0) + cake.shell_ml(2.0, 3.0)
        assert two == pytest.approx(cake.shell_ml(0.0, 5.0), rel=1e-3) or not cake.room_for(5.0)


@every("key", [key for key in COATED if not SHAPES[key].free])
def test_lengths_doubled_take_eight_times_as_much(key: str) -> None:
    for tin in tins(key):
        twice_mm = tuple(2.0 * size for size in tin.sizes_mm)
        if SHAPES[key].fault(twice_mm):
            continue
        one, two = Cake(tin, 80.0, 4), Cake(Tin(shape=key, sizes_mm=twice_mm), 160.0, 4)
        if not one.room_for(4.0):
            continue
        assert two.shell_ml(0.0, 8.0) == pytest.approx(8.0 * one.shell_ml(0.0, 4.0), rel=2e-3), tin.name
        assert two.surface_mm2(0.0) == pytest.approx(4.0 * one.surface_mm2(0.0), rel=2e-3)


def test_a_half_ball_and_a_ball() -> None:
    dome, ball = (
        Cake(Tin(shape="dome", sizes_mm=(150.0,)), 100.0, 1),
        Cake(Tin(shape="ball", sizes_mm=(150.0,)), 100.0, 1),
    )
    assert (dome.stands_mm, ball.stands_mm) == (75.0, 150.0)
    assert dome.surface_mm2(0.0) == pytest.approx(2 * math.pi * 75**2)
    assert ball.shell_ml(0.0, 5.0) == pytest.approx(2 * dome.shell_ml(0.0, 5.0))
    # the surface is what a thin coat grows by
    assert dome.shell_ml(0.0, 1e-4) * 1000 / 1e-4 == pytest.approx(dome.surface_mm2(0.0), rel=1e-4)


@pytest.mark.parametrize(
    ("text", "disc"),
    [("round 20 cm", True), ("octagon 20 cm", True), ("square 20 cm", False), ("hexagon 20 cm", False)],
)
def test_a_disc_is_for_what_is_as_wide_as_long_without_square_corners(text: str, disc: bool) -> None:
    cake = Cake(read_tin(text)[1], 100.0, 4)
    assert cake.takes_disc() == cake.takes_disc(6.0) == disc


def test_a_dome_is_filled_slice_by_slice() -> None:
    """By hand: a half ball of 60 mm radius in three slices is cut at 20 and at 40 mm; a ball of it in two at its middle."""
    dome = Cake(Tin(shape="dome", sizes_mm=(120.0,)), 100.0, 3)
    cuts_mm2 = math.pi * (60**2 - 20**2) + math.pi * (60**2 - 40**2)
    assert dome.filled_ml(5.0) == pytest.approx(cuts_mm2 * 5 / 1000)
    inside = math.pi * (math.sqrt(60**2 - 20**2) - 10) ** 2 + math.pi * (math.sqrt(60**2 - 40**2) - 10) ** 2
    assert dome.filled_ml(5.0, 10.0) == pytest.approx(inside * 5 / 1000)
    assert Cake(Tin(shape="ball", sizes_mm=(120.0,)), 100.0, 2).filled_ml(5.0) == pytest.approx(math.pi * 3.6 * 5)
    assert Cake(Tin(shape="dome", sizes_mm=(120.0,)), 100.0, 1).filled_ml(5.0) == 0.0
