"""Times of steps, added up by hand and by law."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.loading import Loaded
from tinbook.models import Step, read_model
from tinbook.plans.mixtures.steps import StepTimes, step_times


def step(data: Any) -> Step:
    model, flaws = read_model(Step, data, "a step")
    assert model is not None, flaws
    return model


def test_spans_and_hours_by_hand() -> None:
    steps = [
        {"do": "Line the tins."},
        {"do": "Beat.", "hands on": "8 min"},
        {"do": "Bake.", "waiting": "55-65 min"},
        {"do": "Rest.", "hands on": "2 min", "waiting": "1 h 15 min"},
    ]
    assert step_times(map(step, steps)) == StepTimes(10.0, 10.0, 130.0, 140.0)


def test_no_steps_take_no_time() -> None:
    assert step_times([]) == StepTimes(0, 0, 0, 0)


MINUTES = st.tuples(st.integers(1, 90), st.integers(0, 60))
STEPS = st.lists(st.tuples(MINUTES, MINUTES), max_size=6)


@given(first=STEPS, second=STEPS)
def test_times_of_two_methods_add_up(first: Any, second: Any) -> None:
    def made(spans: Any) -> list[Step]:
        return [
            step({"do": "x", "hands on": f"{a}-{a + b} min", "waiting": f"{c}-{c + d} min"}) for (a, b), (c, d) in spans
        ]

    both, one, two = (step_times(made(spans)) for spans in (first + second, first, second))
    assert both.hands_on_low_min == one.hands_on_low_min + two.hands_on_low_min
    assert both.hands_on_high_min == one.hands_on_high_min + two.hands_on_high_min
    assert both.waiting_low_min == one.waiting_low_min + two.waiting_low_min
    assert both.waiting_high_min == one.waiting_high_min + two.waiting_high_min
    assert both.hands_on_low_min <= both.hands_on_high_min
    assert both.hands_on_low_min == pytest.approx(sum(a for (a, _), _ in first + second))


def test_a_demo_cake_waits_at_least_as_long_as_it_bakes(demo: Loaded) -> None:
    cakes = [mixture for mixture in demo.book.mixtures.values() if mixture.bake]
    assert cakes
    for cake in cakes:
        assert cake.bake is not None
        assert step_times(cake.method).waiting_low_min >= cake.bake.time.low.base, cake.name
