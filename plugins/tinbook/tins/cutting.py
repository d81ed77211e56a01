"""An outline cut with a knife: straight strips cut across, or rings cut towards the middle. Lengths mm, areas mm².

Areas come from the outline's own corners: the area of what lies below a line is the sum of ∫ x dy along the edges
below it, which is exact for any polygon, tubes and all.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Any

import numpy as np
from shapely import MultiPolygon, Polygon, box, clip_by_rect, get_coordinates
from shapely.ops import polylabel

from tinbook.tins.shape import CIRCLE_POINTS, Ring

Array = np.ndarray[Any, np.dtype[np.float64]]
Point = tuple[float, float]
STEPS = 96
"""Into how many steps a strip is laid to find where it is cut."""
FINE = 2000
"""And a whole outline without hollows."""
CROOKED = 1.05
"""Where a string pulled round a piece holds so many times its area, it is crooked, and its number needs a place."""
DUST = 1e-4
"""The share of a piece that may come off it by the last digits of a cut."""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece seen from above: its rings (one, unless something is left out of its middle), area, and middle."""

    rings: tuple[Ring, ...]
    area_mm2: float
    middle: tuple[float, float]


def turned(rings: Sequence[Ring]) -> tuple[Ring, ...]:
    """The outline laid on its side: its left is on top, its top on the left. Turned twice it is as it was."""
    return tuple(tuple((-y, -x) for x, y in ring) for ring in rings)


def back(pieces: Sequence[CutPiece]) -> tuple[CutPiece, ...]:
    """Pieces of a turned outline, turned back."""
    return tuple(
        CutPiece(turned(piece.rings), piece.area_mm2, (-piece.middle[1], -piece.middle[0])) for piece in pieces
    )


def spans(rings: Sequence[Ring]) -> tuple[float, float, float, float]:
    """Least x, least y, most x, most y of the outline."""
    points = _points_of(rings[0])
    (left, low), (right, high) = points.min(axis=0), points.max(axis=0)
    return float(left), float(low), float(right), float(high)


def area_below(rings: Sequence[Ring], heights: Sequence[float] | Array) -> Array:
    """The area of what lies below each of `heights`."""
    return _area_below([_points_of(ring) for ring in rings], heights)


@lru_cache(maxsize=512)
def _points_of(ring: Ring) -> Array:
    return np.asarray(ring)


def _area_below(rings: Sequence[Array], heights: Sequence[float] | Array) -> Array:
    at = np.asarray(heights, dtype=float)[:, None]
    total = np.zeros(at.shape[0])
    for index, points in enumerate(rings):
        after = np.roll(points, -1, axis=0)
        whole = float(np.sum(points[:, 0] * after[:, 1] - after[:, 0] * points[:, 1]))
        falls = after[:, 1] < points[:, 1]
        low, high = np.where(falls[:, None], after, points), np.where(falls[:, None], points, after)
        rise = high[:, 1] - low[:, 1]
        level = rise <= 0.0
        part = np.clip((at - low[:, 1]) / np.where(level, 1.0, rise), 0.0, 1.0)
        under = rise * part * (low[:, 0] + part / 2.0 * (high[:, 0] - low[:, 0]))
        sign = math.copysign(1.0, whole) * (1.0 if index == 0 else -1.0)
        total += sign * (np.where(falls, -1.0, 1.0) * under).sum(axis=1)
    return total


def area(rings: Sequence[Ring]) -> float:
    """The area of the whole outline."""
    return float(area_below(rings, [spans(rings)[3]])[0])


def strip_areas(rings: Sequence[Ring], strips: int) -> tuple[float, ...]:
    """The areas of so many strips of equal width, from the top down."""
    _, low, _, high = spans(rings)
    below = area_below(rings, np.linspace(high, low, strips + 1))
    return tuple(float(share) for share in below[:-1] - below[1:])


def strips_areas(rings: Sequence[Ring], most: int) -> list[tuple[float, ...]]:
    """`strip_areas` of one strip, of two, and so on to `most`."""
    _, low, _, high = spans(rings)
    below = area_below(rings, np.concatenate([np.linspace(high, low, strips + 1) for strips in range(1, most + 1)]))
    found, at = [], 0
    for strips in range(1, most + 1):
        part = below[at : at + strips + 1]
        found.append(tuple(float(share) for share in part[:-1] - part[1:]))
        at += strips + 1
    return found


