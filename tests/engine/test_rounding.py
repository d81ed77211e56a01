"""Rounding against exact fractions, a search over all candidates, and laws."""

from __future__ import annotations

from fractions import Fraction
from math import floor

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.engine import rounding
from tinbook.engine.rounding import ScaleSteps, half_up
from tinbook.units import GRAMS_PER_OUNCE

STEPS = ScaleSteps(5.0, 1.0, 50.0)
STEP = st.sampled_from(["0.01", "0.1", "0.125", "0.25", "0.5", "1", "5", "10"])
AMOUNT = st.floats(1e-6, 1e5)
PURPOSES = {
    "scales": lambda amount: rounding.scales(amount, STEPS),
    "spoon": rounding.spoon,
    "pieces": rounding.pieces,
    "ounces": rounding.ounces,
    "cups": rounding.cups,
}


@every(
    ("value", "step", "shown"),
    [
        (0.5, 1.0, 1.0),
        (1.5, 1.0, 2.0),
        (2.5, 1.0, 3.0),
        (0.49999, 1.0, 0.0),
        # 0.285 / 0.01 is 28.499999999999996 in the machine, 1.005 / 0.01 is 100.49999999999999.
        (0.285, 0.01, 0.29),
        (1.005, 0.01, 1.01),
        (2.675, 0.01, 2.68),
        (0.284, 0.01, 0.28),
        (0.125, 0.25, 0.25),
        (2.5, 5.0, 5.0),
        (427.5, 5.0, 430.0),
        (-0.5, 1.0, 0.0),
        (-1.5, 1.0, -1.0),
    ],
)
def test_halves_go_up(value: float, step: float, shown: float) -> None:
    assert half_up(value, step) == shown


@given(value=st.decimals(0, 10000, places=4), step=STEP)
def test_half_up_against_exact_fractions(value: object, step: str) -> None:
    exact, part = Fraction(str(value)), Fraction(step)
    expected = floor(exact / part + Fraction(1, 2)) * part
    assert half_up(float(exact), float(part)) == pytest.approx(float(expected), rel=1e-12, abs=1e-9)


@given(value=st.floats(-1e5, 1e5), step=STEP)
def test_half_a_step_away_at_most_and_steady(value: float, step: str) -> None:
    part = float(step)
    shown = half_up(value, part)
    assert abs(shown - value) <= part * (0.5 + 1e-6) + 1e-6
    assert half_up(shown, part) == shown


@given(values=st.tuples(st.floats(0, 1e5), st.floats(0, 1e5)), step=STEP)
def test_more_is_never_shown_as_less(values: tuple[float, float], step: str) -> None:
    less, more = sorted(values)
    assert half_up(less, float(step)) <= half_up(more, float(step))


@pytest.mark.parametrize("purpose", PURPOSES)
@given(amount=AMOUNT)
def test_nothing_positive_is_shown_as_nothing(purpose: str, amount: float) -> None:
    assert PURPOSES[purpose](amount) > 0.0


@pytest.mark.parametrize("purpose", PURPOSES)
def test_nothing_stays_nothing(purpose: str) -> None:
    assert PURPOSES[purpose](0.0) == 0.0


@pytest.mark.parametrize("purpose", PURPOSES)
@given(amounts=st.tuples(AMOUNT, AMOUNT))
def test_more_is_measured_out_as_no_less(purpose: str, amounts: tuple[float, float]) -> None:
    less, more = sorted(amounts)
    assert PURPOSES[purpose](less) <= PURPOSES[purpose](more)


@every(("grams", "shown"), [(0.44, 0.4), (4.79, 4.8), (9.94, 9.9), (9.96, 10), (20.29, 20), (226.5, 227)])
def test_a_spoonful_weighs_whole_grams_and_tenths_below_ten(grams: float, shown: float) -> None:
    assert rounding.spooned_weight(grams) == shown


