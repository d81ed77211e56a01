"""Octagon tins, straight-sided, measured side to side, as they sit in a box (common practice): 2 (sqrt 2 - 1) a²."""

from __future__ import annotations

import math

from tinbook.tins.polygon import corners
from tinbook.tins.shape import Ring, Shape, Size, Sizes
from tinbook.tins.trade import mm

SIDE = math.sqrt(2.0) - 1.0


class Octagon(Shape):
    """An octagon, side to side."""

    key = "octagon"
    title = "Octagon"
    sizes = (Size(name="width side to side"),)
    words = ("octagon", "octagons", "octagonal")
    standard = tuple((mm(inch), 75.0) for inch in (6, 8, 10, 12, 14))
    depths_mm = mm(2, 3)
    example = "octagon 20 cm x 7.5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (corners(8, sizes[0] / math.cos(math.pi / 8.0), 1.0 / 16.0),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return 2.0 * SIDE * sizes[0] ** 2

    def perimeter_mm(self, sizes: Sizes) -> float:
        return 8.0 * SIDE * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])


OCTAGON = Octagon()