def strip_edges(rings: Sequence[Ring], shares: Sequence[float]) -> tuple[float, ...]:
    """How far from the top strips begin and end that hold these shares of the outline, their sum 1."""
    _, low, _, high = spans(rings)
    heights = np.linspace(low, high, STEPS + 1)
    below = area_below(rings, heights)
    wanted = (1.0 - np.cumsum(shares)[:-1]) * below[-1]
    found = np.interp(wanted, below, heights)
    for _ in range(2):
        # A step of Newton's: what lies below grows by the width there.
        beside = area_below(rings, np.concatenate((found - 0.05, found, found + 0.05))).reshape(3, -1)
        found = found - (beside[1] - wanted) / np.maximum((beside[2] - beside[0]) / 0.1, 1.0)
    return (0.0, *(float(high - height) for height in found), high - low)


def strip_pieces(rings: Sequence[Ring], edges: Sequence[float], counts: Sequence[int]) -> tuple[CutPiece, ...] | None:
    """Strips that begin and end `edges` from the top, each cut across into equal pieces, from left to right.

    None where a piece would fall apart.
    """
    cake = Polygon(rings[0], rings[1:])
    left, _, right, high = spans(rings)
    found: list[CutPiece] = []
    for begin, end, count in zip(edges, edges[1:], counts, strict=False):
        strip = strip_of(cake, left, right, high - end, high - begin)
        for one, other in across(strip, count):
            piece = whole(clipped(strip, one, high - end - 1.0, other, high - begin + 1.0))
            if piece is None:
                return None
            found.append(piece_of(piece))
    return tuple(found)


def grid_pieces(rings: Sequence[Ring], columns: int, rows: int) -> tuple[CutPiece, ...]:
    """An upright rectangle cut into a whole grid, row by row from the top."""
    left, low, right, high = spans(rings)
    wide, tall = (right - left) / columns, (high - low) / rows
    found = []
    for row in range(rows):
        for column in range(columns):
            x, y = left + wide * column, high - tall * row
            corners = ((x, y - tall), (x + wide, y - tall), (x + wide, y), (x, y))
            found.append(CutPiece((corners,), wide * tall, (x + wide / 2.0, y - tall / 2.0)))
    return tuple(found)


def strip_of(cake: Polygon, left: float, right: float, low: float, high: float) -> MultiPolygon:
    """What of the cake lies between two heights."""
    return MultiPolygon(polygons(clipped(cake, left - 1.0, low, right + 1.0, high)))


def clipped(shape: Polygon | MultiPolygon, left: float, low: float, right: float, high: float) -> Any:
    """What of a shape lies in a rectangle. Where the quick way trips over an edge along the rectangle, the slow one."""
    found = clip_by_rect(shape, left, low, right, high)
    return found if found.is_valid else shape.intersection(box(left, low, right, high))


def across(strip: Polygon | MultiPolygon, count: int) -> list[tuple[float, float]]:
    """Where a strip begins and ends and is cut across, so that all `count` pieces hold the same."""
    begin, _, end, _ = strip.bounds
    places, held = np.linspace(begin, end, STEPS + 1), np.zeros(STEPS + 1)
    for part in polygons(strip):
        held += _area_below([get_coordinates(ring)[:-1, ::-1] for ring in (part.exterior, *part.interiors)], places)
    cuts = np.interp(np.arange(1, count) / count * held[-1], held, places)
    bounds = [begin - 1.0, *(float(cut) for cut in cuts), end + 1.0]
    return list(pairwise(bounds))


def polygons(shape: Any) -> list[Polygon]:
    """The polygons of what clipping left, larger than dust."""
    parts = [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon) and not part.is_empty]
    total = sum(part.area for part in parts)
    return [part for part in parts if part.area > DUST * total]


def whole(shape: Any) -> Polygon | None:
    """The one polygon of a piece; None where it fell apart or nothing is left of it."""
    parts = polygons(shape)
    return parts[0] if len(parts) == 1 else None


def piece_of(shape: Polygon) -> CutPiece:
    rings = tuple(tuple(ring.coords[:-1]) for ring in (shape.exterior, *shape.interiors))
    if len(rings) > 1 or shape.convex_hull.area > CROOKED * shape.area:
        return CutPiece(rings, shape.area, roomiest(shape))
    point = shape.centroid
    return CutPiece(rings, shape.area, (point.x, point.y))


def roomiest(shape: Polygon) -> Point:
    """Where there is most room in a piece for its number."""
    point = polylabel(shape, 1.0)
    return (point.x, point.y)


@dataclass(frozen=True, slots=True)
class Knife:
    """Where the knife goes: straight cuts from point to point, which may run out over the edge, and circles about the
    middle; and the middle of every piece."""

    lines: tuple[tuple[Point, Point], ...]
    circles: tuple[float, ...]
    middles: tuple[Point, ...]


