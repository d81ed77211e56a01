"""Where the weight of a modelled piece lies, from its outline seen from the front."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

SLICES = 80
Ring = Sequence[tuple[float, float]]


def centre_up_mm(ring: Ring, turned: bool) -> float:
    """How high the centre of weight of a piece lies, mm, on the scale of its outline.

    ring: the outline from the front, (x, y) in mm, y upwards. A sheet weighs as wide as it is at each height; a solid
    that is `turned`, as round as it is wide, by the square of that. For a cone a quarter of its height, for a triangle
    a third: any handbook of mechanics. ValueError for an outline without height.
    """
    foot, top = min(y for _, y in ring), max(y for _, y in ring)
    if top <= foot:
        raise ValueError("an outline needs a height")
    step = (top - foot) / SLICES
    levels = [foot + (nth + 0.5) * step for nth in range(SLICES)]
    weights = [wide**2 if turned else wide for wide in wides_mm(ring, levels)]
    return sum(level * weight for level, weight in zip(levels, weights, strict=True)) / sum(weights)


def wides_mm(ring: Ring, levels: Sequence[float]) -> list[float]:
    """How much of each level lies inside an outline, mm; levels from the lowest."""
    crossed: list[list[float]] = [[] for _ in levels]
    x1, y1 = ring[-1]
    for x2, y2 in ring:
        low, high = (y1, y2) if y1 <= y2 else (y2, y1)
        for nth in range(bisect_left(levels, low), bisect_left(levels, high)):
            crossed[nth].append(x1 + (x2 - x1) * (levels[nth] - y1) / (y2 - y1))
        x1, y1 = x2, y2
    return [sum(ordered[1::2]) - sum(ordered[::2]) for ordered in map(sorted, crossed)]
