"""Heart tins, straight-sided: a square stood on its corner, with a half-circle on each of its two upper sides.

Measured across the widest part, which is s (1 + 1/sqrt 2) for a square of side s; area s² (1 + pi/4), wall s (2 + pi).
The construction and the sizes are common practice; hearts in the shops differ by a few hundredths.
"""

from __future__ import annotations

import math

from tinbook.tins.shape import CIRCLE_POINTS, Ring, Shape, Size, Sizes
from tinbook.tins.trade import mm

SIDE = 1.0 / (1.0 + math.sqrt(0.5))
# From the point up to the middle of the half-circles, and from there to their top, in sides of the square.
TALL = math.sqrt(0.5) + math.sqrt(0.125) + 0.5


class Heart(Shape):
    """A heart, by its widest part."""

    key = "heart"
    title = "Heart"
    sizes = (Size(name="width"),)
    words = ("heart", "hearts", "heart-shaped")
    standard = tuple((mm(inch), 75.0) for inch in (6, 8, 9, 10, 12, 14))
    depths_mm = mm(2, 3)
    example = "heart 20 cm x 7.5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        side = sizes[0] * SIDE
        low, middle, half = -side * TALL / 2.0, side * math.sqrt(0.125), CIRCLE_POINTS // 2
        # The point lies `low`; the right half-circle runs from lower right to upper left, the left one mirrors it.
        right = [
            (
                middle + side / 2.0 * math.cos(math.pi * (k / half - 0.25)),
                low + 3.0 * middle + side / 2.0 * math.sin(math.pi * (k / half - 0.25)),
            )
            for k in range(half + 1)
        ]
        return (((0.0, low), *right, *((-x, y) for x, y in reversed(right[:-1]))),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return (sizes[0] * SIDE) ** 2 * (1.0 + math.pi / 4.0)

    def perimeter_mm(self, sizes: Sizes) -> float:
        return sizes[0] * SIDE * (2.0 + math.pi)

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0] * SIDE * TALL)


HEART = Heart()