def strip_knife(
    rings: Sequence[Ring], edges: Sequence[float], pieces: Sequence[CutPiece], counts: Sequence[int]
) -> Knife:
    """The cuts between strips from side to side, then those across each strip."""
    left, _, right, high = spans(rings)
    lines: list[tuple[Point, Point]] = [((left, high - edge), (right, high - edge)) for edge in edges[1:-1]]
    at = 0
    for begin, end, count in zip(edges, edges[1:], counts, strict=False):
        for piece in pieces[at : at + count - 1]:
            across_at = max(x for x, _ in piece.rings[0])
            lines.append(((across_at, high - begin), (across_at, high - end)))
        at += count
    return Knife(tuple(lines), (), tuple(piece.middle for piece in pieces))


def grid_knife(rings: Sequence[Ring], columns: int, rows: int) -> Knife:
    """The cuts of `grid_pieces`."""
    left, low, right, high = spans(rings)
    wide, tall = (right - left) / columns, (high - low) / rows
    tops = [high - tall * row for row in range(rows)]
    begins = [left + wide * column for column in range(columns)]
    lines: list[tuple[Point, Point]] = [((left, top), (right, top)) for top in tops[1:]]
    lines += [((x, top), (x, top - tall)) for top in tops for x in begins[1:]]
    return Knife(tuple(lines), (), tuple((x + wide / 2.0, top - tall / 2.0) for top in tops for x in begins))


def convex_knife(rings: Sequence[Ring], edges: Sequence[float], counts: Sequence[int]) -> Knife:
    """`strip_knife` for an outline without hollows, which needs no pieces: it is as high as from one chain of its
    corners to the other, so a strip's area up to any place is a running sum."""
    left, _, right, high = spans(rings)
    lines: list[tuple[Point, Point]] = [((left, high - edge), (right, high - edge)) for edge in edges[1:-1]]
    middles: list[Point] = []
    points = _points_of(rings[0])
    points = np.roll(points, -int(points[:, 0].argmin()), axis=0)
    far = int(points[:, 0].argmax())
    chains = [points[: far + 1], np.concatenate((points[far:], points[:1]))[::-1]]
    places = np.linspace(left, right, FINE + 1)
    bottom, top = np.sort([np.interp(places, chain[:, 0], chain[:, 1]) for chain in chains], axis=0)
    for begin, end, count in zip(edges, edges[1:], counts, strict=False):
        tall = np.clip(top, high - end, high - begin) - np.clip(bottom, high - end, high - begin)
        held = np.concatenate(([0.0], np.cumsum(tall[1:] + tall[:-1])))
        inside = np.flatnonzero(np.diff(held) > 0.0)
        ends = places[inside[0]], places[inside[-1] + 1]
        cuts = np.array([ends[0], *np.interp(np.arange(1, count) / count * held[-1], held, places), ends[1]])
        lines += [((cut, high - begin), (cut, high - end)) for cut in cuts[1:-1].tolist()]
        middle = (cuts[1:] + cuts[:-1]) / 2.0
        if count > 1:
            # End pieces come to a point, so that most of them lies inwards.
            middle[0] += 0.1 * (cuts[1] - cuts[0])
            middle[-1] -= 0.1 * (cuts[-1] - cuts[-2])
        low, over = np.interp(middle, places, bottom), np.interp(middle, places, top)
        level = (np.maximum(low, high - end) + np.minimum(over, high - begin)) / 2.0
        middles += zip(middle.tolist(), level.tolist(), strict=True)
    return Knife(tuple(lines), (), tuple(middles))


def ring_knife(rings: Sequence[Ring], radii: Sequence[float], counts: Sequence[int]) -> Knife:
    """The circles between rings, then the cuts towards the middle."""
    lines: list[tuple[Point, Point]] = []
    middles: list[Point] = []
    outermost, bent = None, float(np.ptp(_polar(rings[0])[1])) > 1.0
    for outer, inner, count in _ring_edges(rings, radii, counts):
        outermost = outermost or outer
        turns = np.asarray(_equal_turns(outer, inner, count))
        inside = inner if inner is not None else (outer[0], np.zeros_like(outer[1]))
        if count > 1:
            lines += zip(_points(inside, turns[:-1]), _points(outer, turns[:-1]), strict=True)
        if bent and outer is outermost:
            for begin, end in pairwise(turns.tolist()):
                middles.append(roomiest(_sector(_chain(outer, begin, end), _chain(inside, begin, end), count)))
        elif count == 1 and inner is None:
            middles.append((0.0, 0.0))
        else:
            share = 0.58 if inner is None else 0.5
            halves = (turns[1:] + turns[:-1]) / 2.0
            away = np.interp(halves, *inside) * (1.0 - share) + np.interp(halves, *outer) * share
            middles += zip((away * np.sin(halves)).tolist(), (away * np.cos(halves)).tolist(), strict=True)
    return Knife(tuple(lines), tuple(radii), tuple(middles))


