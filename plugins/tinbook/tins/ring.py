"""Plain ring tins: a round tin with a tube in the middle, both straight: area pi (d² - t²)/4.

The tube of a standard ring is common practice: 5 cm in the 20 cm ring, 7.5 cm in the larger two.
"""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, SizeFault, Sizes, circle
from tinbook.tins.trade import mm


class RingTin(Shape):
    """A ring, by its width and its tube."""

    key = "ring"
    title = "Ring"
    purpose = "ring"
    sizes = (Size(name="outer diameter"), Size(name="tube diameter", low_mm=10.0, of=0, least=0.05, most=0.8))
    extra_word = "tube"
    extras = 1
    words = ("ring", "rings", "tube", "savarin")
    standard = tuple((mm(*inches), 75.0) for inches in ((8, 2), (9, 3), (10, 3)))
    depths_mm = mm(3, 4)
    example = "ring 20 cm x 7.5 cm"
    extra_example = "ring 21 cm x 7.5 cm, tube 6 cm"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (circle(sizes[0]), circle(sizes[1]))

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return math.pi * (sizes[0] ** 2 - sizes[1] ** 2) / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[0]

    def inner_perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[1]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        return next((full[1:] for full, _ in self.standard if full[0] == sizes[0]), None)

    def misfit(self, index: int, size: float, outer: float) -> SizeFault:
        tube, ring = self._said(size), self._said(outer)
        if size < outer:
            return SizeFault(index, f"a tube of {tube} leaves next to no room in a ring of {ring}",
                         "measure the tube across the middle, at the rim")  # fmt: skip
        return SizeFault(index, f"the tube, {tube}, is wider than the ring, {ring}",
                     "the ring's diameter comes first, the tube after the comma")  # fmt: skip


RING = RingTin()
