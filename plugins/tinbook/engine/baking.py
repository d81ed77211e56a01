"""How long a cake bakes, learned from what was baked: a Bayesian straight line in the logs.

ln minutes = a + p ln(width / 200 mm) + q ln(batter depth / 40 mm) + ln heat, with heat = ln(1.6 (oven - start) / (oven
- centre)), °C: the first term of a slab's cooling curve. Each kind of mixture has its own a, p, q, and its recipes
differ from them a little. All are normal and the scatter of single bakes is known, so the answer has a closed form
(conjugate normal; Gelman et al., Bayesian Data Analysis, chapters 5 and 14).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

WIDTH_MM = 200.0
DEPTH_MM = 40.0
"""The tin the line is anchored to: 20 cm, with 4 cm of batter."""
LEAST_POWER = 0.05
"""A wider tin and a deeper batter take longer, whatever a few bakes suggest. Our own judgement."""
EIGHTY_PERCENT = 1.2815515655446004
"""This many standard deviations either side hold 80 % of a normal distribution."""


def heat(oven_c: float, start_c: float, centre_c: float) -> float:
    """ln(1.6 (oven - start) / (oven - centre)), which minutes are proportional to; °C. ValueError unless start < centre
    < oven.
    """
    if not start_c < centre_c < oven_c:
        raise ValueError(f"no centre reaches {centre_c!r} °C from {start_c!r} °C in an oven at {oven_c!r} °C")
    return log(1.6 * (oven_c - start_c) / (oven_c - centre_c))


def spread(low: float, high: float) -> float:
    """The standard deviation of a normal quantity that lies between `low` and `high` 80 % of the time."""
    return (high - low) / (2.0 * EIGHTY_PERCENT)


@dataclass(frozen=True, slots=True)
class Prior:
    """What is believed about (a, p, q) before any bake: mean and standard deviation for a kind of mixture; `own`:
    standard deviation between recipes of the kind; `scatter`: of ln minutes between bakes.
    """

    mean: tuple[float, float, float]
    spread: tuple[float, float, float]
    own: tuple[float, float, float]
    scatter: float

    def minutes(self, width_mm: float, depth_mm: float, heat: float) -> float:
        """The likeliest minutes in a tin this wide with batter this deep."""
        a, p, q = self.mean
        return exp(a + p * log(width_mm / WIDTH_MM) + q * log(depth_mm / DEPTH_MM)) * heat


@dataclass(frozen=True, slots=True)
class Evidence:
    """What the bakes of one recipe say about (a, p, q): `weight` (3 × 3) and `pull` (3), summed over the entries."""

    weight: Floats
    pull: Floats


@dataclass(frozen=True, slots=True)
class Law:
    """(a, p, q) as learned: mean (3) and covariance (3 × 3), and the scatter of a bake."""

    mean: Floats
    covariance: Floats
    scatter: float

    @property
    def width_exponent(self) -> float:
        """The power of the width that minutes grow by."""
        return float(self.mean[1])

    @property
    def depth_exponent(self) -> float:
        """The power of the batter's depth that minutes grow by."""
        return float(self.mean[2])

    def minutes(self, widths_mm: Sequence[float], depths_mm: Sequence[float], heat: float) -> tuple[Floats, Floats]:
        """For each tin (n widths, n depths): the median in minutes, and the standard deviation of ln minutes; both
        (n,).
        """
        import numpy as np

        rows = _rows(widths_mm, depths_mm)
        variance = (rows @ self.covariance * rows).sum(axis=1) + self.scatter**2
        return np.exp(rows @ self.mean) * heat, np.sqrt(variance)


def _rows(widths_mm: Sequence[float], depths_mm: Sequence[float]) -> Floats:
    import numpy as np

    rows = np.ones((len(widths_mm), 3))
    rows[:, 1] = np.log(np.asarray(widths_mm) / WIDTH_MM)
    rows[:, 2] = np.log(np.asarray(depths_mm) / DEPTH_MM)
    return rows


def evidence(
    widths_mm: Sequence[float], depths_mm: Sequence[float], heats: Sequence[float], minutes: Sequence[float],
    prior: Prior,
) -> Evidence:  # fmt: skip
    """What the bakes of one recipe say. One value per bake: width and batter depth in mm, `heat`, minutes; all above
    0.
    """
    import numpy as np

    rows = _rows(widths_mm, depths_mm)
    seen = np.log(np.asarray(minutes, dtype=float)) - np.log(np.asarray(heats, dtype=float))
    return Evidence(rows.T @ rows / prior.scatter**2, rows.T @ seen / prior.scatter**2)


@dataclass(frozen=True, slots=True)
class OfKind:
    """What recipes of a kind say about the kind itself: `weight` (3 × 3) and `pull` (3), which add up; 0 for
    nothing.
    """

    weight: Floats | float
    pull: Floats | float

    def __repr__(self) -> str:
        """To the last digit, unlike numpy's own, so that two of them can be told apart."""
        weight, pull = (each if isinstance(each, float) else each.tolist() for each in (self.weight, self.pull))
        return f"OfKind({weight}, {pull})"

    def __add__(self, other: OfKind) -> OfKind:
        return OfKind(self.weight + other.weight, self.pull + other.pull)

    def __sub__(self, other: OfKind) -> OfKind:
        return OfKind(self.weight - other.weight, self.pull - other.pull)


NO_KIN = OfKind(0.0, 0.0)
"""For a kind that has not been baked yet."""


def of_kind(prior: Prior, seen: Evidence) -> OfKind:
    """What one recipe's bakes say about its kind: what remains once its own difference is integrated out.

    (weight⁻¹ + Ω)⁻¹ with Ω the covariance between recipes, without inverting `weight`, which may be singular.
    """
    import numpy as np

    faded = np.linalg.inv(np.eye(3) + seen.weight @ np.diag(np.square(prior.own)))
    return OfKind(faded @ seen.weight, faded @ seen.pull)


def learned(prior: Prior, own: Evidence, kin: OfKind = NO_KIN) -> Law:
    """The law of one recipe, from its `own` bakes and from what the other recipes of its kind say together."""
    import numpy as np

    precision = np.diag(1.0 / np.square(prior.spread))
    spread_of_kind = np.linalg.inv(precision + kin.weight)
    before = np.linalg.inv(spread_of_kind + np.diag(np.square(prior.own)))
    covariance = np.linalg.inv(before + own.weight)
    mean_of_kind = spread_of_kind @ (precision @ np.asarray(prior.mean) + kin.pull)
    mean: Floats = covariance @ (before @ mean_of_kind + own.pull)
    for which in (1, 2):
        # contradictory bakes can suggest it: then take the likeliest that still grows
        if mean[which] < LEAST_POWER:
            mean = mean + covariance[:, which] / covariance[which, which] * (LEAST_POWER - mean[which])
    mean[1:] = np.maximum(mean[1:], LEAST_POWER)
    return Law(mean, np.asarray(covariance, dtype=np.float64), prior.scatter)


def settled(typical: float, wide: float, seen: Sequence[float], scatter: float) -> float:
    """One number, learned the same way: believed to be `typical` ± `wide`, seen with scatter `scatter` (all in one
    unit).

    The weighted mean (typical / wide² + Σ seen / scatter²) / (1 / wide² + n / scatter²).
    """
    trust, weight = 1.0 / wide**2, 1.0 / scatter**2
    return (typical * trust + sum(seen) * weight) / (trust + len(seen) * weight)
