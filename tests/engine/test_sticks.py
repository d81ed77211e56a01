"""Pieces cut from sticks, by hand and by what can never be."""

from __future__ import annotations

from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine.sticks import sticks_for

PIECES = st.lists(st.floats(20.0, 300.0), max_size=20)


def test_by_hand() -> None:
    assert sticks_for([118.0] * 8, 300.0, []) == 4
    assert sticks_for([100.0] * 3, 300.0, []) == 1
    assert sticks_for([300.0, 300.0], 300.0, []) == 2
    assert sticks_for([], 300.0, []) == 0


def test_ends_are_used_first() -> None:
    left = [120.0]
    assert sticks_for([118.0], 300.0, left) == 0
    assert left == [2.0]


@given(PIECES, PIECES)
def test_never_fewer_than_their_length_and_nothing_is_cut_twice(first: list[float], then: list[float]) -> None:
    left: list[float] = []
    sticks = sticks_for(first, 300.0, left) + sticks_for(then, 300.0, left)
    pieces = [*first, *then]
    assert ceil(sum(pieces) / 300.0 - 1e-9) <= sticks <= len(pieces)
    assert sticks * 300.0 - sum(left) == pytest.approx(sum(pieces), abs=1e-5)


def test_too_long() -> None:
    with pytest.raises(ValueError, match="cannot be cut"):
        sticks_for([301.0], 300.0, [])
