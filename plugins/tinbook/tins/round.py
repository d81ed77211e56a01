"""Round tins, straight-sided: area pi d²/4."""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, Sizes, circle
from tinbook.tins.trade import mm


class Round(Shape):
    """A round, by its diameter."""

    key = "round"
    title = "Round"
    sizes = (Size(name="diameter"),)
    words = ("round", "rounds", "circle", "circular")
    standard = tuple((mm(inch), 75.0) for inch in range(4, 17))
    depths_mm = mm(1.5, 2, 3, 4)
    example = "round 20 cm x 7.5 cm"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (circle(sizes[0]),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return math.pi * sizes[0] ** 2 / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])


ROUND = Round()
