"""Strips of an outline cut across, and whole grids: the pieces themselves. Lengths mm, areas mm²."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from shapely import MultiPolygon, Polygon, box, clip_by_rect, get_coordinates
from shapely.ops import polylabel

from tinbook.tins.cutting.areas import STEPS, Point, below_points, spans, turned
from tinbook.tins.shape import Ring

CROOKED = 1.05
"""A piece whose convex hull is this many times its area is crooked, and the place for its number has to be looked
for."""
DUST = 1e-4
"""The share of a piece that the last digits of a cut may shave off it."""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece seen from above: its rings (one, unless its middle has a hole), area, and middle."""

    rings: tuple[Ring, ...]
    area_mm2: float
    middle: tuple[float, float]


def back(pieces: Sequence[CutPiece]) -> tuple[CutPiece, ...]:
    """Pieces of a turned outline, turned back."""
    return tuple(
        CutPiece(turned(piece.rings), piece.area_mm2, (-piece.middle[1], -piece.middle[0])) for piece in pieces
    )


def strip_pieces(rings: Sequence[Ring], edges: Sequence[float], counts: Sequence[int]) -> tuple[CutPiece, ...] | None:
    """Strips that begin and end `edges` from the top, each cut across into equal pieces, from left to right.

    None if a piece would fall apart.
    """
    cake = Polygon(rings[0], rings[1:])
    left, _, right, high = spans(rings)
    pieces: list[CutPiece] = []
    for begin, end, count in zip(edges, edges[1:], counts, strict=False):
        strip = strip_of(cake, left, right, high - end, high - begin)
        for near, far in across(strip, count):
            piece = whole(clipped(strip, near, high - end - 1.0, far, high - begin + 1.0))
            if piece is None:
                return None
            pieces.append(piece_of(piece))
    return tuple(pieces)


def grid_pieces(rings: Sequence[Ring], columns: int, rows: int) -> tuple[CutPiece, ...]:
    """An upright rectangle cut into a whole grid, row by row from the top."""
    left, low, right, high = spans(rings)
    wide, tall = (right - left) / columns, (high - low) / rows
    pieces = []
    for row in range(rows):
        for column in range(columns):
            x, y = left + wide * column, high - tall * row
            corners = ((x, y - tall), (x + wide, y - tall), (x + wide, y), (x, y))
            pieces.append(CutPiece((corners,), wide * tall, (x + wide / 2.0, y - tall / 2.0)))
    return tuple(pieces)


def strip_of(cake: Polygon, left: float, right: float, low: float, high: float) -> MultiPolygon:
    """The part of the cake between two heights."""
    return MultiPolygon(polygons(clipped(cake, left - 1.0, low, right + 1.0, high)))


def clipped(shape: Polygon | MultiPolygon, left: float, low: float, right: float, high: float) -> Any:
    """The part of a shape inside a rectangle. If the quick way trips over an edge along the rectangle, by the slow
    one."""
    part = clip_by_rect(shape, left, low, right, high)
    return part if part.is_valid else shape.intersection(box(left, low, right, high))


def across(strip: Polygon | MultiPolygon, count: int) -> list[tuple[float, float]]:
    """Where a strip begins, is cut across and ends, so that all `count` pieces hold the same."""
    begin, _, end, _ = strip.bounds
    places, held = np.linspace(begin, end, STEPS + 1), np.zeros(STEPS + 1)
    for part in polygons(strip):
        held += below_points([get_coordinates(ring)[:-1, ::-1] for ring in (part.exterior, *part.interiors)], places)
    cuts = np.interp(np.arange(1, count) / count * held[-1], held, places)
    bounds = [begin - 1.0, *(float(cut) for cut in cuts), end + 1.0]
    return list(pairwise(bounds))


def polygons(shape: Any) -> list[Polygon]:
    """The polygons left by clipping, except for specks."""
    parts = [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon) and not part.is_empty]
    total = sum(part.area for part in parts)
    return [part for part in parts if part.area > DUST * total]


def whole(shape: Any) -> Polygon | None:
    """The one polygon of a piece; None if it fell apart or nothing is left of it."""
    parts = polygons(shape)
    return parts[0] if len(parts) == 1 else None


def piece_of(shape: Polygon) -> CutPiece:
    """A polygon as a piece; its number goes at its centroid, or where there is room if that may be outside."""
    rings = tuple(tuple(ring.coords[:-1]) for ring in (shape.exterior, *shape.interiors))
    if len(rings) > 1 or shape.convex_hull.area > CROOKED * shape.area:
        return CutPiece(rings, shape.area, roomiest(shape))
    point = shape.centroid
    return CutPiece(rings, shape.area, (point.x, point.y))


def roomiest(shape: Polygon) -> Point:
    """The place in a piece with most room for its number."""
    point = polylabel(shape, 1.0)
    return (point.x, point.y)
