"""Where the knife goes to cut an outline into strips, a grid or rings. Lengths mm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from tinbook.tins.cutting.areas import Array, Point, points_of, spans
from tinbook.tins.cutting.pieces import CutPiece, roomiest
from tinbook.tins.cutting.rings import Edge, chain, equal_turns, polar, ring_edges, sector
from tinbook.tins.shape import Ring

STRAIGHT = 0.95
"""A strip whose ends are at least this tall, as a share of its tallest place, ends in straight pieces."""
FINE = 2000
"""How many steps a whole convex outline is divided into to find where it is cut."""


@dataclass(frozen=True, slots=True)
class Knife:
    """Where the knife goes: straight cuts from point to point, which may overshoot the edge, and circles about the
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
    first = 0
    for begin, end, count in zip(edges, edges[1:], counts, strict=False):
        for piece in pieces[first : first + count - 1]:
            cut = max(x for x, _ in piece.rings[0])
            lines.append(((cut, high - begin), (cut, high - end)))
        first += count
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
    """`strip_knife` for a convex outline, which needs no pieces: its height runs from one chain of corners to the
    other, so a strip's area up to any place is a running sum."""
    left, _, right, high = spans(rings)
    lines: list[tuple[Point, Point]] = [((left, high - edge), (right, high - edge)) for edge in edges[1:-1]]
    middles: list[Point] = []
    points = points_of(rings[0])
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
        if count > 1 and min(tall[inside[0]], tall[inside[-1] + 1]) < STRAIGHT * tall.max():
            # End pieces come to a point, so most of each lies inwards.
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
    outermost, bent = None, float(np.ptp(polar(rings[0])[1])) > 1.0
    for outer, inner, count in ring_edges(rings, radii, counts):
        outermost = outermost or outer
        turns = np.asarray(equal_turns(outer, inner, count))
        inside = inner if inner is not None else (outer[0], np.zeros_like(outer[1]))
        if count > 1:
            lines += zip(_points(inside, turns[:-1]), _points(outer, turns[:-1]), strict=True)
        if bent and outer is outermost:
            for begin, end in pairwise(turns.tolist()):
                middles.append(roomiest(sector(chain(outer, begin, end), chain(inside, begin, end), count)))
        elif count == 1 and inner is None:
            middles.append((0.0, 0.0))
        else:
            share = 0.58 if inner is None else 0.5
            halves = (turns[1:] + turns[:-1]) / 2.0
            away = np.interp(halves, *inside) * (1.0 - share) + np.interp(halves, *outer) * share
            middles += zip((away * np.sin(halves)).tolist(), (away * np.cos(halves)).tolist(), strict=True)
    return Knife(tuple(lines), tuple(radii), tuple(middles))


def _points(edge: Edge, turns: Array) -> list[Point]:
    away = np.interp(turns, *edge)
    return list(zip((away * np.sin(turns)).tolist(), (away * np.cos(turns)).tolist(), strict=True))
