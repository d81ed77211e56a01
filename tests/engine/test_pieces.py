"""Pieces of a batter: against counting them out one by one, and laws."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine.pieces import batter_for, pieces_from

GRAMS = st.floats(1, 5000, allow_nan=False)
EACH = st.floats(1, 500, allow_nan=False)
LOST = st.floats(0, 0.5, allow_nan=False)


def counted_out(batter_g: float, each_g: float) -> int:
    """Another method: fill one case after the other until the bowl has not enough."""
    count, left = 0, batter_g
    while left >= each_g - 1e-6:
        left -= each_g
        count += 1
    return count


@pytest.mark.parametrize(("batter", "each", "count", "left"), [(1200, 45, 26, 30), (900, 45, 20, 0), (44, 45, 0, 44)])
def test_a_clean_bowl(batter: float, each: float, count: int, left: float) -> None:
    """26 x 45 = 1170: by hand."""
    assert pieces_from(batter, each, 0) == (count, pytest.approx(left))


@given(GRAMS, EACH, LOST)
def test_nothing_is_made_or_lost(batter: float, each: float, lost: float) -> None:
    count, left = pieces_from(batter, each, lost)
    assert 0 <= left < each * (1 + 1e-6)
    assert math.isclose(count * each + left, batter * (1 - lost), rel_tol=1e-6, abs_tol=1e-4)


@given(st.integers(1, 3000), st.integers(20, 300))
def test_as_counted_out(batter: int, each: int) -> None:
    assert pieces_from(batter, each, 0)[0] == counted_out(batter, each)


@given(st.integers(1, 500), EACH, LOST)
def test_what_is_mixed_for_so_many_gives_so_many(count: int, each: float, lost: float) -> None:
    assert pieces_from(batter_for(count, each, lost), each, lost)[0] == count


@pytest.mark.parametrize(("batter", "each", "lost"), [(-1, 45, 0), (100, 0, 0), (100, 45, 1), (100, 45, -0.1)])
def test_what_cannot_be(batter: float, each: float, lost: float) -> None:
    with pytest.raises(ValueError, match="no pieces"):
        pieces_from(batter, each, lost)


def test_no_batter_for_less_than_nothing() -> None:
    with pytest.raises(ValueError, match="no batter"):
        batter_for(-1, 45, 0)
