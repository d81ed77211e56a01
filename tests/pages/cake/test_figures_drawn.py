"""Decorations in the drawing: their outlines, thinned without losing their ends."""

from __future__ import annotations

from itertools import pairwise
from math import cos, pi, sin, sqrt

import pytest
from tests.pages.cake.conftest import FIGURED
from tests.plans.cakes.conftest import Made

from tinbook.pages.cake.figures_drawn import (
    FINE_MM,
    figure_path,
    in_front,
    letter_of,
    outlines,
    placed,
    side_by_side,
    thinned,
)


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


def test_several_stand_side_by_side_and_the_rest_behind(made: Made) -> None:
    """Widths by hand: a lighthouse for a 10 cm cake is 84 / 2 = 42 mm wide; 20 mm apart, (272 + 20) / 62 = 4 of them
    are no wider than the tier of 25 cm with 11 mm of coats and paste all round it."""
    said = {"technique": "lighthouse-for-the-front", "on": "top", "sized for": "round 10 cm", "gap": "2 cm"}
    for count, seen in ((1, 1), (3, 3), (4, 4), (7, 4)):
        cake = made({"tiers": "25 cm", "mixture": "madeira-cake", "cover": "sugarpaste",
                     "decorations": [{**said, "count": str(count)}]})  # fmt: skip
        (there,) = placed(cake, 0.8, 62.0, 20.0)
        assert (len(there.copies), there.behind, in_front(cake, 0)) == (seen, count - seen, seen)
        assert [right - left for left, _, right, _ in there.copies] == pytest.approx([42.0] * seen)
        gaps = [after[0] - before[2] for before, after in pairwise(there.copies)]
        assert gaps == pytest.approx([20.0] * (seen - 1))
        assert there.left_mm == pytest.approx(-there.right_mm)
    assert side_by_side(cake, 0) == "4 side by side, 3 at the back"


def test_on_a_dome_each_stands_on_its_slope(made: Made) -> None:
    """By the ellipse of its outline: y = h √(1 - (x / r)²) above its foot."""
    for count in (2, 3):
        said = {"technique": "clump-of-thrift", "on": "top", "count": str(count), "sized for": "round 10 cm"}
        cake = made({"tiers": "dome 15 cm", "mixture": "madeira-cake", "decorations": [said]})
        (there,) = placed(cake, 0.8, 62.0, 20.0)
        level, half = cake.stacked.levels[0], cake.tiers[0].guide_mm[0] / 2.0
        for left, _, right, foot in there.copies:
            x = (left + right) / 2.0
            up = (level.top_mm - level.foot_mm) * sqrt(1.0 - (x / half) ** 2)
            assert foot == pytest.approx(level.foot_mm + up)
        assert max(foot for *_, foot in there.copies) == pytest.approx(level.top_mm)
        assert there.top_mm == pytest.approx(cake.stacked.high_mm)


def test_each_is_drawn_at_its_own_level(made: Made) -> None:
    cake = made(FIGURED)
    board, top, *sides = placed(cake, 0.8, 62.0, 20.0)
    assert board.foot_mm == cake.stacked.drum_mm + 3.0 and board.from_mm is not None
    assert top.foot_mm == cake.stacked.levels[-1].top_mm and top.from_mm is None
    for side, place in zip(sides, (1, 0), strict=True):
        level = cake.stacked.levels[place]
        # in the middle of its tier, or from the foot of one that is less high than it is
        middle = (level.foot_mm + level.top_mm) / 2
        assert side.foot_mm == pytest.approx(max(level.foot_mm, middle - (side.top_mm - side.foot_mm) / 2))
    assert figure_path(board).count("<path") == len(board.rings)
