"""Rectangular tins and small sheet tins, straight-sided. The short side is written first."""

from __future__ import annotations

from typing import ClassVar

from tinbook.tins.shape import Ring, Shape, Size, Sizes, oblong
from tinbook.tins.trade import mm


class Rectangle(Shape):
    """A rectangle, short side first."""

    key = "rectangle"
    title = "Rectangle"
    sizes = (Size(name="short side"), Size(name="long side"))
    words: ClassVar[tuple[str, ...]] = ("rectangle", "rectangles", "rectangular", "oblong", "traybake")
    standard = tuple((mm(*inches), 50.0) for inches in ((7, 11), (8, 12), (9, 13), (11, 15), (12, 18)))
    depths_mm = mm(1.5, 2, 3)
    usual_mm = 50.0
    example = "rectangle 23 cm x 33 cm x 5 cm"

    @property
    def noun(self) -> str:
        return "rectangular tin"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (oblong(sizes[0], sizes[1]),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return sizes[0] * sizes[1]

    def perimeter_mm(self, sizes: Sizes) -> float:
        return 2.0 * (sizes[0] + sizes[1])

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[1])

    def ordered(self, sizes: Sizes) -> Sizes:
        return tuple(sorted(sizes))


RECTANGLE = Rectangle()
