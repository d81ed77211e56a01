"""The centre of weight of a modelled piece, from its outline seen from the front."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

SLICES = 80
Ring = Sequence[tuple[float, float]]


def centre_up_mm(ring: Ring, turned: bool) -> float:
    """How high the centre of weight of a piece is, mm, on the scale of its outline.

    ring: the outline from the front, (x, y) in mm, y upwards. At each height a sheet counts by its width; a solid that
    is `turned`, as deep as it is wide, by the square of its width. A cone gives a quarter of its height, a triangle a
    third, as in any mechanics handbook. ValueError for an outline without height.
    """
    foot, top = min(y for _, y in ring), max(y for _, y in ring)
    if top <= foot:
        raise ValueError("an outline needs a height")
    step = (top - foot) / SLICES
    levels = [foot + (nth + 0.5) * step for nth in range(SLICES)]
    weights = [wide**2 if turned else wide for wide in wides_mm(ring, levels)]
    return sum(level * weight for level, weight in zip(levels, weights, strict=True)) / sum(weights)


def wides_mm(ring: Ring, levels: Sequence[float]) -> list[float]:
    """How much of each level is inside an outline, mm, from the lowest level up."""
    crossed: list[list[float]] = [[] for _ in levels]
    x1, y1 = ring[-1]
    for x2, y2 in ring:
        low, high = (y1, y2) if y1 <= y2 else (y2, y1)
        for nth in range(bisect_left(levels, low), bisect_left(levels, high)):
            crossed[nth].append(x1 + (x2 - x1) * (levels[nth] - y1) / (y2 - y1))
        x1, y1 = x2, y2
    return [sum(ordered[1::2]) - sum(ordered[::2]) for ordered in map(sorted, crossed)]
