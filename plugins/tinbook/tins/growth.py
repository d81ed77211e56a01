"""How a cake's outline grows when a coat goes round it.

Moved out by t, an outline of area A and edge P has the area A + P t + c t², and the edge P + 2 c t. c is the sum of
tan(half the turn) over its corners: 4 for a square with sharp corners, π for a circle (Steiner's formula for parallel
curves, with mitred corners). That is exact where no corner turns inwards; an outline with such corners, like a petal,
is moved by shapely, as coats from both sides meet in the corner.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from tinbook.tins.shape import Ring
from tinbook.tins.tin import Tin

INWARDS = -0.01
"""The turn, in radians, from which a corner counts as turning inwards."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CakeOutline:
    """The outline of a cake seen from above: area mm², length of its edge mm (with any tube's), `corners` as c above.

    `room_mm`: how far it can be moved out before a tube closes up, infinite without one. `bent`: the tin whose outline
    has inward corners; `moved_mm`: how far out it already is.
    """

    area_mm2: float
    edge_mm: float
    corners: float
    room_mm: float = math.inf
    bent: Tin | None = None
    moved_mm: float = 0.0

    def grown(self, by_mm: float) -> CakeOutline:
        """Moved out by `by_mm`, or in if negative. ValueError if a tube closes up or nothing is left."""
        if by_mm >= self.room_mm:
            raise ValueError(f"a coat of {by_mm:g} mm closes the tube")
        moved_mm = self.moved_mm + by_mm
        if self.bent:
            area_mm2, edge_mm = _moved(self.bent, moved_mm)
        else:
            area_mm2 = self.area_mm2 + by_mm * (self.edge_mm + self.corners * by_mm)
            edge_mm = self.edge_mm + 2.0 * self.corners * by_mm
        if area_mm2 <= 0.0 or edge_mm <= 0.0:
            raise ValueError(f"nothing is left {-by_mm:g} mm inside the edge")
        return CakeOutline(
            area_mm2=area_mm2,
            edge_mm=edge_mm,
            corners=self.corners,
            room_mm=self.room_mm - by_mm,
            bent=self.bent,
            moved_mm=moved_mm,
        )


def turns(ring: Ring) -> list[float]:
    """How far a closed ring of points turns at each of them, in radians; left turns, as on an outer edge, are
    positive."""
    bends = []
    for (x0, y0), (x1, y1), (x2, y2) in zip(ring[-1:] + ring[:-1], ring, ring[1:] + ring[:1], strict=True):
        ax, ay, bx, by = x1 - x0, y1 - y0, x2 - x1, y2 - y1
        bends.append(math.atan2(ax * by - ay * bx, ax * bx + ay * by))
    return bends if sum(bends) > 0.0 else [-turn for turn in bends]


def area_and_edge(tin: Tin) -> tuple[float, float]:
    """mm² and mm of that outline: all that is needed when looking for one tin among thousands."""
    if tin.kind.solid != "upright":
        width_mm = tin.bounds_mm[0]
        return math.pi / 4.0 * width_mm**2, math.pi * width_mm
    area_mm2 = tin.kind.area_mm2(tin.sizes_mm, 0.5)
    if area_mm2 == tin.area_mm2:
        return area_mm2, tin.perimeter_mm + tin.inner_perimeter_mm
    return area_mm2, sum(_length(ring) for ring in tin.kind.outline_mm(tin.sizes_mm, 0.5))


@lru_cache(maxsize=4096)
def outline_of(tin: Tin) -> CakeOutline:
    """The outline of a cake: at the rim of a straight tin, half-way up a sloping one, round the foot of a dome."""
    if tin.kind.solid != "upright":
        area_mm2, edge_mm = area_and_edge(tin)
        return CakeOutline(area_mm2=area_mm2, edge_mm=edge_mm, corners=math.pi)
    _, *tubes = rings = tin.kind.outline_mm(tin.sizes_mm, 0.5)
    room_mm = min((_half_width(tube) for tube in tubes), default=math.inf)
    area_mm2, edge_mm = area_and_edge(tin)
    bends = [turns(ring) for ring in rings]
    if min(map(min, bends)) < INWARDS:
        return CakeOutline(area_mm2=area_mm2, edge_mm=edge_mm, corners=0.0, room_mm=room_mm, bent=tin)
    outside, *inside = (sum(math.tan(turn / 2.0) for turn in ring) for ring in bends)
    return CakeOutline(area_mm2=area_mm2, edge_mm=edge_mm, corners=outside - sum(inside), room_mm=room_mm)


@lru_cache(maxsize=4096)
def _moved(tin: Tin, by_mm: float) -> tuple[float, float]:
    """Area mm² and edge mm of the outline moved out by `by_mm`."""
    from shapely import Polygon

    outer, *tubes = tin.kind.outline_mm(tin.sizes_mm, 0.5)
    moved = Polygon(outer, tubes).buffer(by_mm, join_style="mitre", mitre_limit=10)
    return moved.area, moved.length


def _half_width(ring: Ring) -> float:
    return (max(x for x, _ in ring) - min(x for x, _ in ring)) / 2.0


def _length(ring: Ring) -> float:
    return sum(math.dist(corner, following) for corner, following in zip(ring, ring[1:] + ring[:1], strict=True))


@lru_cache(maxsize=1024)
def ring_round(tin: Tin, by_mm: float) -> Ring:
    """The outer edge of a cake, half-way up or round the foot of a dome, moved out by `by_mm` or in if negative.

    Corners are mitred, as in `Outline`. ValueError if nothing is left inside.
    """
    outer = tin.kind.outline_mm(tin.sizes_mm, 0.5 if tin.kind.solid == "upright" else 1.0)[0]
    if by_mm == 0.0:
        return outer
    from shapely import Polygon

    moved = Polygon(outer).buffer(by_mm, join_style="mitre", mitre_limit=10)
    pieces = [piece for piece in getattr(moved, "geoms", (moved,)) if not piece.is_empty]
    if not pieces:
        raise ValueError(f"nothing is left {-by_mm:g} mm inside the edge")
    return tuple((x, y) for x, y in max(pieces, key=lambda piece: piece.area).exterior.coords[:-1])