@every(
    ("grams", "shown"),
    [(0.2, 1), (12.5, 13), (47.4, 47), (49.4, 49), (49.6, 50), (52.4, 50), (52.5, 55), (425.0, 425), (1330.9, 1330)],
)
def test_scales_show_grams_below_50_and_fives_above(grams: float, shown: float) -> None:
    assert rounding.scales(grams, STEPS) == shown


@every(
    ("spoons", "shown"),
    [(0.0625, 0.125), (0.18, 0.125), (0.1875, 0.25), (0.44, 0.5), (0.6, 0.5), (0.625, 0.75), (1.3, 1.25), (2.0, 2.0)],
)
def test_spoons_to_a_quarter_and_small_ones_to_an_eighth(spoons: float, shown: float) -> None:
    assert rounding.spoon(spoons) == shown


@pytest.mark.parametrize(("grams", "shown_oz"), [(453.6, 16.0), (226.8, 8.0), (28.0, 1.0), (10.0, 0.375), (1.0, 0.125)])
def test_grams_read_in_ounces(grams: float, shown_oz: float) -> None:
    """A pound is 453.59237 g and 16 oz: the International Yard and Pound Agreement, 1959."""
    assert rounding.ounces(grams / GRAMS_PER_OUNCE) == shown_oz


def test_cups_are_the_nearest_a_cup_set_shows() -> None:
    """A search over all quarters and thirds; of two as near, met at ninety-sixths, the larger wins."""
    marks = sorted({Fraction(k, d) for d in (3, 4) for k in range(1, 7 * d)})
    for ninety_sixths in range(1, 96 * 6):
        exact = Fraction(ninety_sixths, 96)
        nearest = max(marks, key=lambda mark: (-abs(mark - exact), mark))
        assert rounding.cups(ninety_sixths / 96) == pytest.approx(float(nearest), abs=1e-9)


def test_the_other_purposes() -> None:
    assert rounding.pieces(4.5) == 5.0
    assert rounding.pieces(0.2) == 1.0
    assert rounding.ruler(43.5) == 44.0
    assert rounding.factor(1.7777) == 1.78
    assert rounding.percent(-0.0163) == -1.6
    assert rounding.percent(0.01625) == 1.6
    assert rounding.percent(0.0165) == 1.7
    assert rounding.litres(2356.19) == 2360.0


@given(exact=st.floats(1e-3, 1e4), shown=st.floats(0, 1e4))
def test_an_error_is_a_share_of_the_exact(exact: float, shown: float) -> None:
    assert rounding.error(exact, shown) == pytest.approx(abs(shown / exact - 1), rel=1e-9, abs=1e-12)
    assert rounding.error(exact, exact) == 0.0


def test_the_error_of_nothing_is_none() -> None:
    assert rounding.error(0.0, 0.0) == 0.0


@every(("value", "shown"), [(70.8, 71), (99.5, 100), (2.333, 2.3), (9.96, 10), (0.02, 0.1), (0, 0)])
def test_a_figure_for_a_hundred(value: float, shown: float) -> None:
    assert rounding.per_hundred(value) == shown


def test_minutes_as_a_timer_is_set() -> None:
    asked = np.array([19.6, 29.9, 48.0, 52.4, 60.0, 186.0, 0.4])
    assert rounding.minutes_down_each(asked).tolist() == [19, 29, 45, 50, 60, 180, 1]
    assert rounding.minutes_up_each(asked).tolist() == [20, 30, 50, 55, 60, 190, 1]


def test_a_dial_goes_by_fives() -> None:
    assert [rounding.dial(value) for value in (160.0, 162.4, 162.5, 176.7)] == [160, 160, 165, 175]


def test_a_share_on_a_label_is_whole_or_to_a_half_below_five() -> None:
    """By hand: 4.44 % is 4.5, 8.25 % is 8, 12.5 % is 13; a trace of it is a half."""
    wanted = {0.0444: 4.5, 0.0825: 8.0, 0.125: 13.0, 0.0499: 5.0, 0.05: 5.0, 0.001: 0.5, 1.0: 100.0, 1.254: 125.0}
    assert {share: rounding.label_percent(share) for share in wanted} == wanted
