"""Shells, fillings and borders, against integration by scipy and against laws."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tinbook.engine import coats

sizes = st.floats(20.0, 400.0)
thin = st.floats(0.5, 20.0)


@given(sizes, thin)
def test_a_dome_shell_is_its_layers_added_up(radius: float, thickness: float) -> None:
    whole, _ = quad(lambda r: 2.0 * pi * r * r, radius, radius + thickness)
    assert coats.dome_shell_ml(radius, thickness) == pytest.approx(whole / 1000.0, rel=1e-9)
    assert coats.ball_shell_ml(radius, thickness) == pytest.approx(2.0 * whole / 1000.0, rel=1e-9)


@given(sizes, sizes, thin, thin)
def test_two_thin_coats_are_one_thick_one(radius: float, height: float, one: float, other: float) -> None:
    def area(by: float) -> float:
        return pi * (radius + by) ** 2

    first = coats.shell_ml(area(0.0), area(one), height, one)
    second = coats.shell_ml(area(one), area(one + other), height + one, other)
    assert first + second == pytest.approx(coats.shell_ml(area(0.0), area(one + other), height, one + other))


@given(sizes, sizes, thin)
def test_lengths_doubled_take_eight_times_as_much(side: float, height: float, thickness: float) -> None:
    once = coats.shell_ml(side**2, (side + 2 * thickness) ** 2, height, thickness)
    twice = coats.shell_ml(4 * side**2, 4 * (side + 2 * thickness) ** 2, 2 * height, 2 * thickness)
    assert twice == pytest.approx(8.0 * once)


def test_filling_lies_between_layers_only() -> None:
    assert coats.filling_ml(10_000.0, 5.0, 4) == pytest.approx(150.0)
    assert coats.filling_ml(10_000.0, 5.0, 1) == 0.0


def test_the_bowl_keeps_its_share() -> None:
    made = coats.with_bowl(950.0, 0.05)
    assert made == pytest.approx(1000.0)
    assert made * 0.95 == pytest.approx(950.0)


def test_a_border_is_what_comes_out_of_the_nozzle() -> None:
    # a plain 10 mm opening pressed along 30 mm: a rod of 7.854 x 3 / 10 = 2.356 ml, forty of them
    assert coats.border_ml(40, 10.0, 30.0, 1.0) == pytest.approx(40 * pi / 4 * 100 * 30 / 1000)
    assert coats.border_ml(40, 10.0, 30.0, 0.6) == pytest.approx(0.6 * coats.border_ml(40, 10.0, 30.0, 1.0))


@given(st.floats(100.0, 2000.0), st.floats(5.0, 60.0))
def test_marks_close_up_round_the_edge(edge: float, pitch: float) -> None:
    marks = coats.marks_on_edge(edge, pitch)
    assert marks >= 1
    assert abs(edge / pitch - marks) <= 0.5 + 1e-6 or marks == 1
