"""The side of a cake laid flat and divided, and dowels set round an inside edge. Lengths in mm, x along, y
downwards.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cosh, dist, hypot

Point = tuple[float, float]
STEPS = 48
"""Straight strokes to draw one drop."""


def sag_of_parabola(along: float, span: float, deep: float) -> float:
    """How far a parabola hangs below its ends at `along` from one of them: 4 d x (s - x) / s²."""
    return 4.0 * deep * along * (span - along) / span**2


def catenary_mm(span: float, deep: float) -> float:
    """The a of the chain y = a cosh(x / a) that hangs `deep` across `span`: a (cosh(s / 2a) - 1) = d.

    Bisection for u = s / 2a in (cosh u - 1) / u = 2 d / s, which only rises with u. ValueError if it does not hang.
    """
    if not (span > 0.0 and deep > 0.0):
        raise ValueError(f"no chain hangs {deep!r} over {span!r}")
    wanted = 2.0 * deep / span
    low, high = 0.0, 1.0
    while (cosh(min(high, 700.0)) - 1.0) / high < wanted:
        high *= 2.0
    for _ in range(200):
        middle = (low + high) / 2.0
        if (cosh(min(middle, 700.0)) - 1.0) / middle < wanted:
            low = middle
        else:
            high = middle
    return span / (low + high)


def sag_of_catenary(along: float, span: float, deep: float) -> float:
    """How far a chain hangs below its ends at `along` from one of them."""
    a = catenary_mm(span, deep)
    return a * (cosh(span / 2.0 / a) - cosh((along - span / 2.0) / a))


def drop(left: float, top: float, span: float, deep: float, curve: str) -> tuple[Point, ...]:
    """One drop from (left, top), `deep` at its middle; `curve` is "parabola" or "catenary"."""
    sag = {"parabola": sag_of_parabola, "catenary": sag_of_catenary}[curve]
    steps = [span * step / STEPS for step in range(STEPS + 1)]
    return tuple((left + along, top + sag(along, span, deep)) for along in steps)


def edge_mm(ring: Sequence[Point]) -> float:
    """The length of a closed ring of points."""
    return sum(dist(start, end) for start, end in zip(ring, (*ring[1:], ring[0]), strict=True))


def along_ring(ring: Sequence[Point], count: int) -> tuple[Point, ...]:
    """`count` places evenly spaced along a closed ring, the first at its first point."""
    total, walked = edge_mm(ring), 0.0
    places: list[Point] = []
    wanted = [total * index / count for index in range(count)]
    for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
        long = hypot(end[0] - start[0], end[1] - start[1])
        while len(places) < count and wanted[len(places)] < walked + long:
            share = (wanted[len(places)] - walked) / long
            places.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
        walked += long
    return tuple(places)


def nearest_mm(points: Sequence[Point]) -> float:
    """The distance between the two nearest points; infinite for fewer than two."""
    pairs = [dist(point, before) for index, point in enumerate(points) for before in points[:index]]
    return min(pairs, default=float("inf"))
