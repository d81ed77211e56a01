"""Surfaces and rolled pieces, against integration by scipy."""

from __future__ import annotations

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tinbook.engine import pastes


@given(st.floats(20.0, 200.0))
def test_a_dome_is_its_rings_added_up(radius: float) -> None:
    # a ring at height z is 2 pi times its radius, and its slant is r over that radius
    whole, _ = quad(
        lambda z: 2.0 * pi * sqrt(radius**2 - z**2) * radius / sqrt(radius**2 - z**2), 0.0, radius * 0.999999
    )
    assert pastes.dome_mm2(radius) == pytest.approx(whole, rel=1e-4)


@given(st.floats(50.0, 400.0), st.floats(20.0, 200.0), st.floats(1.0, 10.0))
def test_twice_the_size_eight_times_the_paste(side: float, height: float, thickness: float) -> None:
    once = pastes.net_g(pastes.upright_mm2(side**2, 4 * side, height), thickness, 1.4)
    twice = pastes.net_g(pastes.upright_mm2(4 * side**2, 8 * side, 2 * height), 2 * thickness, 1.4)
    assert twice == pytest.approx(8.0 * once)


def test_the_rolled_piece_hangs_down_both_sides() -> None:
    assert pastes.rolled_mm(200.0, 100.0, 50.0) == 450.0
    assert pastes.disc_g(450.0, 4.0, 1.4) == pytest.approx(pi / 4 * 450**2 * 4 / 1000 * 1.4)
    assert pastes.sheet_g(450.0, 300.0, 4.0, 1.4) == pytest.approx(450 * 300 * 4 / 1000 * 1.4)


@given(st.floats(100.0, 400.0), st.floats(50.0, 150.0))
def test_more_is_rolled_than_stays_on_where_both_are_as_thick(across: float, height: float) -> None:
    net = pastes.net_g(pastes.upright_mm2(pi / 4 * across**2, pi * across, height), 5.0, 1.4)
    assert pastes.disc_g(pastes.rolled_mm(across, height, 20.0), 5.0, 1.4) > net
