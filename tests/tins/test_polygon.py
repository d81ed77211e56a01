"""Regular polygons, measured by shapely."""

from __future__ import annotations

import math

import pytest
from shapely import Polygon
from tests.every import every

from tinbook.tins.polygon import corners


@every("sides", [3, 4, 6, 8, 12])
@every("turned", [0.0, 0.1, 0.5])
def test_corners_stand_evenly_on_their_circle(sides: int, turned: float) -> None:
    ring = corners(sides, 200.0, turned)
    made = Polygon(ring)
    assert made.exterior.is_ccw
    assert made.area == pytest.approx(sides / 2 * 100.0**2 * math.sin(2 * math.pi / sides))
    assert made.length == pytest.approx(sides * 200.0 * math.sin(math.pi / sides))
    assert math.dist(ring[0], (0.0, 0.0)) == pytest.approx(100.0)
    assert math.atan2(ring[0][1], ring[0][0]) % (2 * math.pi) == pytest.approx(2 * math.pi * turned)
