"""Petal tins, straight-sided: an octagon with a half-circle on each of its eight sides.

Measured corner to corner, from the tip of a petal to the tip of the one across: s (2 + sqrt 2) for petals s wide;
area s² (2 + 2 sqrt 2 + pi), wall 4 pi s. Eight petals, and the sizes, are common practice.
"""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, Sizes
from tinbook.tins.trade import mm

PETALS = 8
PETAL = 1.0 / (2.0 + math.sqrt(2.0))
POINTS = 120


class Petal(Shape):
    """A petal tin, tip to opposite tip."""

    key = "petal"
    title = "Petal"
    sizes = (Size(name="width corner to corner"),)
    words = ("petal", "petals", "scalloped")
    standard = tuple((mm(inch), 75.0) for inch in (6, 9, 12, 15))
    depths_mm = mm(2, 3)
    example = "petal 23 cm x 7.5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        radius, middle = sizes[0] * PETAL / 2.0, sizes[0] * (1.0 - PETAL) / 2.0
        points = []
        for petal in range(PETALS):
            turn = 2.0 * math.pi * petal / PETALS
            for k in range(POINTS):
                swing = turn + math.pi * (k / POINTS - 0.5)
                points.append(
                    (
                        middle * math.cos(turn) + radius * math.cos(swing),
                        middle * math.sin(turn) + radius * math.sin(swing),
                    )
                )
        return (tuple(points),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return (sizes[0] * PETAL) ** 2 * (2.0 + 2.0 * math.sqrt(2.0) + math.pi)

    def perimeter_mm(self, sizes: Sizes) -> float:
        return PETALS * math.pi * sizes[0] * PETAL / 2.0

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])


PETAL_TIN = Petal()
