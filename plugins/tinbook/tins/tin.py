"""One tin: a shape, its sizes, perhaps a depth, perhaps a volume measured with water."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from functools import lru_cache

from tinbook.tins.outline import Outline
from tinbook.tins.register import SHAPES, SOLD_IN
from tinbook.tins.shape import Ring, Shape, Sizes
from tinbook.tins.trade import called_mm, inch_label, metric_label
from tinbook.tins.walls import Walls
from tinbook.units import Sold


@dataclass(frozen=True, slots=True, kw_only=True)
class Tin:
    """A tin as a value: equal when shape, sizes, depth and measure are equal. Lengths mm, volumes ml.

    sizes_mm may leave out the shape's optional sizes (a loaf's base, a standard ring's tube) and come in either order;
    they are kept complete and in the house's order. measured_ml is what the tin holds to the brim; it scales the
    geometry at every depth, and needs the depth. called is the owner's name for an outline. sold is what the house's
    tins are sold in: sizes_mm are true, names go by it. ValueError for an unknown shape, or sizes, a depth or a measure
    that cannot be right: a developer's mistake, as read_tin tells the baker first.
    """

    shape: str
    sizes_mm: Sizes
    depth_mm: float | None = None
    measured_ml: float | None = None
    called: str = ""
    sold: Sold = "cm"
    # Worked out once, so that a fill takes only a few multiplications.
    _walls: Walls = field(init=False, repr=False, compare=False)
    _scale: float = field(init=False, repr=False, compare=False)
    _bounds_mm: tuple[float, float] = field(init=False, repr=False, compare=False)
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        if self.shape not in SHAPES:
            raise ValueError(f"there is no tin shape called {self.shape!r}")
        kind = SOLD_IN[self.sold][self.shape]
        sizes = kind.settled(self.sizes_mm)
        if fault := kind.fault(sizes):
            raise ValueError(fault.message)
        depth = None if self.depth_mm is None else round(float(self.depth_mm), 2)
        if depth is not None and (fault := kind.depth_fault(depth)):
            raise ValueError(fault.message)
        walls = kind.walls(sizes, depth or kind.usual_depth_mm(sizes))
        scale = 1.0
        if self.measured_ml is not None:
            if depth is None:
                raise ValueError("a measured tin needs its depth")
            if not 0.0 < self.measured_ml < float("inf"):
                raise ValueError(f"a tin cannot hold {self.measured_ml!r} ml")
            scale = self.measured_ml * 1000.0 / walls.volume_mm3(depth)
        hashed = hash((self.shape, sizes, depth, self.measured_ml))
        worked = {"sizes_mm": sizes, "depth_mm": depth, "_walls": walls, "_scale": scale, "_hash": hashed}
        for name, value in {**worked, "_bounds_mm": kind.bounds_mm(sizes)}.items():
            object.__setattr__(self, name, value)

    def __hash__(self) -> int:
        return self._hash

    @property
    def kind(self) -> Shape:
        """The shape, from the register."""
        return SOLD_IN[self.sold][self.shape]

    # Geometry

    @property
    def area_mm2(self) -> float:
        """Area at the rim, mm²."""
        return self.kind.area_mm2(self.sizes_mm)

    @property
    def perimeter_mm(self) -> float:
        """Outer wall at the rim, mm."""
        return self.kind.perimeter_mm(self.sizes_mm)

    @property
    def inner_perimeter_mm(self) -> float:
        """Wall of the tube at the rim, mm; 0 without a tube."""
        return self.kind.inner_perimeter_mm(self.sizes_mm)

    @property
    def bounds_mm(self) -> tuple[float, float]:
        """Width and depth of the rim, mm; a cup's share of its tray."""
        return self._bounds_mm

    @property
    def stand_mm(self) -> tuple[float, float]:
        """Width and depth of what goes on the oven shelf, mm: the tin, or the tray of `holes` cups."""
        return self.kind.stand_mm(self.sizes_mm)

    @property
    def holes(self) -> int:
        """Cups in a tray; 1 for every other tin."""
        return self.kind.holes(self.sizes_mm)

    def outline_mm(self) -> tuple[Ring, ...]:
        """Rings of points at the rim, mm, about (0, 0): the outer wall, then the tube."""
        return self.kind.outline_mm(self.sizes_mm)

    def volume_ml(self, fill_mm: float) -> float:
        """Millilitres of batter standing fill_mm deep; above the rim the walls count as upright."""
        return self._walls.volume_mm3(fill_mm) * self._scale / 1000.0

    def fill_mm(self, ml: float) -> float:
        """How deep `ml` of batter stands, mm: the inverse of volume_ml."""
        return self._walls.fill_mm(ml * 1000.0 / self._scale)

    @property
    def brim_mm(self) -> float:
        """How deep it is, mm: its own depth, or the usual one for such a tin."""
        return self._walls.depth_mm

    def brim_ml(self, depth_mm: float | None = None) -> float:
        """Millilitres to the brim: of this tin, or of one like it depth_mm deep.

        Without either depth, at the usual depth of such a tin.
        """
        if depth_mm is None or depth_mm == self.depth_mm:
            return self.volume_ml(self._walls.depth_mm)
        return self.kind.volume_ml(self.sizes_mm, depth_mm, depth_mm) * self._scale

    def least_depth(self, needed_mm: float) -> float | None:
        """The least depth such a tin is sold in that holds needed_mm, mm; None if none does."""
        return self.kind.least_depth_mm(self.sizes_mm, needed_mm)

    # Names

    @property
    def size_label(self) -> str:
        """`20 cm`, `23 x 33 cm`, `standard`, `21 cm, tube 6 cm`; for an outline its owner's name, or its path."""
        if isinstance(self.kind, Outline):
            return self.called or self.kind.path(self.sizes_mm)
        named = self._named
        return named or self._metric(self._main) + self._extra(self._metric(self._extras))

    @property
    def across_mm(self) -> float:
        """Its first size by its name in centimetres, mm: 200 for a tin sold as 20 cm or 8 in."""
        return called_mm(self.sizes_mm[0], self.kind.sold)

    @property
    def size_label_in(self) -> str:
        """`8 in`, `9 x 13 in`; empty if the trade has no name in inches."""
        return _size_label_in(self)

    def _inches(self) -> str:
        main, extras = self._in_inches(self._main), self._in_inches(self._extras)
        if self._named or self.kind.free or not main or (self._odd_extras and not extras):
            return ""
        return main + self._extra(extras)

    @property
    def name(self) -> str:
        """`round 20 cm`, `2 lb loaf`, `standard cups`: shape and size, without the depth."""
        return self.names[0]

    @property
    def as_said(self) -> str:
        """As it is said in a sentence: `the 20 cm round`, `the 2 lb loaf`; one called by its owner keeps that name."""
        if self.called:
            return self.called
        size = self.name.removeprefix(f"{self.shape} ")
        return f"the {self.name}" if size == self.name else f"the {size} {self.shape}"

    @property
    def names(self) -> tuple[str, ...]:
        """The name in centimetres and, where the trade has one, in inches."""
        return _names(self)

    def _both_names(self) -> tuple[str, ...]:
        if named := self._named:
            return (f"{named} {self.shape}",)
        if self.called:
            return (self.called,)
        return tuple(f"{self.shape} {label}" for label in (self.size_label, self.size_label_in) if label)

    @property
    def full_name(self) -> str:
        """`round 20 cm x 7.5 cm`: the name with its depth, where it has one."""
        return self.full_names[0]

    @property
    def full_names(self) -> tuple[str, ...]:
        """The full name in centimetres and, where the trade has one, in inches."""
        # A named size brings its depth with it.
        if self.depth_mm is None or self._named:
            return self.names
        if self.kind.free:
            return (f"{self.name} x {self._metric((self.depth_mm,))}",)
        labels = [self._full(self._metric)]
        depth_in = self._in_inches((self.depth_mm,))
        if self.size_label_in and depth_in:
            labels.append(self._full(self._in_inches))
        return tuple(labels)

    def _full(self, label: Callable[[Sizes], str]) -> str:
        main, depth = label(self._main), label((self.depth_mm or 0.0,))
        return f"{self.shape} {main} x {depth}{self._extra(label(self._extras))}"

    def _metric(self, lengths_mm: Sizes) -> str:
        return metric_label(lengths_mm, self.kind.sold)

    def _in_inches(self, lengths_mm: Sizes) -> str:
        return inch_label(lengths_mm, self.kind.sold)

    @property
    def _named(self) -> str:
        named = self.kind.named_size(self.sizes_mm, self.depth_mm) if self.depth_mm else None
        return named.name if named else ""

    @property
    def _main(self) -> Sizes:
        return self.sizes_mm[: self.kind.main]

    @property
    def _extras(self) -> Sizes:
        return self.sizes_mm[self.kind.main :]

    @property
    def _odd_extras(self) -> bool:
        """Whether the sizes after the comma are unusual, and so must be written."""
        return bool(self._extras) and self.kind.default_extras(self._main) != self._extras

    def _extra(self, label: str) -> str:
        return f", {self.kind.extra_word} {label}" if self._odd_extras else ""


# A tin is named in every table of every recipe, so its names are kept.


@lru_cache(maxsize=4096)
def _names(tin: Tin) -> tuple[str, ...]:
    return tin._both_names()


@lru_cache(maxsize=4096)
def _size_label_in(tin: Tin) -> str:
    return tin._inches()


def standard_tins(shapes: Collection[str] = SHAPES, sold: Sold = "cm") -> tuple[Tin, ...]:
    """Every outline the trade sells in these `shapes`: by shape in the register's order, then by size.

    Without a depth, which only decides what fits; a named size (loaf, cups) has its own.
    """
    return tuple(
        Tin(shape=shape.key, sizes_mm=sizes, depth_mm=depth_mm if shape.named_size(sizes) else None, sold=shape.sold)
        for shape in SOLD_IN[sold].values()
        if shape.key in shapes
        for sizes, depth_mm in shape.standard
    )
