"""Rings of an outline, each cut towards the middle: the pieces, and the edges they lie between. Lengths mm, areas mm².

An edge is given by angles from the top, clockwise, and its distance from the middle at each.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
from shapely import Polygon

from tinbook.tins.cutting.areas import Array, Point
from tinbook.tins.cutting.pieces import CutPiece, piece_of
from tinbook.tins.shape import CIRCLE_POINTS, Ring

Edge = tuple[Array, Array]
HAIR = 1e-9
"""Angles, in radians, that count as the same."""
CIRCULAR_MM = 1e-6
"""An edge whose distance from the middle varies by less is a circle: the rest comes from the last digits."""


def ring_pieces(rings: Sequence[Ring], radii: Sequence[float], counts: Sequence[int]) -> tuple[CutPiece, ...]:
    """Rings between these inner `radii`, from the outside in, each cut towards the middle, clockwise from the top.

    The edge of the outermost is the outline; the inside of the innermost is the tube, or the middle.
    """
    pieces: list[CutPiece] = []
    for outer, inner, count in ring_edges(rings, radii, counts):
        for begin, end in pairwise(equal_turns(outer, inner, count)):
            edge = chain(outer, begin, end)
            inside = chain(inner, begin, end) if inner is not None else ([(0.0, 0.0)] if count > 1 else [])
            pieces.append(piece_of(sector(edge, inside, count)))
    return tuple(pieces)


def ring_edges(
    rings: Sequence[Ring], radii: Sequence[float], counts: Sequence[int]
) -> Iterator[tuple[Edge, Edge | None, int]]:
    """The outer and inner edge of each ring, and how many pieces it is cut into; from the outside in."""
    outer = polar(rings[0])
    for index, count in enumerate(counts):
        inner = _circle(radii[index]) if index < len(radii) else _tube(rings)
        yield outer, inner, count
        outer = inner if inner is not None else outer


def sector(edge: list[Point], inside: list[Point], count: int) -> Polygon:
    """A piece between two edges, or the whole ring between them where it is one piece."""
    if count > 1:
        return Polygon([*edge, *reversed(inside)])
    return Polygon(edge[:-1], [inside[:-1]] if len(inside) > 2 else None)


def _circle(radius: float) -> Edge:
    turns = np.linspace(0.0, 2.0 * math.pi, CIRCLE_POINTS + 1)
    return turns, np.full_like(turns, radius)


def _tube(rings: Sequence[Ring]) -> Edge | None:
    return polar(rings[1]) if len(rings) > 1 else None


def polar(ring: Ring) -> Edge:
    """Angles from the top, clockwise, from 0 to a full turn, and the ring's distance from the middle at each."""
    points = np.asarray(ring)
    turns = np.arctan2(points[:, 0], points[:, 1]) % (2.0 * math.pi)
    order = np.argsort(turns)
    turns, far = turns[order], np.hypot(points[:, 0], points[:, 1])[order]
    full = 2.0 * math.pi
    turns = np.concatenate(([turns[-1] - full], turns, [turns[0] + full]))
    far = np.concatenate(([far[-1]], far, [far[0]]))
    start, end = np.interp([0.0, full], turns, far)
    kept = (turns > HAIR) & (turns < full - HAIR)
    return np.concatenate(([0.0], turns[kept], [full])), np.concatenate(([start], far[kept], [end]))


def equal_turns(outer: Edge, inner: Edge | None, count: int) -> list[float]:
    """The angles between which `count` equal pieces lie."""
    if np.ptp(outer[1]) < CIRCULAR_MM and (inner is None or np.ptp(inner[1]) < CIRCULAR_MM):
        return [2.0 * math.pi * turn / count for turn in range(count + 1)]
    turns = np.linspace(0.0, 2.0 * math.pi, 4 * CIRCLE_POINTS + 1)
    far = np.interp(turns, *outer) ** 2 - (np.interp(turns, *inner) ** 2 if inner is not None else 0.0)
    held = np.concatenate(([0.0], np.cumsum((far[1:] + far[:-1]) / 2.0)))
    return [float(turn) for turn in np.interp(np.arange(count + 1) / count * held[-1], held, turns)]


def chain(edge: Edge, begin: float, end: float) -> list[Point]:
    """Points of an edge from one angle to another, both included."""
    turns, far = edge
    between = (turns > begin + HAIR) & (turns < end - HAIR)
    kept = np.concatenate(([begin], turns[between], [end]))
    away = np.interp(kept, turns, far)
    return [(float(r * math.sin(t)), float(r * math.cos(t))) for t, r in zip(kept, away, strict=True)]
