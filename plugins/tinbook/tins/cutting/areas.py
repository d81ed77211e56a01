"""How much of an outline is below a line, in a strip, or beside an edge. Lengths mm, areas mm².

Areas come from the outline's own corners: the area below a line is the sum of ∫ x dy along the edges below it, which is
exact for any polygon, tubes and all.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

import numpy as np

from tinbook.tins.shape import Ring

Array = np.ndarray[Any, np.dtype[np.float64]]
Point = tuple[float, float]
STEPS = 480
"""How many steps a strip is divided into to find where it is cut."""


def turned(rings: Sequence[Ring]) -> tuple[Ring, ...]:
    """The outline laid on its side: its left becomes its top, its top its left. Turning twice restores it."""
    return tuple(tuple((-y, -x) for x, y in ring) for ring in rings)


def spans(rings: Sequence[Ring]) -> tuple[float, float, float, float]:
    """Least x, least y, most x, most y of the outline."""
    points = points_of(rings[0])
    (left, low), (right, high) = points.min(axis=0), points.max(axis=0)
    return float(left), float(low), float(right), float(high)


def area_below(rings: Sequence[Ring], heights: Sequence[float] | Array) -> Array:
    """The area, mm², below each of `heights`; shape (n,)."""
    return below_points([points_of(ring) for ring in rings], heights)


@lru_cache(maxsize=512)
def points_of(ring: Ring) -> Array:
    """The corners of a ring, (n, 2): x and y."""
    return np.asarray(ring)


def below_points(rings: Sequence[Array], heights: Sequence[float] | Array) -> Array:
    """`area_below` for rings given by their corners, each (n, 2)."""
    lines = np.asarray(heights, dtype=float)[:, None]
    total = np.zeros(lines.shape[0])
    for index, points in enumerate(rings):
        after = np.roll(points, -1, axis=0)
        whole = float(np.sum(points[:, 0] * after[:, 1] - after[:, 0] * points[:, 1]))
        falls = after[:, 1] < points[:, 1]
        low, high = np.where(falls[:, None], after, points), np.where(falls[:, None], points, after)
        rise = high[:, 1] - low[:, 1]
        level = rise <= 0.0
        part = np.clip((lines - low[:, 1]) / np.where(level, 1.0, rise), 0.0, 1.0)
        under = rise * part * (low[:, 0] + part / 2.0 * (high[:, 0] - low[:, 0]))
        sign = math.copysign(1.0, whole) * (1.0 if index == 0 else -1.0)
        total += sign * (np.where(falls, -1.0, 1.0) * under).sum(axis=1)
    return total


def area(rings: Sequence[Ring]) -> float:
    """The area of the whole outline, mm²."""
    return float(area_below(rings, [spans(rings)[3]])[0])


def strip_areas(rings: Sequence[Ring], strips: int) -> tuple[float, ...]:
    """The areas, mm², of this many strips of equal width, from the top down."""
    _, low, _, high = spans(rings)
    below = area_below(rings, np.linspace(high, low, strips + 1))
    return tuple(float(share) for share in below[:-1] - below[1:])


def strip_edges(rings: Sequence[Ring], shares: Sequence[float]) -> tuple[float, ...]:
    """How far from the top the strips begin and end that hold these shares of the outline; the shares sum to 1."""
    _, low, _, high = spans(rings)
    heights = np.linspace(low, high, STEPS + 1)
    below = area_below(rings, heights)
    wanted = (1.0 - np.cumsum(shares)[:-1]) * below[-1]
    cuts = np.interp(wanted, below, heights)
    for _ in range(2):
        # One of Newton's steps: the area below grows by the width there.
        beside = area_below(rings, np.concatenate((cuts - 0.05, cuts, cuts + 0.05))).reshape(3, -1)
        cuts = cuts - (beside[1] - wanted) / np.maximum((beside[2] - beside[0]) / 0.1, 1.0)
    return (0.0, *(float(high - cut) for cut in cuts), high - low)
