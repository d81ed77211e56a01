"""Centres of weight against the formulas of any handbook of mechanics, and against shapely's centroid for flat ones."""

from __future__ import annotations

from math import cos, pi, sin

import pytest
from shapely import Polygon

from tinbook.engine.centres import centre_up_mm, wides_mm

TRIANGLE = ((-10.0, 0.0), (10.0, 0.0), (0.0, 30.0))
BALL = tuple((20.0 * cos(2 * pi * turn / 360), 20.0 * sin(2 * pi * turn / 360)) for turn in range(360))
HALF = tuple((20.0 * cos(pi * turn / 360), 20.0 * sin(pi * turn / 360)) for turn in range(361))


def frustum(foot: float, top: float, high: float) -> tuple[tuple[float, float], ...]:
    return (-foot / 2, 0.0), (foot / 2, 0.0), (top / 2, high), (-top / 2, high)


@pytest.mark.parametrize(
    ("ring", "turned", "up"),
    [
        (TRIANGLE, True, 30.0 / 4),  # a cone
        (TRIANGLE, False, 30.0 / 3),  # a triangle
        (frustum(20.0, 20.0, 40.0), True, 20.0),  # a cylinder
        (HALF, True, 3.0 / 8.0 * 20.0),  # half a ball
        (HALF, False, 4.0 * 20.0 / (3.0 * pi)),  # half a disc
        (BALL, True, 0.0),
        # a frustum of a cone: h/4 (R² + 2Rr + 3r²) / (R² + Rr + r²)
        (frustum(36.0, 24.0, 70.0), True, 70.0 / 4 * (18**2 + 2 * 18 * 12 + 3 * 12**2) / (18**2 + 18 * 12 + 12**2)),
    ],
)
def test_by_the_handbook(ring: tuple[tuple[float, float], ...], turned: bool, up: float) -> None:
    assert centre_up_mm(ring, turned) == pytest.approx(up, abs=0.02)


def test_a_crooked_sheet_by_shapely() -> None:
    ring = ((0.0, 0.0), (30.0, 5.0), (22.0, 18.0), (35.0, 40.0), (4.0, 31.0), (12.0, 15.0))
    assert centre_up_mm(ring, False) == pytest.approx(Polygon(ring).centroid.y, abs=0.02)
    assert wides_mm(ring, [17.0])[0] == pytest.approx(
        Polygon(ring).intersection(Polygon([(-99, 16.9999), (99, 16.9999), (99, 17.0001), (-99, 17.0001)])).area
        / 0.0002,
        rel=1e-3,
    )


def test_what_has_no_height() -> None:
    with pytest.raises(ValueError, match="height"):
        centre_up_mm(((0.0, 1.0), (5.0, 1.0)), False)
