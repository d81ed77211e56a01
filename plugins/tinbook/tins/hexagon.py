"""Hexagon tins, straight-sided, measured corner to corner (common practice): area 3 sqrt 3 d²/8."""

from __future__ import annotations

import math

from tinbook.tins.polygon import corners
from tinbook.tins.shape import Ring, Shape, Size, Sizes
from tinbook.tins.trade import mm


class Hexagon(Shape):
    """A hexagon, corner to corner."""

    key = "hexagon"
    title = "Hexagon"
    sizes = (Size(name="width corner to corner"),)
    words = ("hexagon", "hexagons", "hexagonal")
    standard = tuple((mm(inch), 75.0) for inch in (6, 9, 12, 15))
    depths_mm = mm(2, 3)
    example = "hexagon 23 cm x 7.5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (corners(6, sizes[0]),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return 3.0 * math.sqrt(3.0) * sizes[0] ** 2 / 8.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return 3.0 * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0] * math.sqrt(0.75))


HEXAGON = Hexagon()
