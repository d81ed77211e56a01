"""How long hands really take, from what they took before."""

from __future__ import annotations

from collections.abc import Iterable
from math import exp, log

FASTEST, SLOWEST = 0.25, 4.0
"""One sitting that was quicker or slower than this says no more than this (our own judgement)."""
PRIOR = 1.0
"""What the steps say counts for as much as so many sittings (our own judgement)."""


def pace(ratios: Iterable[float]) -> float:
    """How many times as long as its steps say something takes, from `ratios`, minutes taken over minutes said, each
    above 0: their geometric mean, with one sitting more that took what was said. 1 if there are none.

    >>> pace([])
    1.0
    >>> round(pace([2.0]), 4)
    1.4142
    >>> round(pace([1.5] * 50), 2)
    1.49
    """
    logs = [log(min(max(ratio, FASTEST), SLOWEST)) for ratio in ratios]
    return exp(sum(logs) / (len(logs) + PRIOR))
