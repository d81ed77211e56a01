"""A damped correction: laws."""

from __future__ import annotations

from math import exp, log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine.learning import correction, is_wild

ratios = st.lists(st.floats(0.5, 2.0), min_size=1, max_size=30)


@given(ratios, st.floats(0.5, 10.0))
def test_it_lies_between_one_and_what_was_logged(logged: list[float], damping: float) -> None:
    mean = exp(sum(map(log, logged)) / len(logged))
    low, high = sorted((1.0, mean))
    assert low - 1e-12 <= correction(logged, damping) <= high + 1e-12


@given(st.floats(0.5, 2.0), st.integers(1, 20))
def test_it_nears_the_log_as_entries_repeat(ratio: float, count: int) -> None:
    fewer, more = (correction([ratio] * each, 3.0) for each in (count, count + 1))
    assert abs(more - ratio) <= abs(fewer - ratio) + 1e-12
    assert correction([ratio] * 4000, 3.0) == pytest.approx(ratio, rel=2e-3)


def test_nothing_logged_changes_nothing() -> None:
    assert correction([], 3.0) == 1.0


def test_what_is_too_far_off_to_trust() -> None:
    assert [is_wild(ratio, 2.0) for ratio in (0.4, 0.5, 1.0, 2.0, 2.1)] == [True, False, False, False, True]
