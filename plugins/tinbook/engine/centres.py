"""Where the weight of a modelled piece lies, from its outline seen from the front."""

from __future__ import annotations

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
    weights = [wide_mm(ring, level) ** (2 if turned else 1) for level in levels]
    return sum(level * weight for level, weight in zip(levels, weights, strict=True)) / sum(weights)


def wide_mm(ring: Ring, level: float) -> float:
    """How much of a level lies inside an outline, mm."""
    crossed = []
    x1, y1 = ring[-1]
    for x2, y2 in ring:
        if (y1 <= level) != (y2 <= level):
            crossed.append(x1 + (x2 - x1) * (level - y1) / (y2 - y1))
        x1, y1 = x2, y2
    crossed.sort()
    return sum(crossed[1::2]) - sum(crossed[::2])
