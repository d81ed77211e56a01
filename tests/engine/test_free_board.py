"""Room on a board: what is set down is where it may be (shapely), and as many as a drawing by hand has room for."""

from __future__ import annotations

from itertools import combinations
from math import asin, floor, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon
from tests.every import every, many

from tinbook.engine.free_board import NEAR_MM, Foot, hull_of, set_down
from tinbook.engine.solids import oblong, oval
from tinbook.tins import read_tin
from tinbook.tins.growth import ring_round

NEAR = 2.5 * NEAR_MM


def disc(across: float) -> Foot:
    return Foot(oval(across, across))


@every(
    ("board", "cake", "foot"),
    # discs that just fit in the ring stand with their middles on a circle: π / asin(d / 2r) of them, by geometry
    [(300.0, 200.0, 50.0), (350.0, 218.0, 66.0), (400.0, 200.0, 99.0), (250.0, 202.0, 24.0)],
)
def test_as_many_discs_as_a_ring_has_room_for(board: float, cake: float, foot: float) -> None:
    most = floor(pi / asin(foot / (board - foot)))
    assert len(set_down(oval(board, board), oval(cake, cake), [disc(foot)] * (most + 2))) == most
    # a little wider than the ring, and none stands
    wide = (board - cake) / 2.0 + 2.0 * NEAR_MM + 0.5
    assert set_down(oval(board, board), oval(cake, cake), [disc(wide)]) == ()


@given(
    shape=st.sampled_from(("round", "square", "heart", "petal", "hexagon")),
    wide=st.sampled_from((15, 20, 25)),
    board=st.integers(200, 420),
    feet=st.lists(st.tuples(st.integers(10, 110), st.integers(10, 90), st.integers(0, 15)), min_size=1, max_size=3),
    disc=st.booleans(),
    back=st.integers(0, 40),
)
@many(100)
def test_nothing_is_set_down_where_it_cannot_stand(
    shape: str, wide: int, board: int, feet: list[tuple[int, int, int]], disc: bool, back: int
) -> None:
    cake = ring_round(read_tin(f"{shape} {wide} cm")[1], 11.0)
    ground = [(x, y - back) for x, y in (oval if disc else oblong)(board, board)]
    every = [Foot((oval if nth % 2 else oblong)(w, d), apart) for nth, (w, d, apart) in enumerate(feet)]
    there = set_down(ground, cake, every)
    assert len({each.nth for each in there}) == len(there) <= len(feet)
    for each in there:
        form = Polygon(each.ring)
        assert form.area == pytest.approx(Polygon(every[each.nth].ring).area, rel=0.05)
        assert Polygon(ground).buffer(NEAR).contains(form)
        assert Polygon(cake).buffer(-NEAR).intersection(form).area < 1.0
    for one, other in combinations(there, 2):
        apart = max(every[one.nth].apart_mm, every[other.nth].apart_mm)
        assert Polygon(one.ring).distance(Polygon(other.ring)) >= apart - NEAR


@every(
    ("foot", "back", "fits"),
    # 350 - 222 = 128 mm of board: 64 in front, and as much more as the cake stands back
    [((84, 60), 0, True), ((84, 90), 0, False), ((84, 90), 30, True), ((20, 120), 0, True), ((200, 100), 40, True),
     ((200, 107), 40, False)],
)  # fmt: skip
def test_one_in_front_of_a_square_cake(foot: tuple[int, int], back: int, fits: bool) -> None:
    ground = [(x, y - back) for x, y in oblong(350.0, 350.0)]
    # as it is or turned, whichever goes
    assert bool(set_down(ground, oblong(222.0, 222.0), [Foot(oblong(*foot))])) is fits


def test_a_foot_goes_into_a_notch() -> None:
    """An L of cake 200 mm wide on a board no wider leaves 100 x 100 mm."""
    ell = ((-100, -100), (100, -100), (100, 0), (0, 0), (0, 100), (-100, 100))
    for across, fits in ((99.0, True), (103.0, False)):
        (place,) = set_down(oblong(200.0, 200.0), ell, [disc(across)]) or (None,)
        assert (place is not None) is fits
        assert place is None or Polygon(place.ring).centroid.coords[0] == pytest.approx((50.0, 50.0), abs=2.0)


def test_a_hull_goes_round_what_lies_beside() -> None:
    """A post of 28 mm and a coil of 64 mm against 10 mm of rope: 24 + 24 + 64 mm wide less the rope on the left."""
    hull = Polygon(hull_of([(14 + 10 + 32, 0.0, 64.0)], oval(28.0, 28.0)))
    left, low, right, high = hull.bounds
    assert (right - left, high - low) == pytest.approx((14 + 14 + 10 + 64, 64.0))
    assert (left, low) == pytest.approx((-right, -high))
