"""Ring tins whose walls slope: the outer one in towards the base, the tube out, so that the cake comes away.

area = pi (d² - t²)/4 at each height, where d and t change in a straight line. The tubes of the standard tins are common
practice.
"""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, Sizes, between, circle
from tinbook.tins.trade import mm


class TaperedRing(Shape):
    """A ring with sloping walls, by its width and its tube, then the same at the base."""

    key = "tapered ring"
    title = "Tapered ring"
    purpose = "ring"
    sizes = (
        Size(name="diameter at the rim"),
        Size(name="diameter at the base", of=0, least=0.5),
        Size(name="tube at the base", low_mm=10.0, of=1, least=0.05, most=0.8),
        Size(name="tube at the rim", low_mm=10.0, of=2, least=0.3),
    )
    extra_word = "tube"
    extras = 2
    words = ("tapered ring", "tapered rings", "angel ring")
    standard = tuple((mm(*inches), 100.0) for inches in ((9, 8, 3, 2), (10, 9, 3, 2)))
    depths_mm = mm(3, 4)
    usual_mm = 100.0
    example = "tapered ring 25 cm x 23 cm x 10 cm"
    extra_example = "tapered ring 24 cm x 21 cm x 10 cm, tube 7 cm x 5 cm"
    everyday = False

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (circle(between(sizes[1], sizes[0], height)), circle(between(sizes[2], sizes[3], height)))

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        outer, tube = between(sizes[1], sizes[0], height), between(sizes[2], sizes[3], height)
        return math.pi * (outer**2 - tube**2) / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[0]

    def inner_perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[3]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        return next((full[2:] for full, _ in self.standard if full[:2] == sizes[:2]), None)

    def ordered(self, sizes: Sizes) -> Sizes:
        # The wall is widest at the rim and the tube at the base: any other way the cake stays in.
        return (*sorted(sizes[:2], reverse=True), *sorted(sizes[2:], reverse=True))


TAPERED_RING = TaperedRing()
