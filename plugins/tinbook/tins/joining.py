"""Outlines that straight strips cut into bits, such as a figure 8: small bits are joined to a neighbour.

Each bit of a strip is cut across by itself, and what is then too small goes to the neighbour with the longest cut in
common.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import floor
from typing import TYPE_CHECKING

from tinbook.tins import cutting
from tinbook.tins.shape import Ring

if TYPE_CHECKING:
    from shapely import Polygon

SMALL = 0.7
"""The least piece, in portions."""
HAIR = 1e-9
"""The share by which a cake may miss a whole number of portions in the last digits."""


@dataclass(frozen=True, slots=True)
class Joined:
    """The pieces, from the top down and from left to right, and the strips they came from."""

    pieces: tuple[cutting.CutPiece, ...]
    edges_mm: tuple[float, ...]
    upright: bool


@lru_cache(maxsize=256)
def joined(rings: tuple[Ring, ...], portion: float, long_mm: float) -> Joined:
    """The most pieces that are none of them smaller than SMALL portions, and not more than the cake has room for.

    rings: the outline, mm; portion: mm²; long_mm: how wide a strip is about.
    """
    size = cutting.area(rings)
    most = max(1, floor(size / portion * (1.0 + HAIR)))
    best: tuple[int, float, Joined] | None = None
    for upright in (False, True):
        way = cutting.turned(rings) if upright else rings
        _, low, _, high = cutting.spans(way)
        many = max(1, round((high - low) / long_mm))
        for strips in {max(1, many - 1), many, many + 1}:
            edges = tuple((high - low) * index / strips for index in range(strips + 1))
            for wanted in range(most, max(1, int(0.75 * most)) - 1, -1):
                if best and wanted < best[0]:
                    break
                pieces = _bits(way, edges, size / wanted, portion)
                if not pieces or len(pieces) > most:
                    continue
                worst = max(piece.area_mm2 for piece in pieces) / portion
                if best is None or (len(pieces), -worst) > (best[0], -best[1]):
                    best = (len(pieces), worst, Joined(cutting.back(pieces) if upright else pieces, edges, upright))
    if best is None:
        from shapely import Polygon

        whole = cutting.piece_of(Polygon(rings[0], rings[1:]))
        _, low, _, high = cutting.spans(rings)
        return Joined((whole,), (0.0, high - low), False)
    return best[2]


def _bits(rings: Sequence[Ring], edges: Sequence[float], wanted: float, portion: float) -> tuple[cutting.CutPiece, ...]:
    """The bits of every strip cut across into pieces of about `wanted` mm², small ones joined; none if that fails."""
    from shapely import Polygon, unary_union

    cake = Polygon(rings[0], rings[1:])
    left, _, right, high = cutting.spans(rings)
    bits: list[Polygon] = []
    for begin, end in itertools.pairwise(edges):
        for part in cutting.polygons(cutting.strip_of(cake, left, right, high - end, high - begin)):
            for near, far in cutting.across(part, max(1, round(part.area / wanted))):
                bits += cutting.polygons(cutting.clipped(part, near, high - end - 1.0, far, high - begin + 1.0))
    while len(bits) > 1:
        least = min(range(len(bits)), key=lambda index: bits[index].area)
        if bits[least].area >= SMALL * portion:
            break
        small = bits.pop(least)
        shared = [small.intersection(bit).length for bit in bits]
        longest = max(shared)
        if longest <= 0.0:
            return ()
        beside = [index for index, length in enumerate(shared) if length > 0.4 * longest]
        taker = min(beside, key=lambda index: bits[index].area)
        both = cutting.whole(unary_union([small, bits[taker]]))
        if both is None:
            return ()
        bits[taker] = both
    if not bits or min(bit.area for bit in bits) < SMALL * portion:
        return ()
    order = sorted(bits, key=lambda bit: (-round(bit.bounds[3] / 5.0), bit.bounds[0]))
    return tuple(replace(cutting.piece_of(bit), middle=cutting.roomiest(bit)) for bit in order)
