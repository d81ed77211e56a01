"""Baking times: the laws of the estimate, and a general-purpose reference for its algebra."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import log, sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.engine import baking
from tinbook.engine.baking import Evidence, Law, OfKind, Prior

Row = tuple[float, float, float, float]
"""Width mm, batter depth mm, oven °C, minutes."""

NEUTRAL = Prior((4.0, 1.0, 0.6), (1.0, 0.5, baking.spread(0.35, 0.85)), (0.3, 0.25, 0.15), 0.1)
"""Minutes by the width to a power of 1, give or take much, and hardly any idea how long."""

widths = st.floats(60, 400)
depths = st.floats(20, 90)


@pytest.fixture
def stats() -> Any:
    """scipy.stats, which takes a second to import: for the tests that ask it."""
    import scipy.stats

    return scipy.stats


def told(rows: Sequence[Row], prior: Prior = NEUTRAL) -> Evidence:
    heats = [baking.heat(oven, 20, 97) for _, _, oven, _ in rows]
    return baking.evidence([r[0] for r in rows], [r[1] for r in rows], heats, [r[3] for r in rows], prior)


def kin_of(seen: Evidence, prior: Prior = NEUTRAL) -> OfKind:
    return baking.of_kind(prior, seen)


def guess(law: Law, row: Row) -> tuple[float, float]:
    minutes, spread = law.minutes([row[0]], [row[1]], baking.heat(row[2], 20, 97))
    return float(minutes[0]), float(spread[0])


# Laws


@given(widths, depths, st.floats(130, 220))
def test_longer_when_wider_deeper_colder_and_shorter_when_hotter(width: float, depth: float, oven: float) -> None:
    law = baking.learned(NEUTRAL, told([(200, 40, 170, 60)]))

    def minutes(width: float, depth: float, oven: float, start: float = 20) -> float:
        return float(law.minutes([width], [depth], baking.heat(oven, start, 97))[0][0])

    here = minutes(width, depth, oven)
    assert minutes(width * 1.05, depth, oven) > here
    assert minutes(width, depth * 1.05, oven) > here
    assert minutes(width, depth, oven, 5) > here
    assert minutes(width, depth, oven + 5) < here
    assert minutes(width, depth / 2, oven) < here


@given(st.lists(st.tuples(widths, depths, st.just(170.0), st.floats(20, 200)), min_size=1, max_size=12))
def test_wider_and_deeper_is_longer_whatever_the_log_says(log: list[Row]) -> None:
    law = baking.learned(NEUTRAL, told(log))
    wide, _ = law.minutes([60, 150, 200, 300, 400], [40] * 5, 1.0)
    deep, _ = law.minutes([200] * 4, [20, 30, 50, 80], 1.0)
    for minutes in (wide, deep):
        assert np.all(np.diff(minutes) > 0)


@given(widths, depths, st.floats(20, 200))
def test_entries_that_repeat_are_believed(width: float, depth: float, logged: float) -> None:
    off = []
    spreads = []
    for count in (0, 1, 4, 40, 4000):
        law = baking.learned(NEUTRAL, told([(width, depth, 170, logged)] * count))
        minutes, spread = guess(law, (width, depth, 170, logged))
        off.append(abs(log(minutes / logged)))
        spreads.append(spread)
    assert off == sorted(off, reverse=True)
    assert off[-1] < 1e-3 + off[0] * 1e-3
    assert spreads == sorted(spreads, reverse=True)
    assert spreads[-1] == pytest.approx(NEUTRAL.scatter, rel=0.01)


def test_further_from_what_was_baked_is_less_certain() -> None:
    law = baking.learned(NEUTRAL, told([(200, 40, 170, 60)] * 3))
    wider = [guess(law, (width, 40, 170, 0))[1] for width in (200, 250, 300, 400)]
    deeper = [guess(law, (200, depth, 170, 0))[1] for depth in (40, 50, 60, 80)]
    smaller = [guess(law, (width, 40, 170, 0))[1] for width in (200, 150, 100, 60)]
    for spreads in (wider, deeper, smaller):
        assert spreads == sorted(spreads)
        assert spreads[-1] > spreads[0] * 1.05


def test_kin_tell_and_own_bakes_tell_more() -> None:
    own = told([(200, 40, 170, 60)])
    slow = told([(200, 40, 170, 80), (300, 40, 170, 140)])
    alone, with_kin = (baking.learned(NEUTRAL, told([]), kin) for kin in (baking.NO_KIN, kin_of(slow)))
    assert guess(with_kin, (200, 40, 170, 0))[1] < guess(alone, (200, 40, 170, 0))[1]
    assert guess(with_kin, (200, 40, 170, 0))[0] == pytest.approx(80, rel=0.1)
    both = baking.learned(NEUTRAL, own, kin_of(slow))
    assert guess(both, (200, 40, 170, 0))[0] == pytest.approx(60, rel=0.05)
    assert both.width_exponent > baking.learned(NEUTRAL, own).width_exponent


# The algebra, against the joint normal distribution of everything, conditioned by scipy and numpy


def test_closed_form_is_the_conditional_of_one_large_normal(stats: Any) -> None:
    """Two recipes and their kind written as one normal distribution of the kind's three numbers and all entries."""
    mine: list[Row] = [(150, 45, 160, 50), (250, 38, 160, 80)]
    theirs: list[Row] = [(200, 30, 180, 40), (300, 41, 170, 95), (180, 60, 150, 100)]
    prior = replace(NEUTRAL, own=(0.3, 0.2, 0.1))
    asked: Row = (220, 50, 165, 0)
    kin = kin_of(told(theirs, prior), prior)
    law = baking.learned(prior, told(mine, prior), kin)
    both = kin + kin - kin
    assert np.allclose(both.weight, kin.weight) and np.allclose(both.pull, kin.pull)

    def design(rows: Sequence[Row]) -> np.ndarray:
        return np.array([[1, log(width / 200), log(depth / 40)] for width, depth, _, _ in rows])

    x = design([asked, *mine, *theirs])
    kind = np.diag(np.square(prior.spread))
    own = np.diag(np.square(prior.own))
    same = np.array([0, 0, 0, 1, 1, 1])
    cover = x @ kind @ x.T + (same[:, None] == same[None, :]) * (x @ own @ x.T)
    cover[1:, 1:] += np.eye(5) * prior.scatter**2
    seen = np.array([log(r[3] / baking.heat(r[2], 20, 97)) for r in [*mine, *theirs]])
    mean = x @ np.array(prior.mean)
    gain = cover[0, 1:] @ np.linalg.inv(cover[1:, 1:])
    expected = mean[0] + gain @ (seen - mean[1:])
    variance = cover[0, 0] - gain @ cover[1:, 0] + prior.scatter**2
    minutes, spread = guess(law, asked)
    assert log(minutes / baking.heat(asked[2], 20, 97)) == pytest.approx(expected, abs=1e-9)
    assert spread == pytest.approx(sqrt(variance), abs=1e-9)
    # and scipy's own density ratio has its peak there
    grid = expected + np.linspace(-0.5, 0.5, 201)
    joint = stats.multivariate_normal(mean, cover + np.diag([prior.scatter**2, 0, 0, 0, 0, 0]))
    best = grid[np.argmax([joint.logpdf([value, *seen]) for value in grid])]
    assert best == pytest.approx(expected, abs=0.006)


def test_eighty_percent_is_scipys(stats: Any) -> None:
    assert stats.norm.cdf(baking.EIGHTY_PERCENT) - stats.norm.cdf(-baking.EIGHTY_PERCENT) == pytest.approx(0.8)
    assert baking.spread(10, 12) == pytest.approx(2 / (stats.norm.ppf(0.9) - stats.norm.ppf(0.1)))


def test_one_number_is_settled_the_same_way() -> None:
    assert baking.settled(1.5, 0.1, [], 0.05) == 1.5
    assert baking.settled(1.5, 0.1, [1.6], 0.05) == pytest.approx(1.5 + 0.1 * 0.01 / (0.01 + 0.0025))
    assert baking.settled(1.5, 0.1, [1.6] * 9999, 0.05) == pytest.approx(1.6, abs=1e-4)


@pytest.mark.parametrize("asked", [(97, 20, 97), (170, 97, 97)])
def test_an_oven_too_cool_is_refused(asked: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="no centre reaches"):
        baking.heat(*asked)