def _points(edge: tuple[Array, Array], turns: Array) -> list[Point]:
    away = np.interp(turns, *edge)
    return list(zip((away * np.sin(turns)).tolist(), (away * np.cos(turns)).tolist(), strict=True))


def _ring_edges(
    rings: Sequence[Ring], radii: Sequence[float], counts: Sequence[int]
) -> Iterator[tuple[tuple[Array, Array], tuple[Array, Array] | None, int]]:
    """The outer and the inner edge of each ring, and into how many it is cut; from the outside in."""
    outer = _polar(rings[0])
    for index, count in enumerate(counts):
        inner = _circle(radii[index]) if index < len(radii) else _tube(rings)
        yield outer, inner, count
        outer = inner if inner is not None else outer


def ring_pieces(rings: Sequence[Ring], radii: Sequence[float], counts: Sequence[int]) -> tuple[CutPiece, ...]:
    """Rings between these inner `radii`, from the outside in, each cut towards the middle from the top clockwise.

    The edge of the outermost is the outline, the inside of the innermost the tube, or the middle.
    """
    found: list[CutPiece] = []
    for outer, inner, count in _ring_edges(rings, radii, counts):
        for begin, end in pairwise(_equal_turns(outer, inner, count)):
            edge = _chain(outer, begin, end)
            inside = _chain(inner, begin, end) if inner is not None else ([(0.0, 0.0)] if count > 1 else [])
            found.append(piece_of(_sector(edge, inside, count)))
    return tuple(found)


def _sector(edge: list[tuple[float, float]], inside: list[tuple[float, float]], count: int) -> Polygon:
    if count > 1:
        return Polygon([*edge, *reversed(inside)])
    return Polygon(edge[:-1], [inside[:-1]] if len(inside) > 2 else None)


def _circle(radius: float) -> tuple[Array, Array]:
    turns = np.linspace(0.0, 2.0 * math.pi, CIRCLE_POINTS + 1)
    return turns, np.full_like(turns, radius)


def _tube(rings: Sequence[Ring]) -> tuple[Array, Array] | None:
    return _polar(rings[1]) if len(rings) > 1 else None


def _polar(ring: Ring) -> tuple[Array, Array]:
    """Turns from the top, clockwise, from 0 to a full turn, and how far the ring lies from the middle there."""
    points = np.asarray(ring)
    turns = np.arctan2(points[:, 0], points[:, 1]) % (2.0 * math.pi)
    order = np.argsort(turns)
    turns, far = turns[order], np.hypot(points[:, 0], points[:, 1])[order]
    full = 2.0 * math.pi
    turns = np.concatenate(([turns[-1] - full], turns, [turns[0] + full]))
    far = np.concatenate(([far[-1]], far, [far[0]]))
    start, end = np.interp([0.0, full], turns, far)
    kept = (turns > 1e-9) & (turns < full - 1e-9)
    return np.concatenate(([0.0], turns[kept], [full])), np.concatenate(([start], far[kept], [end]))


def _equal_turns(outer: tuple[Array, Array], inner: tuple[Array, Array] | None, count: int) -> list[float]:
    """The turns between which `count` equal pieces lie."""
    if np.ptp(outer[1]) < 1e-6 and (inner is None or np.ptp(inner[1]) < 1e-6):
        return [2.0 * math.pi * at / count for at in range(count + 1)]
    turns = np.linspace(0.0, 2.0 * math.pi, 4 * CIRCLE_POINTS + 1)
    far = np.interp(turns, *outer) ** 2 - (np.interp(turns, *inner) ** 2 if inner is not None else 0.0)
    held = np.concatenate(([0.0], np.cumsum((far[1:] + far[:-1]) / 2.0)))
    return [float(turn) for turn in np.interp(np.arange(count + 1) / count * held[-1], held, turns)]


def _chain(edge: tuple[Array, Array], begin: float, end: float) -> list[tuple[float, float]]:
    """Points of an edge from one turn to another, both included."""
    turns, far = edge
    between = (turns > begin + 1e-9) & (turns < end - 1e-9)
    at = np.concatenate(([begin], turns[between], [end]))
    away = np.interp(at, turns, far)
    return [(float(r * math.sin(t)), float(r * math.cos(t))) for t, r in zip(at, away, strict=True)]
