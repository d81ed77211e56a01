"""Loaf tins: a sharp rectangle at the rim sloping to a smaller one at the base.

Sizes: length and width inside the rim, then of the base. Where the baker gives no base it is 20/23 of the length and
10/13 of the width, as a 23 x 13 cm tin on a 20 x 10 cm base: common practice. So are the two named tins: 16 x 10 x 6.5
cm and 23 x 13 x 7 cm, the small one holding half of the large. Shops differ by a fifth, so a loaf tin is worth
measuring with water.
"""

from __future__ import annotations

from tinbook.tins.shape import NamedSize, Ring, Shape, Size, Sizes, between, oblong
from tinbook.tins.trade import called_mm, mm, true_mm
from tinbook.units import Sold

BASE_LENGTH = 20.0 / 23.0
BASE_WIDTH = 10.0 / 13.0


def _base(length_mm: float, width_mm: float) -> Sizes:
    # To the hundredth, as every size is kept.
    return (round(length_mm * BASE_LENGTH, 2), round(width_mm * BASE_WIDTH, 2))


def _base_sold(rim_mm: Sizes, sold: Sold) -> Sizes:
    """The usual base under a rim: of the trade's size if it goes by one of the trade's names, as 20 x 10 cm does."""
    names = _base(*(called_mm(length, sold) for length in rim_mm))
    shares = _base(*rim_mm)
    trues = (true_mm(name, sold) for name in names)
    return tuple(share if true == name else true for true, name, share in zip(trues, names, shares, strict=True))


class Loaf(Shape):
    """A loaf tin, by its rim, its base, or a name such as 2 lb."""

    key = "loaf"
    title = "Loaf"
    purpose = "loaf"
    sizes = (
        Size(name="length"),
        Size(name="width"),
        Size(name="base length", of=0, least=0.5),
        Size(name="base width", of=1, least=0.4),
    )
    extra_word = "base"
    extras = 2
    words = ("loaf", "loaves")
    named = (
        NamedSize(
            name="1 lb",
            sizes_mm=(160.0, 100.0, *_base(160.0, 100.0)),
            depth_mm=65.0,
            also=("1 pound", "450 g", "small"),
        ),
        NamedSize(
            name="2 lb",
            sizes_mm=(230.0, 130.0, *_base(230.0, 130.0)),
            depth_mm=70.0,
            also=("2 pound", "900 g", "large"),
        ),
    )
    standard = tuple((named.sizes_mm, named.depth_mm) for named in named)
    depths_mm = (65.0, 70.0, *mm(3))
    usual_mm = 70.0
    example = "loaf 23 cm x 13 cm x 7 cm"
    extra_example = "loaf 25 cm x 13 cm x 7 cm, base 22 cm x 11 cm"

    def _at(self, sizes: Sizes, height: float) -> tuple[float, float]:
        return between(sizes[2], sizes[0], height), between(sizes[3], sizes[1], height)

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (oblong(*self._at(sizes, height)),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        length, width = self._at(sizes, height)
        return length * width

    def perimeter_mm(self, sizes: Sizes) -> float:
        return 2.0 * (sizes[0] + sizes[1])

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[1])

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        return _base_sold(sizes[:2], self.sold)

    def in_inches(self, sizes: Sizes, depth_mm: float) -> tuple[Sizes, float]:
        rim, depth_mm = super().in_inches(sizes[:2], depth_mm)
        return (*rim, *_base_sold(rim, "inches")), depth_mm

    def ordered(self, sizes: Sizes) -> Sizes:
        # The long side first, at the rim and at the base.
        return (*sorted(sizes[:2], reverse=True), *sorted(sizes[2:], reverse=True))


LOAF = Loaf()
