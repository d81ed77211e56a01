"""A tin of any outline, straight-sided, drawn by its owner as an SVG path in mm: a number, a letter, a house.

Its sizes are the points of its rings, x and y in turn, each ring closed by its first point: the outer wall, then holes.
It has no trade sizes, and is called by its owner's name for it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from tinbook.tins.path import EXAMPLE, crossing, read_path
from tinbook.tins.shape import Ring, Shape, Size, SizeFault, Sizes
from tinbook.tins.trade import metric_label, mm
from tinbook.units import Misread


class Outline(Shape):
    """An outline by its path."""

    key = "outline"
    title = "Your own shape"
    purpose = "outline"
    sizes = (Size(name="width", high_mm=1000.0), Size(name="length", high_mm=1000.0))
    words = ("outline",)
    standard = ()
    depths_mm = mm(2, 3)
    usual_mm = 50.0
    free = True
    example = f"outline {EXAMPLE} x 5 cm"
    everyday = False

    @property
    def noun(self) -> str:
        return "drawn tin"

    @property
    def main(self) -> int:
        return 0

    def rings(self, sizes: Sizes) -> tuple[Ring, ...]:
        """The rings, centred on (0, 0). ValueError for anything but a list of closed rings."""
        return _rings(sizes)

    def read_sizes(self, text: str, start: int, end: int) -> Sizes:
        """The sizes of the path in text[start:end]. Raises Misread."""
        rings = read_path(text, start, end)
        start += len(text[start:end]) - len(text[start:end].lstrip())
        x, y = _off(rings[0])
        sizes: Sizes = ()
        for ring in rings:
            # To the hundredth, as every size is kept; points that then coincide are one.
            points = [(round(point[0] - x, 2), round(point[1] - y, 2)) for point in ring]
            kept = [point for k, point in enumerate(points) if point != points[k - 1]]
            sizes += tuple(size for point in (*kept, *kept[:1]) for size in point)
        try:
            sizes = self.settled(sizes)
        except ValueError:
            raise Misread(
                "this outline encloses nothing", f'draw once round the tin, as in "{EXAMPLE}"', start, end
            ) from None
        if fault := self.fault(sizes):
            raise Misread(fault.message, fault.hint, start, end)
        return sizes

    def path(self, sizes: Sizes) -> str:
        """The SVG path of the sizes as kept: read again, it gives the same sizes."""
        return "".join("M" + "L".join(f"{_short(x)} {_short(-y)}" for x, y in ring) + "Z" for ring in _split(sizes))

    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        return _rings(sizes)

    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        outer, *holes = map(_area, _rings(sizes))
        return outer - sum(holes)

    def perimeter_mm(self, sizes: Sizes) -> float:
        return _length(_rings(sizes)[0])

    def inner_perimeter_mm(self, sizes: Sizes) -> float:
        return sum(map(_length, _rings(sizes)[1:]))

    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        outer = _rings(sizes)[0]
        return (2.0 * max(x for x, _ in outer), 2.0 * max(y for _, y in outer))

    def settled(self, sizes: Sequence[float]) -> Sizes:
        whole = tuple(round(float(size), 2) for size in sizes)
        off = _off(_split(whole)[0])
        return tuple(round(float(size) - off[k % 2], 2) for k, size in enumerate(sizes)) if any(off) else whole

    def fault(self, sizes: Sizes) -> SizeFault | None:
        return _fault(sizes)


def _off(ring: Ring) -> tuple[float, float]:
    """How far a ring is from being centred; nothing where it is to the hundredth, so that settling twice changes
    nothing."""
    x, y = ((max(side) + min(side)) / 2.0 for side in zip(*ring, strict=True))
    return (x, y) if max(abs(x), abs(y)) > 0.0075 else (0.0, 0.0)


def _short(number: float) -> str:
    """At most two decimals, no trailing noughts, no minus nought."""
    shown = f"{number:.2f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


def _split(sizes: Sizes) -> list[Ring]:
    """The rings as kept, without the point that closes each."""
    points = list(zip(sizes[::2], sizes[1::2], strict=False))
    rings: list[Ring] = []
    ring: list[tuple[float, float]] = []
    for point in points:
        if len(ring) > 2 and point == ring[0]:
            rings.append(tuple(ring))
            ring = []
        else:
            ring.append(point)
    if len(sizes) % 2 or ring or not rings or not all(map(math.isfinite, sizes)):
        raise ValueError("the sizes of an outline are x and y in turn, round each ring and back to its first point")
    return rings


@lru_cache(maxsize=256)
def _rings(sizes: Sizes) -> tuple[Ring, ...]:
    rings = _split(sizes)
    x, y = ((max(side) + min(side)) / 2.0 for side in zip(*rings[0], strict=True))
    return tuple(tuple((point[0] - x, point[1] - y) for point in ring) for ring in rings)


@lru_cache(maxsize=256)
def _fault(sizes: Sizes) -> SizeFault | None:
    low, high = OUTLINE.sizes[0].low_mm, OUTLINE.sizes[0].high_mm
    for index, size in enumerate(OUTLINE.bounds_mm(sizes)):
        if not low <= size <= high:
            how = "small" if size < low else "large"
            message = f"an outline {metric_label((round(size, 1),))} across is too {how} for a tin"
            hint = f"it should be between {metric_label((low,))} and {metric_label((high,))}; paths are in mm"
            return SizeFault(index, message, hint)
    rings = _rings(sizes)
    if crossing(rings) is not None or not OUTLINE.area_mm2(sizes) > 0.0:
        return SizeFault(
            0, "the outline crosses or touches itself", "draw once round the tin, then round each hole in it"
        )
    if not all(inside(hole[0], rings[0]) for hole in rings[1:]):
        return SizeFault(
            0, "the second outline is outside the first", "draw round the tin first, then round each hole in it"
        )
    return None


def inside(point: tuple[float, float], ring: Ring) -> bool:
    """Whether a line from the point to the right leaves the ring once more than it enters it."""
    x, y = point
    odd = False
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) / (y2 - y1) * (x2 - x1):
            odd = not odd
    return odd


def _area(ring: Ring) -> float:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2.0


def _length(ring: Ring) -> float:
    return sum(map(math.dist, ring, (*ring[1:], ring[0])))


OUTLINE = Outline()
