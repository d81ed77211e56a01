"""Straight strips cut across: equally wide if their pieces are near enough alike, otherwise uneven, otherwise joined.

The number of pieces is not decided here: a job knows, and every plan gives exactly as many.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from tinbook.engine import portions as sums
from tinbook.engine.tolerance import whole_down
from tinbook.plans.portions.cut import Cut, Job, bent, pieces_of
from tinbook.tins import Ring, cutting
from tinbook.tins.joining import joined

CORNERS = 100
SAME_RADIUS = 1e-6
"""An outline with more corners than this whose squared distances from the middle differ by no more, as a share, is a
round; coarser than the grain, as its corners are sums of sines."""
NARROW, WIDE = 0.75, 1.34
"""How wide a strip may be, in lengths of the mean piece. Our own judgement."""


def in_strips(job: Job) -> Cut:
    """Strips of equal width where their pieces are near enough alike; else strips of uneven width; else small pieces
    joined to their neighbours."""
    hollow = bent(job.rings)
    for cut in _plans(job):
        if not hollow or pieces_of(cut) is not None:
            return cut
    rest = joined(job.rings, job.count, job.piece_mm[1])
    off = sums.spread([piece.area_mm2 for piece in rest.pieces], [1] * job.count)
    return job.cut("joined", (job.count,), rest.edges_mm, upright=rest.upright, off=off)


def uneven(job: Job, counts: tuple[int, ...], upright: bool) -> Cut:
    """Strips as wide as makes all pieces alike."""
    pieces = sum(counts)
    edges = cutting.strip_edges(laid(job.rings, upright), [count / pieces for count in counts])
    return job.cut("uneven", counts, edges, upright=upright)


def laid(rings: tuple[Ring, ...], upright: bool) -> tuple[Ring, ...]:
    """An outline, laid on its side for strips that run up and down."""
    return cutting.turned(rings) if upright else rings


@dataclass(frozen=True, slots=True)
class _Way:
    """This many strips, up and down or from side to side, their areas at equal width, and how wide they then are."""

    upright: bool
    areas: tuple[float, ...]
    wide_mm: float

    def rank(self, job: Job, counts: tuple[int, ...], off: float) -> tuple[float, ...]:
        """Symmetrical plans first, then those with strips nearest to a piece's length, then those whose pieces are most
        alike."""
        wide = self.wide_mm / job.piece_mm[1]
        return counts != counts[::-1], round(max(wide, 1.0 / wide), 6), round(off, 6), self.upright


def _plans(job: Job) -> Iterator[Cut]:
    ways = list(_ways(job))
    shared = [(way, counts) for way in ways if (counts := sums.shared(way.areas, job.count))]
    for way, counts in sorted(shared, key=lambda each: each[0].rank(job, each[1], sums.spread(each[0].areas, each[1]))):
        edges = tuple(way.wide_mm * index for index in range(len(counts) + 1))
        yield job.cut("strips", counts, edges, upright=way.upright, off=sums.spread(way.areas, counts))
    given = [(way, sums.apportioned(way.areas, job.count)) for way in ways]
    for way, counts in sorted(given, key=lambda each: each[0].rank(job, each[1], 0.0)):
        yield uneven(job, counts, way.upright)


def _ways(job: Job) -> Iterator[_Way]:
    """Strips about as wide as a piece is long: a long outline is cut along its length, and for a round either way
    will do."""
    wide, tall = job.sides_mm
    uprights: tuple[bool, ...] = (False, True)
    if max(wide, tall) > sums.LONG * min(wide, tall):
        uprights = (tall > wide,)
    elif _is_round(job.rings[0]):
        uprights = (False,)
    for upright in uprights:
        across, rings = (wide if upright else tall), laid(job.rings, upright)
        pieces = across / job.piece_mm[1]
        most = max(1, min(job.count, whole_down(pieces / NARROW)))
        for strips in range(min(most, max(1, ceil(pieces / WIDE))), most + 1):
            yield _Way(upright, cutting.strip_areas(rings, strips), across / strips)


def _is_round(ring: Ring) -> bool:
    squares = [x * x + y * y for x, y in ring]
    return len(squares) > CORNERS and max(squares) - min(squares) < SAME_RADIUS * max(squares)
