"""Counting and sharing out pieces: by hand, and by laws."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tinbook.engine import portions as sums

SIZES = st.lists(st.floats(100.0, 5000.0), min_size=1, max_size=9)


def test_whole_portions_only() -> None:
    assert sums.most(10_000.0, 1250.0) == 8
    assert sums.most(9_999.0, 1250.0) == 7
    # An exact fit is not lost to the last digit.
    assert sums.most(0.1 + 0.2, 0.1) == 3


@pytest.mark.parametrize(("size", "portion"), [(0.0, 1.0), (-1.0, 1.0), (1.0, 0.0), (1.0, -2.0), (math.nan, 1.0)])
def test_nothing_and_less_cannot_be_cut(size: float, portion: float) -> None:
    with pytest.raises(ValueError, match="no portions"):
        sums.most(size, portion)


def test_a_grid_lies_the_better_way() -> None:
    """1 x 2 in pieces of a 9 x 13 in sheet: 9 across the 9 in and 6 along the 13 in, not 4 by 13."""
    assert sums.grid(9.0, 12.0, 1.0, 2.0) == (False, (9,) * 6)
    assert sums.grid(12.0, 9.0, 1.0, 2.0) == (True, (9,) * 6)
    assert sums.grid(8.0, 8.0, 1.0, 1.0) == (False, (8,) * 8)


def test_what_is_left_of_a_grid_is_cut_the_other_way() -> None:
    """7 x 7 in: three rows of seven 1 x 2 in, and three more along the last inch: 24 of 24.5."""
    assert sums.grid(7.0, 7.0, 1.0, 2.0) == (False, (7, 7, 7, 3))
    assert sums.grid(9.0, 13.0, 1.0, 2.0) == (False, (9, 9, 9, 9, 9, 9, 4))
    assert sums.grid(1.0, 1.5, 2.0, 2.0) == (False, ())


@given(st.integers(2, 40), st.integers(2, 40))
def test_a_dessert_is_two_fingers_on_every_grid(width: int, length: int) -> None:
    fingers = sum(sums.grid(25.0 * width, 25.0 * length, 25.0, 25.0)[1])
    assert fingers == width * length
    assert sum(sums.grid(25.0 * width, 25.0 * length, 25.0, 50.0)[1]) == fingers // 2


def test_what_makers_serve_of_rounds() -> None:
    """The yields: 0.83 at 15 cm, 0.90 at 18 cm, 0.94 to 1.01 from 20 cm up, never more than area over portion."""
    for width, low, high in ((100, 0.75, 0.75), (149, 0.75, 0.75), (150, 0.829, 0.831), (180, 0.899, 0.901),
                             (200, 0.94, 1.0), (400, 0.94, 1.0)):  # fmt: skip
        assert low <= sums.yielded(math.pi / 4.0 * width**2) <= high, width
    assert sums.served(1250.0, 1250.0) == 1
    assert sums.served(1249.0, 1250.0) == 0


@given(st.floats(1.0, 4e5), st.floats(1.0, 4e5), st.floats(100.0, 5000.0))
def test_a_larger_cake_never_serves_fewer(one: float, other: float, portion: float) -> None:
    small, large = sorted((one, other))
    assert sums.served(small, portion) <= sums.served(large, portion) <= large / portion * (1 + 1e-8)


def test_long_cakes_serve_less() -> None:
    """As an oval grows longer it serves no fewer: up to 1.2 times its width like a round, at 1.44 times five sixths."""
    counts = [sums.served(40_000.0 * long, 625.0, long) for long in (1.0, 1.2, 1.44, 1.5, 2.0)]
    assert counts == [int(64 * 0.975), int(76.8 * 0.975), int(76.8 * 0.975), int(80 * 0.975), int(320 / 3 * 0.975)]


@given(SIZES, st.integers(1, 60))
def test_pieces_shared_out_lie_near_the_mean(sizes: list[float], pieces: int) -> None:
    counts = sums.shared(sizes, pieces)
    assume(counts is not None)
    assert counts is not None
    assert sum(counts) == pieces
    assert sums.spread(sizes, counts) <= sums.NEAR + 1e-6


def test_a_20_cm_round_in_four_strips_is_5_7_7_5() -> None:
    """The drawing the plans are made after: 24 pieces, each within 6 % of the mean. Areas by the circle's formula."""
    outer = (math.pi / 3.0 - math.sqrt(3.0) / 4.0) * 100.0**2
    inner = math.pi * 100.0**2 / 2.0 - outer
    counts = sums.shared([outer, inner, inner, outer], 24)
    assert counts == (5, 7, 7, 5)
    assert 0.055 < sums.spread([outer, inner, inner, outer], counts) < 0.065
    assert sums.shared([outer, inner, inner, outer], 25) is None


@given(SIZES, st.integers(9, 80))
def test_apportioned_pieces_are_all_given_out(sizes: list[float], pieces: int) -> None:
    counts = sums.apportioned(sizes, pieces)
    assert sum(counts) == pieces
    assert min(counts) >= 1


def test_what_lies_alike_is_given_alike() -> None:
    assert sums.apportioned([4.4, 7.2, 7.8, 7.2, 4.4], 31) == (5, 7, 7, 7, 5)
    assert sums.apportioned([1.0, 3.0, 1.0], 11) == (2, 7, 2)
    assert sums.apportioned([1.0, 1.0], 5) in {(3, 2), (2, 3)}
    with pytest.raises(ValueError, match="too few"):
        sums.apportioned([1.0, 1.0, 1.0], 2)


@given(st.floats(0.0, 1.0), st.floats(20.0, 400.0), st.floats(0.0, 0.8), st.booleans())
def test_radius_and_share_are_inverse(share: float, outside: float, tube: float, dome: bool) -> None:
    inside = 0.0 if dome else tube * outside
    radius = sums.radius_of(share, outside, inside, dome)
    assert inside - 1e-6 <= radius <= outside + 1e-6
    assert sums.within(radius, outside, inside, dome) == pytest.approx(share, abs=1e-6)


def test_the_share_of_half_a_ball_by_adding_up() -> None:
    """Against shells of a half ball added up: ∫ 2πr √(R² − r²) dr over the ball's half volume."""
    steps, outside, radius = 20_000, 100.0, 60.0
    middles = [(k + 0.5) / steps * radius for k in range(steps)]
    volume = sum(2 * math.pi * r * math.sqrt(outside**2 - r**2) for r in middles) * radius / steps
    assert sums.within(radius, outside, 0.0, True) == pytest.approx(volume / (2 / 3 * math.pi * outside**3), rel=1e-6)


def test_grams_by_hand() -> None:
    """25 × 50 × 100 mm are 125 ml; at 0.85 g/ml, risen by half and 10 % lighter: 125 × 0.85 × 0.9 / 1.5 = 63.75 g."""
    assert sums.grams(1250.0, 100.0, 0.85, 1.5, 0.1) == pytest.approx(63.75)
    assert sums.grams(1250.0, 200.0, 0.85, 1.5, 0.1) == pytest.approx(127.5)


def test_rings_while_wedges_would_be_long() -> None:
    assert [sums.rings(depth, 50.0) for depth in (50.0, 80.0, 100.0, 125.0, 200.0)] == [1, 1, 2, 2, 4]
