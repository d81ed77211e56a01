"""What every tin shape knows about itself. Lengths in mm, areas in mm², volumes in ml.

A shape is known by its outline at every height: `height` is the share of the tin's depth, 0 at the base and 1 at the
rim. For a straight tin, a tapered one and a dome, the area is at most a quadratic in the height, so three areas (base,
middle, rim) give every volume exactly (the prismatoid rule).
"""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import ClassVar, Literal

from tinbook.tins.trade import metric_label, true_mm
from tinbook.tins.walls import Walls
from tinbook.units import Sold

Sizes = tuple[float, ...]
Ring = tuple[tuple[float, float], ...]

# An inscribed polygon of n sides loses (2 pi / n)^2 / 6 of the circle: 0.005 % at 360.
CIRCLE_POINTS = 360
HAIR_MM = 1e-6
"""A depth short by less than this still holds: depths are worked out, and miss in the last digits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """One size a baker gives for a shape, and what is plausible for it.

    low_mm, high_mm: plausible lengths. of: index of the size this one lies inside (a tube in its ring, a base under its
    top); least and most are then its plausible shares of that size.
    """

    name: str
    low_mm: float = 20.0
    high_mm: float = 1000.0
    of: int | None = None
    least: float = 0.3
    most: float = 1.0


@dataclass(frozen=True, slots=True)
class SizeFault:
    """A size that cannot be right: its index in the sizes, what is wrong, and what to do."""

    index: int
    message: str
    hint: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedSize:
    """A size the trade calls by name (`2 lb` loaf, `jumbo` cups); its depth comes with the name.

    also: other words for the size (`muffin` cups); nouns: words for size and shape in one (`muffins`).
    """

    name: str
    sizes_mm: Sizes
    depth_mm: float
    also: tuple[str, ...] = ()
    nouns: tuple[str, ...] = ()


class Shape(ABC):
    """A tin shape. A new one is one file with a subclass and one line in the register.

    sizes: every size in order, those written first (`length x width`) and then those after a comma
    (`base 20 cm x 10 cm`), whose word is extra_word and whose count is extras.
    """

    key: ClassVar[str]
    title: ClassVar[str]
    sizes: ClassVar[tuple[Size, ...]]
    extra_word: ClassVar[str] = ""
    extras: ClassVar[int] = 0
    # Words for the shape as bakers write them.
    words: ClassVar[tuple[str, ...]]
    named: ClassVar[tuple[NamedSize, ...]] = ()
    # Outlines the trade sells, small to large, each with its usual depth.
    standard: ClassVar[tuple[tuple[Sizes, float], ...]]
    # Depths the trade sells, small to large.
    depths_mm: ClassVar[tuple[float, ...]]
    usual_mm: ClassVar[float] = 75.0
    # Plausible depths.
    least_deep_mm: ClassVar[float] = 10.0
    most_deep_mm: ClassVar[float] = 300.0
    # What stays the same when a mixture moves to this shape: batter depth, or the share of the brim.
    kept: ClassVar[Literal["depth", "share"]] = "depth"
    # The cake: one height all over, a half ball standing on its flat, or a ball.
    solid: ClassVar[Literal["upright", "dome", "ball"]] = "upright"
    # Whether they come joined, several to a tray.
    in_trays: ClassVar[bool] = False
    # How many like parts, side by side, make one (the halves of a ball): outline and bounds are of a part.
    parts: ClassVar[int] = 1
    # Whether every size is in the tables of every recipe; the others appear where tins are the subject.
    everyday: ClassVar[bool] = True
    # What it is for: a tin stands in for another of the same purpose (common practice).
    purpose: ClassVar[Literal["cake", "loaf", "ring", "dome", "cups", "outline"]] = "cake"
    # Whether its owner draws its outline, so that there are no trade sizes.
    free: ClassVar[bool] = False
    # What its standard sizes are true in; and whether that can be inches: what goes by names alone has one size.
    sold: ClassVar[Sold] = "cm"
    by_two_names: ClassVar[bool] = True
    # How a baker writes one; and one with its extra sizes.
    example: ClassVar[str]
    extra_example: ClassVar[str] = ""

    @property
    def noun(self) -> str:
        """What one is called in a sentence: `round tin`."""
        return f"{self.key} tin"

    @property
    def size_names(self) -> tuple[str, ...]:
        return tuple(size.name for size in self.sizes)

    @property
    def main(self) -> int:
        """How many sizes are written before the depth."""
        return len(self.sizes) - self.extras

    @abstractmethod
    def outline_mm(self, sizes: Sizes, height: float = 1.0) -> tuple[Ring, ...]:
        """Closed rings of (x, y) in mm about (0, 0), last point not repeated: the outer wall, then holes."""

    @abstractmethod
    def area_mm2(self, sizes: Sizes, height: float = 1.0) -> float:
        """Area in mm² in closed form."""

    @abstractmethod
    def perimeter_mm(self, sizes: Sizes) -> float:
        """Length in mm of the outer wall at the rim."""

    def inner_perimeter_mm(self, sizes: Sizes) -> float:
        """Length in mm of the walls of holes at the rim; 0 for a tin without a tube."""
        return 0.0

    @abstractmethod
    def bounds_mm(self, sizes: Sizes) -> tuple[float, float]:
        """Width and depth in mm of the upright rectangle round the rim."""

    def holes(self, sizes: Sizes) -> int:
        """How many of these make one thing to put in the oven: 1, or the number of holes in a tray."""
        return 1

    def stand_mm(self, sizes: Sizes) -> tuple[float, float]:
        """Width and depth in mm of what goes on the shelf: the tin, or the whole tray."""
        return self.bounds_mm(sizes)

    def walls(self, sizes: Sizes, depth_mm: float) -> Walls:
        """The areas between base and rim, from three of them."""
        base, middle, rim = (self.area_mm2(sizes, height) for height in (0.0, 0.5, 1.0))
        if base == middle == rim:
            return Walls(depth_mm, rim, 0.0, 0.0)
        return Walls(depth_mm, base, 4.0 * middle - 3.0 * base - rim, 2.0 * (base + rim) - 4.0 * middle)

    def volume_ml(self, sizes: Sizes, depth_mm: float, fill_mm: float) -> float:
        """Millilitres below a level fill_mm above the base of a tin depth_mm deep."""
        return self.walls(sizes, depth_mm).volume_mm3(fill_mm) / 1000.0

    def default_extras(self, sizes: Sizes) -> Sizes | None:
        """The sizes after the comma if the baker gave none; None if they must be given."""
        return ()

    def settled(self, sizes: Sequence[float]) -> Sizes:
        """Sizes as the house keeps them: complete, in order, to the hundredth of a millimetre.

        ValueError for a wrong number of sizes.
        """
        whole = tuple(round(float(size), 2) for size in sizes)
        if self.extras and len(whole) == self.main:
            whole += tuple(round(size, 2) for size in self.default_extras(self.ordered(whole)) or ())
        if len(whole) != len(self.sizes):
            raise ValueError(f"{self.key} takes {len(self.sizes)} sizes {self.size_names}, not {len(sizes)}")
        return self.ordered(whole)

    def in_inches(self, sizes: Sizes, depth_mm: float) -> tuple[Sizes, float]:
        """A standard size and its depth as long as their names in inches."""
        return tuple(true_mm(size, "inches") for size in sizes), true_mm(depth_mm, "inches")

    def ordered(self, sizes: Sizes) -> Sizes:
        """Sizes in the order the house writes them: a tin turned by a quarter is the same tin."""
        return sizes

    def fault(self, sizes: Sizes) -> SizeFault | None:
        """The first implausible size, or None."""
        for index, (rule, size) in enumerate(zip(self.sizes, sizes, strict=True)):
            if not rule.low_mm <= size <= rule.high_mm:
                how = "small" if size < rule.low_mm else "large"
                low, high = metric_label((rule.low_mm,)), metric_label((rule.high_mm,))
                return SizeFault(
                    index,
                    f"{self._said(size)} is too {how} for the {rule.name} of a {self.noun}",
                    f"it should be between {low} and {high}",
                )
            if rule.of is None:
                continue
            outer = sizes[rule.of]
            # Half a hundredth of a millimetre is lost to rounding, and is not a fault.
            if size > rule.most * outer + 0.005:
                return self.misfit(index, size, outer)
            if size < rule.least * outer - 0.005:
                low = metric_label((math.ceil(rule.least * outer),))
                return SizeFault(
                    index,
                    f"the {rule.name}, {self._said(size)}, is very small for a tin {self._said(outer)} across",
                    f"{low} is the least the book accepts",
                )
        return None

    def depth_fault(self, depth_mm: float) -> SizeFault | None:
        """What is wrong with a depth, if anything; its index is not that of any size."""
        low, high = self.least_deep_mm, self.most_deep_mm
        if low <= depth_mm <= high:
            return None
        how = "shallow" if depth_mm < low else "deep"
        return SizeFault(
            len(self.sizes),
            f"{self._said(depth_mm)} is too {how} for a {self.noun}",
            f"the depth should be between {metric_label((low,))} and {metric_label((high,))}",
        )

    def misfit(self, index: int, size: float, outer: float) -> SizeFault:
        """The answer to a size that does not fit inside the one it belongs to."""
        name, around = self.sizes[index].name, self.sizes[self.sizes[index].of or 0].name
        return SizeFault(
            index,
            f"the {name}, {self._said(size)}, is larger than the {around}, {self._said(outer)}",
            "measure the top inside the rim, and the base inside",
        )

    def _said(self, length_mm: float) -> str:
        return metric_label((length_mm,), self.sold)

    def named_size(self, sizes: Sizes, depth_mm: float | None = None) -> NamedSize | None:
        """The trade's name for these sizes at this depth, if any; without a depth, at any depth."""
        for named in self.named:
            if named.sizes_mm == sizes and depth_mm in (None, named.depth_mm):
                return named
        return None

    def usual_depth_mm(self, sizes: Sizes) -> float:
        """The usual depth in mm, for a tin written without one."""
        for standard, depth_mm in self.standard:
            if standard == sizes:
                return depth_mm
        return self.usual_mm

    def least_depth_mm(self, sizes: Sizes, needed_mm: float) -> float | None:
        """The least depth in mm such a tin is sold in that holds needed_mm; None if none does."""
        sold = self.sold_mm(sizes)
        first = bisect_left(sold, needed_mm - HAIR_MM)
        return sold[first] if first < len(sold) else None

    def sold_mm(self, sizes: Sizes) -> tuple[float, ...]:
        """The depths in mm these sizes are sold in, small to large."""
        named = self.named_size(sizes)
        return (named.depth_mm,) if named else self.depths_mm

    @property
    def in_two_sizes(self) -> bool:
        """Whether a ruler needs two lengths for it."""
        return self.main == 2

    def area_share(self) -> float | None:
        """The area over its first size times its last: fixed for upright tins without a tube.

        None for others, and for those with named sizes.
        """
        if self.extras or self.free or self.named or self.kept != "depth":
            return None
        sizes = self.standard[0][0]
        return self.area_mm2(sizes) / (sizes[0] * sizes[-1])


@lru_cache(maxsize=512)
def circle(diameter_mm: float) -> Ring:
    """Points on a circle about (0, 0), anticlockwise from the right."""
    radius = diameter_mm / 2.0
    turns = (2.0 * math.pi * k / CIRCLE_POINTS for k in range(CIRCLE_POINTS))
    return tuple((radius * math.cos(turn), radius * math.sin(turn)) for turn in turns)


def oblong(width_mm: float, depth_mm: float) -> Ring:
    """The four corners of a rectangle about (0, 0), anticlockwise from the lower left."""
    x, y = width_mm / 2.0, depth_mm / 2.0
    return ((-x, -y), (x, -y), (x, y), (-x, y))


def between(base: float, rim: float, height: float) -> float:
    """A length on a straight sloping wall at a share of its height."""
    return base + (rim - base) * height
