"""Scaling a mixture. Factors are plain ratios of like to like; volumes in ml, weights in g, lengths in mm.

The rule of the trade, common practice: the batter is as deep in the new tin as in the old, so the factor is the
ratio of the volumes up to that depth; a deeper tin alone only changes what fits.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from tinbook.engine.tolerance import GRAIN, fits, whole_down, whole_up

NARROW_MM = 1e-4
"""Where bisection stops: a tenth of the precision a depth is shown to."""


def factor(wanted: float, own: float) -> float:
    """wanted / own; both > 0 and in the same unit. Raises ValueError otherwise."""
    if not (wanted > 0 and own > 0):
        raise ValueError(f"a factor needs two positive amounts, not {wanted} and {own}")
    return wanted / own


class WholeEggs(NamedTuple):
    """The whole-egg version: `eggs` of them give `factor`, which is `off` (a signed share) from the exact one."""

    eggs: int
    factor: float
    off: float


def whole_eggs(eggs: float, exact_factor: float) -> WholeEggs:
    """Snap `exact_factor` so that `eggs` (> 0, in the written mixture) becomes a whole number, at least one.

    factor_whole = n / eggs with n = floor(eggs * factor + 1/2); off = factor_whole / factor - 1.

    >>> whole_eggs(4, 1.25)
    WholeEggs(eggs=5, factor=1.25, off=0.0)
    """
    count = max(1, whole_down(eggs * exact_factor + 0.5))
    snapped = count / eggs
    return WholeEggs(count, snapped, snapped / exact_factor - 1)


def within(off: float, tolerance: float) -> bool:
    """Whether an error (a signed share) is within a tolerance, or equal to it up to rounding in the last digit."""
    return abs(off) <= tolerance + GRAIN


def depth_for(volume_ml: float, volume_at: Callable[[float], float], brim_mm: float) -> float:
    """The depth (mm, 0 to `brim_mm`) at which `volume_at(depth_mm)` ml, rising with depth, equals `volume_ml`.

    Bisection to a thousandth of a millimetre. ValueError if the brim holds less than that.
    """
    if not fits(volume_ml, volume_at(brim_mm)):
        raise ValueError("more than the brim holds")
    low, high = 0.0, brim_mm
    while high - low > NARROW_MM:
        middle = (low + high) / 2
        low, high = (middle, high) if volume_at(middle) < volume_ml else (low, middle)
    return high


def times_needed(amount: float, room: float) -> int:
    """How many times something that holds `room` must be filled for `amount`: tins, bowls, shelves. Same unit."""
    return max(1, whole_up(amount / room))


def wide_tin_raising(width_mm: float, points: Sequence[tuple[float, float]]) -> float:
    """The share of raising agent to keep in a tin `width_mm` wide, from `points` of (mm, share), in order of width.

    Straight lines between the points, level outside them. At 12 in The Cake Bible (1988) has 1.125 tsp where a 9 to 10
    in tin has 1.333, and at 14 in 1 tsp:

    >>> levels = ((250.0, 1.0), (300.0, 1.125 / 1.333), (350.0, 1.0 / 1.333))
    >>> [round(wide_tin_raising(width, levels) * 1.333, 3) for width in (230.0, 300.0, 350.0)]
    [1.333, 1.125, 1.0]
    """
    if width_mm <= points[0][0]:
        return points[0][1]
    for (left, kept_left), (right, kept_right) in pairwise(points):
        if width_mm <= right:
            return kept_left + (kept_right - kept_left) * (width_mm - left) / (right - left)
    return points[-1][1]


def plain_for_self_raising(self_raising_g: float, powder_share: float) -> tuple[float, float]:
    """Plain flour and baking powder (g, g) that together weigh `self_raising_g`.

    `powder_share` is the powder as a share of the plain flour's weight: 0.05, sources 0.04 to 0.06. A published mix has
    12.5 g of powder to 237.5 g of flour (tests/data/formula_balance.csv, S6):

    >>> [round(grams, 1) for grams in plain_for_self_raising(250.0, 12.5 / 237.5)]
    [237.5, 12.5]
    """
    plain_g = self_raising_g / (1 + powder_share)
    return plain_g, self_raising_g - plain_g
