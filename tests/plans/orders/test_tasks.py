"""A task's rounds."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.plans.base.saying import saying
from tinbook.plans.orders.tasks import SLOT_MIN, Task, rounds


@pytest.mark.parametrize(("minutes", "found"), [(0, 0), (0.5, 5), (5, 5), (5.01, 10), (62, 65)])
def test_minutes_go_up_to_whole_rounds(minutes: float, found: int) -> None:
    assert rounds(minutes) == found


@given(st.integers(0, 1_000_000))
def test_never_less_and_never_a_round_more(tenths: int) -> None:
    minutes = tenths / 10
    assert minutes <= rounds(minutes) < minutes + SLOT_MIN


def test_a_task_is_as_long_as_hands_and_oven() -> None:
    assert Task(key="a/b", orders=("a",), said=saying("task_bake", load=1), hands_min=5, oven_min=60).long_min == 65
