"""Cups in a tray: each a small cone cut off level, d at the rim and b at the base: pi h (d² + d b + b²)/12.

The sizes are common practice, chosen so that they hold to the brim what such cups usually do: mini about 30 ml, fairy
(bun) 55 ml, standard (muffin) 100 ml, jumbo 200 ml. Trays of 24, 12, 12 and 6 holes. A cup's bounds are its share of
the tray: 10/7 of its rim, which makes the tray of 12 standard cups 40 x 30 cm and the others within 2 cm of the usual
ones (common practice).
"""

from __future__ import annotations

import math

from tinbook.tins.shape import NamedSize, Ring, Shape, Size, Sizes, between, circle

PITCH = 10.0 / 7.0
# Largest rim in mm, columns and rows of the tray.
TRAYS = ((55.0, 6, 4), (80.0, 4, 3), (math.inf, 3, 2))


class Cups(Shape):
    """Cups by the name of their size, rim and base."""

    key = "cups"
    title = "Cups"
    purpose = "cups"
    sizes = (
        Size(name="top diameter", low_mm=20.0, high_mm=150.0),
        Size(name="base diameter", low_mm=10.0, high_mm=150.0, of=0, least=0.3),
    )
    extra_word = "base"
    extras = 1
    words = ("cups", "cup")
    named = (
        NamedSize(name="mini", sizes_mm=(48.0, 35.0), depth_mm=22.0, also=("mini muffin",), nouns=("mini muffins",)),
        NamedSize(
            name="fairy",
            sizes_mm=(65.0, 48.0),
            depth_mm=22.0,
            also=("bun", "fairy cake", "patty"),
            nouns=("buns", "fairy cakes"),
        ),
        NamedSize(
            name="standard",
            sizes_mm=(70.0, 50.0),
            depth_mm=35.0,
            also=("muffin", "cupcake"),
            nouns=("muffins", "cupcakes"),
        ),
        NamedSize(name="jumbo", sizes_mm=(90.0, 70.0), depth_mm=40.0, also=("jumbo muffin",), nouns=("jumbo muffins",)),
    )
    standard = tuple((named.sizes_mm, named.depth_mm) for named in named)
    depths_mm = (22.0, 35.0, 40.0)
    usual_mm = 35.0
    kept = "share"
    in_trays = True
    by_two_names = False
    example = "12 standard cups"
    extra_example = "12 cups 8 cm x 4 cm, base 6 cm"

    @property
    def noun(self) -> str:
        return "cup"

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return (circle(between(sizes[1], sizes[0], height)),)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        return math.pi * between(sizes[1], sizes[0], height) ** 2 / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[0]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0] * PITCH, sizes[0] * PITCH)

    def _tray(self, sizes: Sizes) -> tuple[int, int]:
        return next((columns, rows) for rim, columns, rows in TRAYS if sizes[0] <= rim)

    def holes(self, sizes: Sizes) -> int:
        columns, rows = self._tray(sizes)
        return columns * rows

    def stand_mm(self, sizes: Sizes) -> tuple[float, float]:
        columns, rows = self._tray(sizes)
        width, depth = self.bounds_mm(sizes)
        return (columns * width, rows * depth)

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        return None


CUPS = Cups()
