"""Whole packs for an amount, against every way of buying."""

from __future__ import annotations

from itertools import product
from math import ceil, gcd

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine.packs import _exactly, packs_for


@given(st.floats(0.0, 4000.0), st.sets(st.sampled_from([200, 250, 300, 450, 500, 750, 1000]), min_size=1, max_size=3))
def test_least_over_then_fewest(need_g: float, sizes: set[int]) -> None:
    bought = packs_for(need_g, tuple(sizes))
    total, packs = sum(count * size for count, size in bought), sum(count for count, _ in bought)
    ordered = sorted(sizes)
    every = product(*(range(int(need_g // size) + 2) for size in ordered))
    totals = [(sum(n * size for n, size in zip(counts, ordered, strict=True)), sum(counts)) for counts in every]
    assert (total, packs) == min(way for way in totals if way[0] >= need_g - 1e-6)


@given(st.integers(0, 900), st.sets(st.integers(2, 30), min_size=1, max_size=3))
def test_amounts_far_larger_than_a_pack(need: int, sizes: set[int]) -> None:
    """Most of it comes in the largest pack without every total being tried: the same as if they all were."""
    bought = {size: count for count, size in packs_for(need, [float(size) for size in sizes])}
    unit = gcd(*sizes)
    slow = _exactly(ceil(need / unit), tuple(size // unit for size in sorted(sizes, reverse=True)))
    total = sum(count * size for size, count in bought.items())
    assert total == sum(count * size for count, size in zip(slow, sorted(sizes, reverse=True), strict=True))
    assert sum(bought.values()) == sum(slow)


def test_a_pound_is_not_454_grams() -> None:
    """453.59237 g, exactly (Weights and Measures Act 1985, schedule 1): two are not enough for 907.5 g."""
    pound = 453.59237
    assert packs_for(453.6, (pound,)) == ((2, pound),)
    assert packs_for(450.0, (pound,)) == ((1, pound),)


def test_by_hand() -> None:
    assert packs_for(1100.0, (1000.0, 250.0)) == ((1, 1000.0), (1, 250.0))
    assert packs_for(900.0, (1000.0, 250.0)) == ((1, 1000.0),)
    assert packs_for(0.0, (250.0,)) == ()


def test_packs_of_nothing_are_refused() -> None:
    for sizes in ((), (0.0,)):
        with pytest.raises(ValueError, match="one unit or more"):
            packs_for(100.0, sizes)
