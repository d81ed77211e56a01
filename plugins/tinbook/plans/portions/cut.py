"""A plan to cut a cake by: what strips or rings, and how many pieces from each."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import sqrt
from typing import Any

from tinbook.engine import portions as sums
from tinbook.engine import rounding
from tinbook.engine.tolerance import whole_up
from tinbook.tins import Ring, Tin, cutting
from tinbook.tins.growth import INWARDS, turns
from tinbook.tins.joining import joined


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A plan. `counts` are the pieces of each strip from the top, or of each ring from the outside in.

    `edges_mm`: where strips begin and end, from the top; or how far from the middle rings end. `upright`: strips run up
    and down and count from the left. `each`: the mean piece, in portions; `off`: how far the furthest is from it.
    `parts`: how many alike, such as the halves of a ball. `way`: grid, strips, uneven, joined, rings, wedges, one_each
    or none.
    """

    tin: Tin
    portion_mm: tuple[float, float]
    way: str
    counts: tuple[int, ...]
    edges_mm: tuple[float, ...]
    each: float
    upright: bool = False
    off: float = 0.0
    parts: int = 1

    @property
    def count(self) -> int:
        """Portions from one cake."""
        return self.parts * sum(self.counts)

    @property
    def piece_mm(self) -> tuple[float, float]:
        """A portion's sides, grown to the size of the mean piece."""
        return _grown(self.portion_mm, self.each)

    @property
    def edges_shown_mm(self) -> tuple[float, ...]:
        """`edges_mm` as read on a ruler."""
        return tuple(rounding.ruler(edge) for edge in self.edges_mm)

    @property
    def off_shown_percent(self) -> float:
        """How far the furthest piece is from the mean, up to the next tenth of a per cent."""
        return whole_up(1000.0 * self.off) / 10.0

    @property
    def each_shown_cm2(self) -> float:
        """The mean piece seen from above, to a tenth of a cm²."""
        return rounding.half_up(outline_area(self.tin) / max(1, sum(self.counts)) / 100.0, 0.1)


@lru_cache(maxsize=1024)
def outline(tin: Tin) -> tuple[Ring, ...]:
    """What is cut: the outline half-way up; the foot of a dome."""
    return tin.kind.outline_mm(tin.sizes_mm, 0.5 if tin.kind.solid == "upright" else 1.0)


def _grown(sides_mm: tuple[float, float], each: float) -> tuple[float, float]:
    return sides_mm[0] * sqrt(each), sides_mm[1] * sqrt(each)


def outline_area(tin: Tin) -> float:
    """The area of what is cut, mm²."""
    return tin.kind.area_mm2(tin.sizes_mm, 0.5 if tin.kind.solid == "upright" else 1.0) / tin.kind.parts


@dataclass(frozen=True)
class Job:
    """A cake to cut into portions `short_mm` by `long_mm`. `size` in mm²; for a dome, or half a ball, the area its
    volume would have at the height of the house's cakes."""

    tin: Tin
    short_mm: float
    long_mm: float
    height_mm: float = 0.0

    @cached_property
    def rings(self) -> tuple[Ring, ...]:
        """What is cut, seen from above."""
        return outline(self.tin)

    @cached_property
    def sides_mm(self) -> tuple[float, float]:
        """How wide and how tall that is."""
        left, low, right, high = cutting.spans(self.rings)
        return right - left, high - low

    @cached_property
    def portion(self) -> float:
        """A portion's area, mm²."""
        return self.short_mm * self.long_mm

    @property
    def solid(self) -> bool:
        """Whether its height varies."""
        return self.tin.kind.solid != "upright"

    @cached_property
    def size(self) -> float:
        """What there is to cut."""
        if self.solid:
            return self.tin.brim_ml() / self.tin.kind.parts * 1000.0 / self.height_mm
        return outline_area(self.tin)

    @cached_property
    def most(self) -> int:
        """The most portions it holds."""
        return sums.most(self.size, self.portion)

    @cached_property
    def count(self) -> int:
        """How many it serves, if it is not cut in a whole grid."""
        return sums.served(self.size, self.portion, max(self.sides_mm) / min(self.sides_mm))

    @property
    def piece_mm(self) -> tuple[float, float]:
        """A portion's sides, grown so that this many pieces make the whole cake."""
        return _grown((self.short_mm, self.long_mm), self._each(self.count))

    def _each(self, pieces: int) -> float:
        return self.size / self.portion / max(1, pieces)

    def cut(self, way: str, counts: tuple[int, ...], edges_mm: tuple[float, ...], **more: Any) -> Cut:
        """A plan for it; its pieces are all alike unless `more` says otherwise."""
        return Cut(
            tin=self.tin,
            portion_mm=(self.short_mm, self.long_mm),
            way=way,
            counts=counts,
            edges_mm=edges_mm,
            each=self._each(sum(counts)),
            parts=self.tin.kind.parts,
            **more,
        )


@lru_cache(maxsize=2048)
def pieces_of(cut: Cut) -> tuple[cutting.CutPiece, ...] | None:
    """The pieces as drawn, in the order of their numbers; None if a strip would fall apart."""
    if not cut.edges_mm:
        return ()
    rings = outline(cut.tin)
    if cut.way in ("rings", "wedges"):
        return cutting.ring_pieces(rings, cut.edges_mm[1:-1], cut.counts)
    if cut.way == "joined":
        return joined(rings, sum(cut.counts), cut.piece_mm[1]).pieces
    if cut.way == "grid":
        return cutting.grid_pieces(rings, cut.counts[0], len(cut.counts))
    laid = cutting.turned(rings) if cut.upright else rings
    pieces = cutting.strip_pieces(laid, cut.edges_mm, cut.counts)
    return cutting.back(pieces) if pieces and cut.upright else pieces


def knife_of(cut: Cut) -> cutting.Knife | None:
    """Where the knife goes; None for pieces that no straight cut from side to side gives."""
    rings, edges, counts = outline(cut.tin), cut.edges_mm, cut.counts
    if cut.way in ("rings", "wedges"):
        return cutting.ring_knife(rings, edges[1:-1], counts)
    if cut.way == "joined" or not edges:
        return None
    if cut.way == "grid":
        return cutting.grid_knife(rings, counts[0], len(counts))
    laid = cutting.turned(rings) if cut.upright else rings
    if not bent(rings):
        knife = cutting.convex_knife(laid, edges, counts)
    else:
        pieces = pieces_of(cut) or ()
        knife = cutting.strip_knife(laid, edges, cutting.back(pieces) if cut.upright else pieces, counts)
    if not cut.upright:
        return knife
    lines = tuple(((-y1, -x1), (-y2, -x2)) for (x1, y1), (x2, y2) in knife.lines)
    return cutting.Knife(lines, (), tuple((-y, -x) for x, y in knife.middles))


@lru_cache(maxsize=512)
def bent(rings: tuple[Ring, ...]) -> bool:
    """Whether an outline has a hollow or a hole, so that a straight strip of it could fall apart."""
    return len(rings) > 1 or min(turns(rings[0])) < INWARDS
