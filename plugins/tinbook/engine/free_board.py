"""Room on a board beside what stands on it: whether feet of figures find a place there. Lengths in mm, seen from above,
x to the right and y to the back.

A foot may be turned, in steps of 15°, and stand anywhere on the board. Where its middle can be is found exactly
(Minkowski sums of convex outlines); several are set down one by one, the largest first, going round the board, each as
close as it goes to those before. Now and then a cleverer order would find room for one more.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

Ring = Sequence[tuple[float, float]]
Edge = tuple[float, float, float]
"""Which way is out, and how far out it is from the middle."""
STEP = 15
"""Degrees from one way a foot is turned to the next."""
NEAR_MM = 0.5
"""Less than this is no want of room."""
FINE_MM = 0.2
"""How far an outline may be off."""


@dataclass(frozen=True, slots=True)
class Foot:
    """What a figure stands on: its outline about its middle, and how far it keeps from others."""

    ring: Ring
    apart_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class SetDown:
    """Where a foot is set down, the foot by its place in the list, and its outline there."""

    nth: int
    ring: Ring


def set_down(board: Ring, cake: Ring, feet: Sequence[Foot], all_or_none: bool = False) -> tuple[SetDown, ...]:
    """The feet that find a place on a convex board beside a cake, none over its edge and no two in each other's way.
    `all_or_none`: none of them as soon as one finds no place."""
    from shapely import Polygon, affinity

    ground, stands = Polygon(board).simplify(FINE_MM).buffer(NEAR_MM), Polygon(cake).simplify(FINE_MM).buffer(-NEAR_MM)
    order = sorted(range(len(feet)), key=lambda nth: -_hull(feet[nth].ring).area)
    found, taken = list[SetDown](), list[tuple[Polygon, float]]()
    rooms, full = dict[int, list[_Room]](), set[int]()
    for nth in order:
        foot = feet[nth]
        # equal feet are one kind: what room there was for the last of them is not found anew
        first = feet.index(foot)
        if first in full:
            continue
        kind = rooms.setdefault(first, [])
        if not kind:
            kind += [_Room(form) for form in _turned(_hull(foot.ring).simplify(FINE_MM))]
        best: tuple[tuple[float, ...], Polygon] | None = None
        for room in kind:
            place = room.first(ground, stands, taken, foot.apart_mm)
            if place is not None and (best is None or place < best[0]):
                best = place, room.form
            if best is not None and nth == order[-1]:
                break
        if best is None:
            full.add(first)
            if all_or_none:
                return ()
            continue
        (*_, x, y), form = best
        there = affinity.translate(form, x, y)
        taken.append((there, foot.apart_mm))
        found.append(SetDown(nth, tuple((x, y) for x, y, *_ in there.exterior.coords[:-1])))
    return tuple(found)


class _Room:
    """Where the middle of a foot turned one way can be, kept up with what is set down."""

    def __init__(self, form: Polygon) -> None:
        self.form, self._known = form, 0
        self._left: BaseGeometry | None = None

    def first(
        self, ground: Polygon, stands: Polygon, taken: Sequence[tuple[Polygon, float]], apart_mm: float
    ) -> tuple[float, ...] | None:
        """The first place it can be, going round from the back: how far round, how far from the middle, where. All of
        it is on the ground, none of it in what stands there. None if it has no room."""
        import numpy as np
        from shapely import get_coordinates

        left = self._left
        if left is None:
            inside = _within(ground, self.form)
            left = inside if inside.is_empty else inside.difference(_sum(stands, self.form, 0.0))
        for other, apart in () if left.is_empty else taken[self._known :]:
            left = left.difference(_sum(other, self.form, max(apart, apart_mm)))
        self._left, self._known = left, len(taken)
        if not left.area > 0.0:
            return None
        x, y = get_coordinates(left).T
        turns, far = np.arctan2(-x, -y) + np.pi, x * x + y * y
        nth = np.lexsort((far, turns))[0]
        return float(turns[nth]), float(far[nth]), float(x[nth]), float(y[nth])


def _turned(form: Polygon) -> list[Polygon]:
    """Every way it may be turned; a disc only one."""
    from shapely import affinity

    def alike(turn: float) -> bool:
        return bool(form.hausdorff_distance(affinity.rotate(form, turn, origin=(0.0, 0.0))) < NEAR_MM)

    ways = (STEP if alike(STEP) else 90) if alike(90) else 180 if alike(180) else 360
    return [affinity.rotate(form, turn, origin=(0.0, 0.0)) for turn in range(0, ways, STEP)]


def _within(ground: Polygon, form: Polygon) -> Polygon:
    """Where the middle of a convex outline can be for all of it to be on convex ground: as far inside each edge as the
    outline reaches towards it (half-planes in the order their edges turn). Empty if nowhere."""
    import numpy as np
    from shapely import Polygon, get_coordinates
    from shapely.geometry.polygon import orient

    ring = get_coordinates(orient(ground).exterior)[:-1]
    along = np.roll(ring, -1, axis=0) - ring
    out = np.stack([along[:, 1], -along[:, 0]], axis=1) / np.hypot(*along.T)[:, None]
    far = (out * ring).sum(axis=1) - (out @ get_coordinates(form).T).max(axis=1)
    edges, corners = deque[Edge](), deque[tuple[float, float]]()
    for x, y, c in zip(*out.T.tolist(), far.tolist(), strict=True):
        while corners and _over(corners[-1], (x, y, c)):
            edges.pop(), corners.pop()
        while corners and _over(corners[0], (x, y, c)):
            edges.popleft(), corners.popleft()
        if edges:
            corners.append(_meet(edges[-1], (x, y, c)))
        edges.append((x, y, c))
    while corners and _over(corners[-1], edges[0]):
        edges.pop(), corners.pop()
    corners.append(_meet(edges[-1], edges[0]))
    # where there is no such place, corners are left that lie beyond an edge
    nowhere = len(corners) < 3 or (out @ np.array(corners).T - far[:, None]).max() > 1e-6
    return Polygon() if nowhere else Polygon(corners)


def _over(point: tuple[float, float], edge: Edge) -> bool:
    return point[0] * edge[0] + point[1] * edge[1] > edge[2]


def _meet(one: Edge, other: Edge) -> tuple[float, float]:
    """Where two edges cross, far away if they run alongside."""
    turn = one[0] * other[1] - one[1] * other[0] or 1e-12
    return (one[2] * other[1] - other[2] * one[1]) / turn, (other[2] * one[0] - one[2] * other[0]) / turn


def _sum(there: Polygon, form: Polygon, apart_mm: float) -> BaseGeometry:
    """Where the middle of a convex outline cannot be for what is there, and the space it keeps."""
    import numpy as np
    from shapely import convex_hull, get_coordinates, linestrings, polygons, union_all
    from shapely.geometry.polygon import orient

    away, ring = -get_coordinates(orient(form).exterior)[:-1], get_coordinates(orient(there).exterior)[:-1]
    if there.convex_hull.area - there.area < 1e-6 * there.area:
        # the edges of both, in the order they turn
        edges = np.concatenate([np.roll(each, -1, axis=0) - each for each in (ring, away)])
        edges = edges[np.argsort(np.arctan2(edges[:, 1], edges[:, 0]) % (2.0 * np.pi), kind="stable")]
        low = sum(each[np.lexsort((each[:, 0], each[:, 1]))[0]] for each in (ring, away))
        whole: Any = polygons(low + np.cumsum(edges, axis=0))
    else:
        ends = np.roll(ring, -1, axis=0)
        swept = np.concatenate([ring[:, None] + away, ends[:, None] + away], axis=1)
        hulls: Any = convex_hull(linestrings(swept))
        whole = union_all([there, *hulls])
    # no wider than the space itself: they may just touch
    kept: BaseGeometry = whole.buffer(apart_mm - NEAR_MM / 50.0)
    return kept


def hull_of(discs: Sequence[tuple[float, float, float]], ring: Ring) -> tuple[tuple[float, float], ...]:
    """The outline round one and some discs (x, y, across), about its own middle."""
    steps = [radians(turn) for turn in range(0, 360, STEP)]
    rounds = [(x + across / 2.0 * cos(turn), y + across / 2.0 * sin(turn)) for x, y, across in discs for turn in steps]
    hull = _hull([*ring, *rounds])
    left, low, right, high = hull.bounds
    return tuple((x - (left + right) / 2.0, y - (low + high) / 2.0) for x, y, *_ in hull.exterior.coords[:-1])


def _hull(points: Ring) -> Any:
    from shapely import convex_hull, linestrings

    return convex_hull(linestrings(points))
