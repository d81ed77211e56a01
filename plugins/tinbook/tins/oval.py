"""Oval tins, straight-sided: an ellipse, area pi a b/4. The short width is written first.

The sizes are those of the usual set to whole inches (common practice).
"""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, Sizes, circle
from tinbook.tins.trade import mm


class Oval(Shape):
    """An oval, by its width and length."""

    key = "oval"
    title = "Oval"
    sizes = (Size(name="short width"), Size(name="long width"))
    words = ("oval", "ovals", "ellipse")
    standard = tuple((mm(*inches), 75.0) for inches in ((6, 8), (8, 11), (10, 13), (12, 16)))
    depths_mm = mm(2, 3)
    example = "oval 15 cm x 20 cm x 7.5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (tuple((x * sizes[0], y * sizes[1]) for x, y in circle(1.0)),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return math.pi * sizes[0] * sizes[1] / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        """By the arithmetic-geometric mean (Gauss), which doubles its digits at each step.

        wall = pi (2 a² - sum of 2^n (a_n² - g_n²)) / mean, of the half-widths.
        """
        large, small = sizes[1] / 2.0, sizes[0] / 2.0
        total, power = 2.0 * large**2, 1.0
        while large - small > 1e-15 * large:
            total -= power * (large**2 - small**2)
            large, small, power = (large + small) / 2.0, math.sqrt(large * small), 2.0 * power
        return math.pi * total / large

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[1])

    def ordered(self, sizes: Sizes) -> Sizes:
        return tuple(sorted(sizes))


OVAL = Oval()
