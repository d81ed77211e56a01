"""Square tins, straight-sided, with sharp corners."""

from __future__ import annotations

from tinbook.tins.shape import Ring, Shape, Size, Sizes, oblong
from tinbook.tins.trade import mm


class Square(Shape):
    """A square, by its side."""

    key = "square"
    title = "Square"
    sizes = (Size(name="side"),)
    words = ("square", "squares")
    standard = tuple((mm(inch), 75.0) for inch in range(4, 17))
    depths_mm = mm(1.5, 2, 3, 4)
    example = "square 20 cm x 7.5 cm"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (oblong(sizes[0], sizes[0]),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return sizes[0] ** 2

    def perimeter_mm(self, sizes: Sizes) -> float:
        return 4.0 * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])


SQUARE = Square()
