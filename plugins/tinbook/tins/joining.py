"""Outlines that straight strips cut into bits, such as a figure 8: small bits are joined to a neighbour.

Each bit of a strip is cut across by itself; what is then too small joins the neighbour it shares the longest cut with,
until there are as many as wanted.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from tinbook.tins import cutting
from tinbook.tins.shape import Ring

if TYPE_CHECKING:
    from shapely import Polygon

SMALL = 0.7
"""The smallest piece left alone, in mean pieces."""
HAIR = 1.0 - 1e-9
"""How much better than the last digits a plan must be to win."""
REACH = 1.35
"""How far the size that strips are cut to is moved up and down until the number of pieces is right."""


@dataclass(frozen=True, slots=True)
class Joined:
    """The pieces, from the top down and from left to right, and the strips they came from."""

    pieces: tuple[cutting.CutPiece, ...]
    edges_mm: tuple[float, ...]
    upright: bool


@lru_cache(maxsize=256)
def joined(rings: tuple[Ring, ...], pieces: int, long_mm: float) -> Joined:
    """Exactly this many pieces: the plan whose largest and smallest are closest in size.

    rings: the outline, mm; long_mm: about how wide a strip is. Where no strips give that many, the smallest of too many
    pieces are joined, or the largest of too few halved.
    """
    size, best = cutting.area(rings) / pieces, None
    for upright in (False, True):
        way = cutting.turned(rings) if upright else rings
        _, low, _, high = cutting.spans(way)
        many = max(1, round((high - low) / long_mm))
        for strips in sorted({max(1, many - 1), many, many + 1}):
            edges = tuple((high - low) * index / strips for index in range(strips + 1))
            seen = set()
            for step in range(-6, 7):
                bits = _bits(way, edges, size * REACH ** (step / 6.0))
                bits = _as_many(bits, pieces, size)
                areas = [bit.area for bit in bits]
                if len(bits) != pieces or tuple(areas) in seen:
                    continue
                seen.add(tuple(areas))
                uneven = max(areas) / min(areas)
                if best is None or uneven < best[0] * HAIR:
                    best = uneven, bits, edges, upright
    if best is None:
        raise ValueError(f"no way to cut an outline into {pieces} pieces")
    _, bits, edges, upright = best
    order = sorted(bits, key=lambda bit: (-round(bit.bounds[3] / 5.0), bit.bounds[0]))
    found = tuple(replace(cutting.piece_of(bit), middle=cutting.roomiest(bit)) for bit in order)
    return Joined(cutting.back(found) if upright else found, edges, upright)


def _bits(rings: Sequence[Ring], edges: Sequence[float], wanted: float) -> list[Polygon]:
    """The bits of every strip, cut across into pieces of about `wanted` mm²."""
    from shapely import Polygon

    cake = Polygon(rings[0], rings[1:])
    left, _, right, high = cutting.spans(rings)
    bits: list[Polygon] = []
    for begin, end in itertools.pairwise(edges):
        for part in cutting.polygons(cutting.strip_of(cake, left, right, high - end, high - begin)):
            for near, far in cutting.across(part, max(1, round(part.area / wanted))):
                bits += cutting.polygons(cutting.clipped(part, near, high - end - 1.0, far, high - begin + 1.0))
    return bits


def _as_many(bits: list[Polygon], pieces: int, size: float) -> list[Polygon]:
    """Bits joined while one is too small or there are too many, halved while there are too few; empty if that fails."""
    bits = list(bits)
    while len(bits) > 1 and (len(bits) > pieces or min(bit.area for bit in bits) < SMALL * size):
        if not _join(bits, min(range(len(bits)), key=lambda index: bits[index].area)):
            return []
    while bits and len(bits) < pieces:
        largest = bits.pop(max(range(len(bits)), key=lambda index: bits[index].area))
        halves = _halves(largest)
        if len(halves) != 2:
            return []
        bits += halves
    return bits


def _join(bits: list[Polygon], index: int) -> bool:
    """Joins a bit to the neighbour it shares the longest cut with; the smallest, if several share about as much."""
    from shapely import unary_union

    small = bits.pop(index)
    shared = [small.intersection(bit).length for bit in bits]
    longest = max(shared)
    if longest <= 0.0:
        return False
    beside = [place for place, length in enumerate(shared) if length > 0.4 * longest]
    taker = min(beside, key=lambda place: bits[place].area)
    both = cutting.whole(unary_union([small, bits[taker]]))
    if both is None:
        return False
    bits[taker] = both
    return True


def _halves(bit: Polygon) -> list[Polygon]:
    """A bit cut in two across its longer side."""
    from shapely import affinity

    left, low, right, high = bit.bounds
    tall = high - low > right - left
    lying = affinity.rotate(bit, 90.0, origin=(0.0, 0.0)) if tall else bit
    _, bottom, _, top = lying.bounds
    halves = [
        half
        for near, far in cutting.across(lying, 2)
        for half in cutting.polygons(cutting.clipped(lying, near, bottom - 1.0, far, top + 1.0))
    ]
    return [affinity.rotate(half, -90.0, origin=(0.0, 0.0)) for half in halves] if tall else halves
