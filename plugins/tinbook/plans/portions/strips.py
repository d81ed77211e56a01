"""Straight strips cut across: equally wide while their pieces come out near enough alike, else uneven, else joined.

What may be cut follows from the outline's form and from widths in portions only, so that a plan for one cake is a plan
for every larger one of its form, and a larger cake never serves fewer.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.engine import portions as sums
from tinbook.engine.tolerance import whole_down
from tinbook.plans.portions.cut import Cut, Job, bent, pieces_of
from tinbook.tins import Ring, cutting
from tinbook.tins.joining import joined

LONG = 1.2
"""An outline so many times as long as wide is cut along its length, every strip at least one portion wide."""
CORNERS = 100
SAME_RADIUS = 1e-6
"""An outline of more corners than that whose squared distances from the middle differ by no more, as a share, is a
round; coarser than the grain, for its corners are sums of sines."""


@dataclass(frozen=True, slots=True)
class _Manner:
    """How small the pieces of an outline may be, in portions: its strips' and its pieces' width, and the mean piece.

    `full`: the largest mean piece before strips give up their equal width for more pieces.
    """

    strip: float
    width: float
    mean: float
    full: float


AS_LONG, BENT, LONGER = _Manner(0.9, 0.85, 1.0, 1.05), _Manner(0.9, 0.85, 1.0, 1.2), _Manner(0.98, 0.9, 1.05, 1.2)
"""For outlines about as long as wide; for those of them that uneven strips would break at a corner turning inwards; and
for long ones, whose ends are slivers.

Judgement of the house, set so that rounds and ovals serve what published charts say of them: for their area charts
give an oval a sixth less than a round.
"""


def in_strips(job: Job) -> Cut:
    """Strips of equal width where they give enough pieces near enough alike; else strips of uneven width; else small
    pieces joined to their neighbours."""
    hollow = bent(job.rings)
    manner = _manner(job, hollow)
    few = sums.fewest(job.size, job.portion, manner.full)
    even = [cut for upright in _ways(job) for cut in _even(job, manner, upright, few)]
    for cut in sorted(even, key=lambda cut: (-cut.count, round(cut.off, 6), cut.upright)):
        if not hollow or pieces_of(cut) is not None:
            return cut
    for cut in _unevens(job, manner, few):
        if not hollow or pieces_of(cut) is not None:
            return cut
    rest = joined(job.rings, job.portion, job.long_mm)
    areas = [piece.area_mm2 for piece in rest.pieces]
    off = sums.spread(areas, [1] * len(areas))
    return job.cut("joined", (len(areas),), rest.edges_mm, upright=rest.upright, off=off)


def uneven(job: Job, rings: tuple[Ring, ...], counts: tuple[int, ...], upright: bool) -> Cut:
    """Strips as wide as makes all pieces alike; `rings` laid on their side where they run up and down."""
    pieces = sum(counts)
    edges = cutting.strip_edges(rings, [count / pieces for count in counts])
    return job.cut("uneven", counts, edges, upright=upright)


def _manner(job: Job, hollow: bool) -> _Manner:
    if max(job.sides_mm) > LONG * min(job.sides_mm):
        return LONGER
    return BENT if hollow else AS_LONG


def _ways(job: Job) -> tuple[bool, ...]:
    """Whether strips may run up and down: a long outline is cut along its length, and for a round it is all one."""
    wide, tall = job.sides_mm
    if max(wide, tall) > LONG * min(wide, tall):
        return (tall > wide,)
    squares = [x * x + y * y for x, y in job.rings[0]]
    is_round = len(squares) > CORNERS and max(squares) - min(squares) < SAME_RADIUS * max(squares)
    return (False,) if is_round else (False, True)


def _even(job: Job, manner: _Manner, upright: bool, few: int) -> Iterator[Cut]:
    """Equally wide strips whose pieces come out near enough alike, `few` or more of them: for each number of strips the
    most; of outlines that may fall apart all."""
    rings = _laid(job.rings, upright)
    tall = job.sides_mm[0 if upright else 1]
    most = sums.most(job.size, job.portion * manner.mean)
    many = _strips_at_most(tall, manner, job.long_mm)
    for strips, areas in enumerate(cutting.strips_areas(rings, many), 1):
        wide = tall / strips
        limit = min(most, whole_down(job.size / (manner.width * job.short_mm * wide)))
        for pieces in range(limit, max(few, strips) - 1, -1):
            counts = sums.shared(areas, pieces)
            if counts:
                edges = tuple(wide * index for index in range(strips + 1))
                yield job.cut("strips", counts, edges, upright=upright, off=sums.spread(areas, counts))
                if manner is not BENT:
                    break


def _unevens(job: Job, manner: _Manner, pieces: int) -> Iterator[Cut]:
    """Strips of uneven width: first those that are the same from either side, then those nearest to a portion's
    width; not so few that the pieces would be slices."""
    ways = []
    for upright in _ways(job):
        rings, tall = _laid(job.rings, upright), job.sides_mm[0 if upright else 1]
        most = min(pieces, _strips_at_most(tall, manner, job.long_mm))
        for strips in range(most, max(0, most - 3), -1):
            if strips > 1 or most == 1:
                counts = sums.apportioned(cutting.strip_areas(rings, strips), pieces)
                off = abs(strips - tall / job.long_mm)
                ways.append((counts != counts[::-1], off, upright, rings, counts))
    for _, _, upright, rings, counts in sorted(ways, key=lambda way: way[:3]):
        yield uneven(job, rings, counts, upright)


def _laid(rings: tuple[Ring, ...], upright: bool) -> tuple[Ring, ...]:
    return cutting.turned(rings) if upright else rings


def _strips_at_most(tall: float, manner: _Manner, long_mm: float) -> int:
    return max(1, whole_down(tall / (manner.strip * long_mm)))
