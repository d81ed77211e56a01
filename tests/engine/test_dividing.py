"""Drops and places along an edge."""

from __future__ import annotations

from itertools import pairwise
from math import cosh, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq
from shapely import LinearRing, Point

from tinbook.engine.dividing import (
    along_ring,
    catenary_mm,
    drop,
    edge_mm,
    nearest_mm,
    sag_of_catenary,
    sag_of_parabola,
)


@pytest.mark.parametrize("curve", ["parabola", "catenary"])
@given(span=st.floats(8.0, 400.0), deep=st.floats(1.0, 150.0))
def test_a_drop_hangs_from_its_ends_as_deep_as_asked(curve: str, span: float, deep: float) -> None:
    points = drop(30.0, 7.0, span, deep, curve)
    assert points[0] == pytest.approx((30.0, 7.0), abs=1e-6)
    assert points[-1] == pytest.approx((30.0 + span, 7.0), abs=1e-6)
    assert max(y for _, y in points) == pytest.approx(7.0 + deep, abs=1e-6)
    for (x, y), (back, same) in zip(points, reversed(points), strict=True):
        assert (x - 30.0, y) == pytest.approx((30.0 + span - back, same), abs=1e-6)


@given(span=st.floats(8.0, 400.0), deep=st.floats(1.0, 150.0))
def test_the_chain_solves_its_equation(span: float, deep: float) -> None:
    """Oracle: Brent's method in scipy, on a (cosh(s / 2a) - 1) = d."""
    theirs = brentq(lambda a: a * (cosh(min(span / 2 / a, 600.0)) - 1) - deep, span / 1000, span * 500)
    assert catenary_mm(span, deep) == pytest.approx(theirs, rel=1e-6)


def test_a_chain_is_fuller_than_a_parabola_and_alike_where_it_is_shallow() -> None:
    assert sag_of_catenary(20.0, 100.0, 60.0) > sag_of_parabola(20.0, 100.0, 60.0)
    assert sag_of_catenary(20.0, 100.0, 1.0) == pytest.approx(sag_of_parabola(20.0, 100.0, 1.0), rel=1e-3)


def test_the_length_of_a_chain() -> None:
    """Oracle: the chain's closed length 2 a sinh(s / 2a) against scipy's integral of a parabola that is near it."""
    span, deep = 80.0, 2.0
    slope = lambda x: 4 * deep * (span - 2 * x) / span**2  # noqa: E731
    length, _ = quad(lambda x: (1 + slope(x) ** 2) ** 0.5, 0, span)
    points = drop(0.0, 0.0, span, deep, "catenary")
    ours = sum(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in pairwise(points))
    assert ours == pytest.approx(length, rel=1e-4)


@pytest.mark.parametrize(("span", "deep"), [(0.0, 5.0), (50.0, 0.0), (50.0, -3.0)])
def test_no_chain(span: float, deep: float) -> None:
    with pytest.raises(ValueError, match="no chain hangs"):
        catenary_mm(span, deep)


RING = tuple((60.0 * x, 40.0 * y) for x, y in ((-1, -1), (1, -1), (1.3, 0.2), (1, 1), (-1, 1)))


@pytest.mark.parametrize("count", [1, 2, 3, 7, 24])
def test_places_lie_evenly_along_a_ring(count: int) -> None:
    """Oracle: shapely's linear referencing."""
    ring = LinearRing(RING)
    assert edge_mm(RING) == pytest.approx(ring.length)
    places = along_ring(RING, count)
    assert len(places) == count and places[0] == RING[0]
    for index, place in enumerate(places):
        assert ring.interpolate(ring.length * index / count).distance(Point(place)) < 1e-6


def test_the_nearest() -> None:
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    assert nearest_mm(square) == 10.0
    assert nearest_mm(square[:1]) == float("inf")
    hexagon = along_ring(tuple((50 * sin(t * pi / 180), 50 * sin((t + 90) * pi / 180)) for t in range(360)), 6)
    assert nearest_mm(hexagon) == pytest.approx(50.0, rel=1e-3)
