"""Fluted ring tins: a wavy wall round a tube, both sloping as in a tapered ring.

The wall lies r (1 - a + a cos 12 u) from the middle at the angle u, its mean area pi r² ((1 - a)² + a²/2). Measured
across the crests at the rim, and across the tube at the rim. That the wall goes in to 0.8 at the base, the tube out to
1.3, and the flutes are 2 a = 0.08 of the half-width deep, is common practice, checked with published brims.
"""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring, Shape, Size, Sizes, between, circle
from tinbook.tins.trade import mm

FLUTES, SWING = 12, 0.04
BASE, TUBE_BASE = 0.8, 1.3
POINTS = 720
AREA = math.pi / 4.0 * ((1.0 - SWING) ** 2 + SWING**2 / 2.0)


def _wave(turn: float) -> tuple[float, float]:
    """How far the wall of a ring 2 wide lies from the middle, and how fast that changes with the angle."""
    return (1.0 - SWING + SWING * math.cos(FLUTES * turn), -SWING * FLUTES * math.sin(FLUTES * turn))


TURNS = tuple(2.0 * math.pi * k / POINTS for k in range(POINTS))
# Wall over width: there is no closed form, and equal steps along a periodic curve are exact to the last digits.
WALL = sum(math.hypot(*_wave(turn)) for turn in TURNS) * math.pi / POINTS
WAVE = tuple((_wave(turn)[0] / 2.0 * math.cos(turn), _wave(turn)[0] / 2.0 * math.sin(turn)) for turn in TURNS)


class FlutedRing(Shape):
    """A fluted ring, by its width across the crests and its tube."""

    key = "fluted ring"
    title = "Fluted ring"
    purpose = "ring"
    sizes = (Size(name="outer diameter"), Size(name="tube diameter", low_mm=10.0, of=0, least=0.05, most=0.5))
    extra_word = "tube"
    extras = 1
    words = ("fluted ring", "fluted rings", "fluted tube", "gugelhupf")
    standard = tuple((mm(*inches), depth_mm) for *inches, depth_mm in ((8, 2, 75.0), (9, 2, 75.0), (10, 2, 90.0)))
    depths_mm = (75.0, 90.0, 100.0)
    usual_mm = 90.0
    example = "fluted ring 25 cm x 9 cm"
    extra_example = "fluted ring 24 cm x 10 cm, tube 6 cm"
    everyday = False

    def _at(self, sizes: Sizes, height: float) -> tuple[float, float]:
        return sizes[0] * between(BASE, 1.0, height), sizes[1] * between(TUBE_BASE, 1.0, height)

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        outer, tube = self._at(sizes, height)
        return (tuple((x * outer, y * outer) for x, y in WAVE), circle(tube))

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        outer, tube = self._at(sizes, height)
        return AREA * outer**2 - math.pi * tube**2 / 4.0

    def perimeter_mm(self, sizes: Sizes) -> float:
        return WALL * sizes[0]

    def inner_perimeter_mm(self, sizes: Sizes) -> float:
        return math.pi * sizes[1]

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        return (sizes[0], sizes[0])

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        return next((full[1:] for full, _ in self.standard if full[0] == sizes[0]), None)


FLUTED_RING = FlutedRing()
