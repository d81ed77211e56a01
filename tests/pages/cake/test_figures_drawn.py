"""Decorations in the drawing: their outlines, thinned without losing their ends."""

from __future__ import annotations

from math import cos, pi, sin

import pytest
from tests.pages.cake.conftest import FIGURED
from tests.plans.cakes.conftest import Made

from tinbook.pages.cake.figures_drawn import FINE_MM, figure_path, letter_of, outlines, placed, thinned


def test_letters_run_on_as_numbers() -> None:
    assert [letter_of(nth) for nth in (0, 25, 26)] == ["A", "Z", "27"]


def test_a_thinned_outline_keeps_its_ends() -> None:
    ring = tuple((50.0 * cos(pi * step / 500), 50.0 * sin(pi * step / 500)) for step in range(1000))
    thin = thinned(ring)
    assert len(thin) < 250
    for axis in (0, 1):
        for end in (min, max):
            assert end(point[axis] for point in thin) == end(point[axis] for point in ring)


def test_an_outline_stands_on_its_foot_about_its_middle_and_is_as_high_as_said(made: Made) -> None:
    for figure in made(FIGURED).figures:
        points = [point for ring in outlines(figure) for point in ring]
        assert min(y for _, y in points) == pytest.approx(0.0)
        assert max(y for _, y in points) == pytest.approx(figure.high_mm, abs=FINE_MM)
        assert min(x for x, _ in points) == pytest.approx(-max(x for x, _ in points))


def test_each_is_drawn_at_its_own_level(made: Made) -> None:
    cake = made(FIGURED)
    board, top, *sides = placed(cake, 0.8, 62.0, 20.0)
    assert board.foot_mm == cake.stacked.drum_mm + 3.0 and board.from_mm is not None
    assert top.foot_mm == cake.stacked.levels[-1].top_mm and top.from_mm is None
    for side, place in zip(sides, (1, 0), strict=True):
        level = cake.stacked.levels[place]
        assert (side.foot_mm + side.top_mm) / 2 == pytest.approx((level.foot_mm + level.top_mm) / 2)
    assert figure_path(board).count("<path") == len(board.rings)
