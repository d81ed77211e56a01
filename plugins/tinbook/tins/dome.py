"""Domes: half a ball with its rim up, area pi r² (2 t - t²) at the share t of its height.

Half as deep as it is wide unless written otherwise: a shallower or deeper one is half an ellipsoid. The sizes are
common practice. A dome is filled to a share of its brim, as a cup is: a level depth of batter means little in it.
"""

from __future__ import annotations

import math
from typing import ClassVar, Literal

from tinbook.tins.shape import Ring, Shape, Size, Sizes, circle
from tinbook.tins.trade import mm


class Dome(Shape):
    """A dome, by the width of its rim."""

    key = "dome"
    title = "Dome"
    purpose = "dome"
    sizes = (Size(name="diameter"),)
    words: ClassVar[tuple[str, ...]] = ("dome", "domes", "half-ball", "hemisphere")
    standard = tuple((mm(inch), mm(inch)[0] / 2.0) for inch in (4, 5, 6, 8, 10))
    depths_mm = tuple(depth_mm for _, depth_mm in standard)
    kept = "share"
    example = "dome 15 cm"
    everyday = False
    solid: ClassVar[Literal["upright", "dome", "ball"]] = "dome"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (circle(sizes[0] * math.sqrt(max(0.0, height * (2.0 - height)))),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return self.parts * math.pi * sizes[0] ** 2 / 4.0 * height * (2.0 - height)

    def perimeter_mm(self, sizes: Sizes) -> float:
        return self.parts * math.pi * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])

    def in_inches(self, sizes: Sizes, depth_mm: float) -> tuple[Sizes, float]:
        true, _ = super().in_inches(sizes, depth_mm)
        return true, self.usual_depth_mm(true)

    def usual_depth_mm(self, sizes: Sizes) -> float:
        return round(sizes[0] / 2.0, 2)

    def sold_mm(self, sizes: Sizes) -> tuple[float, ...]:
        return (self.usual_depth_mm(sizes),)


DOME = Dome()
