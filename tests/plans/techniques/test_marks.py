"""Repeats at a cake: marks keep their size, their number follows the surface."""

from __future__ import annotations

from collections.abc import Callable
from math import pi

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Repeat, read_model
from tinbook.plans.techniques.marks import RepeatAt, repeat_at
from tinbook.tins import read_tin


def marks(kitchen: Book, facts: Facts, s: float = 1.0, **keys: str) -> RepeatAt:
    tree = {"repeat": "dents", "on": "side of the cake", "mark": "6 mm", "gap": "3 mm", "high": "40 mm", **keys}
    repeat, flaws = read_model(Repeat, tree, "it")
    assert repeat is not None, flaws
    return repeat_at(0, "A", repeat, read_tin(f"round {20 * s:g} cm")[1], s, {}, kitchen, facts)


def test_a_band_round_the_side(kitchen: Book, facts: Facts) -> None:
    made = marks(kitchen, facts)
    assert made.area_mm2 == pytest.approx(pi * 200.0 * 40.0, rel=1e-3)
    assert made.count == pytest.approx(made.by_area, rel=0.03)
    assert made.each_g is None
    assert made.mass_g == 0.0


def test_number_follows_the_surface_and_the_mark_does_not(kitchen: Book, facts: Facts) -> None:
    small, large = (marks(kitchen, facts, s, on="top of the cake", mark="4 mm", gap="2 mm") for s in (1.0, 1.5))
    assert small.mark_mm == large.mark_mm
    assert large.by_area == pytest.approx(small.by_area * 2.25, rel=1e-6)
    assert large.count == pytest.approx(small.count * 2.25, rel=0.03)


def test_paste_for_marks(kitchen: Book, facts: Facts) -> None:
    """A half ball of 6 mm is π/12 × 0.6³ ml; a cut one π/4 × 0.6² × 0.1 ml; 1.4 g/ml."""
    ball = marks(kitchen, facts, solid="half ball 6 mm", paste="sugarpaste")
    assert ball.each_g == pytest.approx(pi / 12 * 0.216 * 1.4)
    assert ball.mass_g == pytest.approx(ball.each_g * ball.count)
    assert ball.small_hard
    cut = marks(kitchen, facts, thick="1 mm", paste="sugarpaste")
    assert cut.each_g == pytest.approx(pi / 4 * 0.36 * 0.1 * 1.4)
    brick = marks(kitchen, facts, mark="12 mm x 6 mm", set="bricks", thick="1 mm", paste="sugarpaste")
    assert brick.each_g == pytest.approx(1.2 * 0.6 * 0.1 * 1.4)
    assert brick.whole + brick.cut == brick.count


def test_from_middle_to_middle_is_the_mark_and_the_gap(
    kitchen: Book, facts: Facts, practice: Callable[[str], tuple[float, ...]]
) -> None:
    """Common practice, no source: tests/data/common_practice.csv has the gap."""
    (gap,) = practice("mm between pressed marks")
    pitch = 6.0 + gap
    assert marks(kitchen, facts, gap=f"{gap:g} mm", set="straight").pitch_mm == (pitch, pitch)
    assert marks(kitchen, facts, gap=f"{gap:g} mm", set="staggered").pitch_mm == pytest.approx(
        (pitch, pitch * 3**0.5 / 2)
    )
