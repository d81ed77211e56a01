"""The scaling rules against a published formula, exact fractions, scipy's root finder, and laws."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq
from tests.every import every

from tinbook.engine import scaling
from tinbook.tins import Tin

EGGS = st.integers(1, 24)
FACTOR = st.floats(0.05, 20.0)
POINTS = ((250.0, 1.0), (300.0, 0.84), (350.0, 0.75))


@every(("wanted", "own"), [(0, 1), (1, 0), (-1, 1), (1, -1), (math.nan, 1), (1, math.nan)])
def test_a_factor_needs_two_positive_amounts(wanted: float, own: float) -> None:
    with pytest.raises(ValueError, match="two positive amounts"):
        scaling.factor(wanted, own)


def test_a_factor_is_a_ratio() -> None:
    assert scaling.factor(900.0, 1200.0) == 0.75


def test_a_quarter_more_of_four_eggs_is_five() -> None:
    """4 times 1.25 is 5, and nothing over."""
    assert scaling.whole_eggs(4, 1.25) == scaling.WholeEggs(5, 1.25, 0.0)


@given(eggs=EGGS, exact=FACTOR)
def test_whole_eggs_are_the_nearest_number(eggs: int, exact: float) -> None:
    found = scaling.whole_eggs(eggs, exact)
    wanted = Fraction(exact) * eggs
    assert found.eggs >= 1
    for other in (found.eggs - 1, found.eggs + 1):
        assert other < 1 or abs(found.eggs - wanted) <= abs(other - wanted) + Fraction(1, 10**8)
    assert found.factor == pytest.approx(found.eggs / eggs, rel=1e-12)
    assert found.off == pytest.approx(float(found.eggs / wanted) - 1, abs=1e-9)


@pytest.mark.parametrize(
    ("eggs", "exact", "whole"), [(1, 0.5, 1), (5, 0.5, 3), (4, 0.875, 4), (3, 1.5, 5), (4, 0.01, 1)]
)
def test_half_an_egg_goes_up(eggs: int, exact: float, whole: int) -> None:
    assert scaling.whole_eggs(eggs, exact).eggs == whole


@given(share=st.floats(0.001, 1.0), size=st.sampled_from([(230.0, 130.0), (160.0, 100.0)]))
def test_depth_in_a_tapered_tin_against_a_root_finder(share: float, size: tuple[float, float]) -> None:
    tin = Tin(shape="loaf", sizes_mm=size, depth_mm=70.0)
    volume_ml = share * tin.brim_ml()
    root = brentq(lambda depth: tin.volume_ml(depth) - volume_ml, 0.0, 70.0)
    assert scaling.depth_for(volume_ml, tin.volume_ml, 70.0) == pytest.approx(root, abs=1e-3)


def test_depth_for_more_than_the_brim_is_refused() -> None:
    assert scaling.depth_for(750.0, lambda depth: 10 * depth, 75.0) == pytest.approx(75.0, abs=1e-3)
    with pytest.raises(ValueError, match="more than the brim"):
        scaling.depth_for(751.0, lambda depth: 10 * depth, 75.0)


@given(tenths=st.integers(1, 5000), room=st.integers(1, 500))
def test_times_needed_against_exact_fractions(tenths: int, room: int) -> None:
    expected = math.ceil(Fraction(tenths, 10) / Fraction(room, 10))
    assert scaling.times_needed(tenths / 10, room / 10) == expected


def test_decimals_do_not_ask_for_another_bowl() -> None:
    # 0.1 + 0.1 + 0.1 is a hair over 0.3 in the machine.
    assert scaling.times_needed(0.1 + 0.1 + 0.1, 0.1) == 3
    assert scaling.times_needed(0.0, 5.0) == 1


def test_wide_tins_against_the_published_levels(table: Callable[[str], list[dict[str, str]]]) -> None:
    """The Cake Bible (1988), rows P1 to P3 of formula_balance.csv: teaspoons to one base mix by tin."""
    rows = {row["id"]: row["value"] for row in table("formula_balance")}
    spoons = {key: float(re.match(r"[\d.]+", rows[key])[0]) for key in ("P1", "P2", "P3")}  # type: ignore[index]
    for width_mm, key in ((250.0, "P1"), (300.0, "P2"), (350.0, "P3")):
        kept = scaling.wide_tin_raising(width_mm, POINTS)
        assert kept == pytest.approx(spoons[key] / spoons["P1"], abs=0.005), key


@given(widths=st.tuples(st.floats(50.0, 600.0), st.floats(50.0, 600.0)))
def test_a_wider_tin_never_has_more_raising(widths: tuple[float, float]) -> None:
    narrow, wide = sorted(widths)
    kept = scaling.wide_tin_raising(narrow, POINTS), scaling.wide_tin_raising(wide, POINTS)
    assert 1.0 >= kept[0] >= kept[1] >= 0.75
    assert narrow > 250.0 or kept[0] == 1.0


@given(share=st.floats(0.0, 1.0))
def test_raising_goes_straight_from_point_to_point(share: float) -> None:
    for (left, from_kept), (right, to_kept) in ((POINTS[0], POINTS[1]), (POINTS[1], POINTS[2])):
        kept = scaling.wide_tin_raising(left + share * (right - left), POINTS)
        assert kept == pytest.approx((1 - share) * from_kept + share * to_kept, rel=1e-9)


@given(flour_g=st.floats(1.0, 5000.0), share=st.floats(0.01, 0.2))
def test_plain_flour_and_powder_weigh_the_self_raising(flour_g: float, share: float) -> None:
    plain_g, powder_g = scaling.plain_for_self_raising(flour_g, share)
    assert plain_g + powder_g == pytest.approx(flour_g, rel=1e-12)
    assert powder_g / plain_g == pytest.approx(share, rel=1e-9)


def test_a_published_self_raising_mix() -> None:
    """12.5 g of powder to 237.5 g of plain flour make 250 g (trendsmask, row S6 of formula_balance.csv)."""
    plain_g, powder_g = scaling.plain_for_self_raising(250.0, 12.5 / 237.5)
    assert (plain_g, powder_g) == (pytest.approx(237.5), pytest.approx(12.5))


@given(eggs=EGGS, exact=FACTOR, more=st.floats(1.0, 2.0))
def test_more_mixture_never_takes_fewer_eggs(eggs: int, exact: float, more: float) -> None:
    assume(exact * more > exact)
    assert scaling.whole_eggs(eggs, exact * more).eggs >= scaling.whole_eggs(eggs, exact).eggs
