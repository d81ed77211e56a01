"""Marks on a surface: the number that the area says, none outside, none nearer than the pitch."""

from __future__ import annotations

from math import pi, sqrt

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial import cKDTree

from tinbook.engine import repeats, solids

L_SHAPE = ((-60.0, -80.0), (60.0, -80.0), (60.0, -20.0), (0.0, -20.0), (0.0, 80.0), (-60.0, 80.0))
HOLE = ((-40.0, -60.0), (-40.0, -40.0), (-20.0, -40.0), (-20.0, -60.0))
SURFACES = {
    "disc": (solids.oval(200.0, 200.0),),
    "oval": (solids.oval(150.0, 96.0),),
    "band": (solids.oblong(628.0, 40.0),),
    "L": (L_SHAPE,),
    "L with a hole": (L_SHAPE, HOLE),
}


@pytest.mark.parametrize("name", SURFACES)
@pytest.mark.parametrize("how", ["staggered", "straight", "bricks"])
@given(st.floats(2.0, 9.0), st.floats(0.5, 5.0))
def test_marks(name: str, how: str, mark: float, gap: float) -> None:
    rings = SURFACES[name]
    pitch = repeats.pitches_mm((mark, mark), gap, how)
    points = repeats.places(rings, pitch, how != "straight")
    area = shapely.Polygon(rings[0], rings[1:])
    xs, ys = zip(*points, strict=True) if points else ((), ())
    assert shapely.contains_xy(area, xs, ys).all()
    if len(points) > 1:
        near, _ = cKDTree(points).query(points, k=2)
        assert near[:, 1].min() >= mark + gap - 1e-6
    wanted = repeats.count_of(area.area, pitch)
    if wanted > 200 and how == "staggered":
        assert len(points) == pytest.approx(wanted, rel=0.03)
    # rows that are not turned may be one more or less than the area says, no more
    left, low, right, high = area.bounds
    assert abs(len(points) - wanted) <= max((right - left) / pitch[0], (high - low) / pitch[1]) + 1
    assert 0 <= repeats.whole(rings, points, (mark, mark)) <= len(points)


def test_by_hand() -> None:
    """pitch = gap + mark; n = area / (pitch² √3/2): 4 mm gaps and 6 mm marks on a 20 cm disc."""
    pitch = repeats.pitches_mm((6.0, 6.0), 4.0, "staggered")
    assert pitch == (10.0, pytest.approx(10.0 * sqrt(3.0) / 2.0))
    assert repeats.count_of(pi / 4.0 * 200.0**2, pitch) == pytest.approx(pi * 10_000 / (100.0 * sqrt(3.0) / 2.0))


def test_bricks_do_not_overlap() -> None:
    pitch = repeats.pitches_mm((12.0, 6.0), 1.0, "bricks")
    points = repeats.places((solids.oblong(200.0, 100.0),), pitch, True)
    for k, (x, y) in enumerate(points):
        for other_x, other_y in points[k + 1 :]:
            assert abs(x - other_x) >= 13.0 - 1e-6 or abs(y - other_y) >= 7.0 - 1e-6


def test_a_surface_smaller_than_a_mark_may_have_none() -> None:
    assert repeats.whole((solids.oval(3.0, 3.0),), (), (6.0, 6.0)) == 0
