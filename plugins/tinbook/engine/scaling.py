"""Scaling a mixture. All factors are plain ratios of like to like; all volumes ml, weights g, lengths mm.

The rule of the trade, common practice: the batter stands as deep in the new tin as in the old, so the factor is
the ratio of the volumes up to that depth; a deeper tin alone changes nothing but what fits.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from tinbook.engine.tolerance import GRAIN, fits, whole_down, whole_up

NARROW_MM = 1e-4
"""Where halving stops: a tenth of what a depth is told to."""


def factor(wanted: float, own: float) -> float:
    """wanted / own; both > 0 and in the same unit. Raises ValueError otherwise."""
    if not (wanted > 0 and own > 0):
        raise ValueError(f"a factor needs two positive amounts, not {wanted} and {own}")
    return wanted / own


class WholeEggs(NamedTuple):
    """The whole-egg version: `eggs` whole ones, so `factor`, which is `off` (a share, signed) from the exact one."""

    eggs: int
    factor: float
    off: float


def whole_eggs(eggs: float, exact_factor: float) -> WholeEggs:
    """Snap `exact_factor` so that `eggs` (> 0, in the written mixture) become a whole number, at least one.

    factor_whole = n / eggs with n = floor(eggs * factor + 1/2); off = factor_whole / factor - 1.
    """
    count = max(1, whole_down(eggs * exact_factor + 0.5))
    snapped = count / eggs
    return WholeEggs(count, snapped, snapped / exact_factor - 1)


def within(off: float, tolerance: float) -> bool:
    """Whether an error (a share, signed) is put up with; one that is the tolerance itself to the last digit is."""
    return abs(off) <= tolerance + GRAIN


def depth_for(volume_ml: float, volume_at: Callable[[float], float], brim_mm: float) -> float:
    """The depth (mm, 0 to `brim_mm`) at which `volume_at(depth_mm)` ml, rising with depth, equals `volume_ml`.

    Bisection to a thousandth of a millimetre. Raises ValueError if the brim holds less than that.
    """
    if not fits(volume_ml, volume_at(brim_mm)):
        raise ValueError("more than the brim holds")
    low, high = 0.0, brim_mm
    while high - low > NARROW_MM:
        middle = (low + high) / 2
        low, high = (middle, high) if volume_at(middle) < volume_ml else (low, middle)
    return high


def times_needed(amount: float, room: float) -> int:
    """How many times a thing that holds `room` must be filled for `amount`: tins, bowls, shelves. Same unit."""
    return max(1, whole_up(amount / room))


def wide_tin_raising(width_mm: float, points: Sequence[tuple[float, float]]) -> float:
    """Share of the raising agent kept in a tin `width_mm` wide, from `points` of (mm, share), widths rising.

    Straight lines between the points, level outside them. Levels at 12 and 14 in: The Cake Bible (1988).
    """
    if width_mm <= points[0][0]:
        return points[0][1]
    for (left, kept_left), (right, kept_right) in pairwise(points):
        if width_mm <= right:
            return kept_left + (kept_right - kept_left) * (width_mm - left) / (right - left)
    return points[-1][1]


def plain_for_self_raising(self_raising_g: float, powder_share: float) -> tuple[float, float]:
    """Plain flour and baking powder (g, g) that weigh as much as `self_raising_g` together.

    `powder_share` is the powder as a share of the plain flour's weight: 0.05, sources 0.04 to 0.06.
    """
    plain_g = self_raising_g / (1 + powder_share)
    return plain_g, self_raising_g - plain_g
