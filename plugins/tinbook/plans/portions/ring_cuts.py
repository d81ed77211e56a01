"""Rings cut off a cake one after another, each cut towards the middle; wedges where there is only one ring."""

from __future__ import annotations

import itertools
from math import hypot, pi, sqrt

from tinbook.engine import portions as sums
from tinbook.plans.portions.cut import Cut, Job
from tinbook.tins import cutting

NOTCH = 0.93
"""How near to the innermost point of the edge a ring may be cut."""


def in_rings(job: Job) -> Cut:
    """Rings whose pieces are all equal: as many as the cake serves."""
    pieces, rings = job.count, job.rings
    outside = sqrt(cutting.area(rings[:1]) / pi)
    inside = sqrt(cutting.area(rings[1:]) / pi) if len(rings) > 1 else 0.0
    depth = outside - inside
    many = max(1, min(pieces, sums.rings(depth, job.piece_mm[1])))
    ends = [outside - depth * index / many for index in range(many + 1)]
    nearest = NOTCH * min(hypot(x, y) for x, y in rings[0])
    if many > 1 and ends[1] > nearest:
        # A ring must not break out through a hollow in the edge.
        ends = [outside, *(inside + (nearest - inside) * index / (many - 1) for index in range(many - 1, -1, -1))]
    held = [sums.within(end, outside, inside, job.solid) for end in ends]
    ring_shares = [outer - inner for outer, inner in itertools.pairwise(held)]
    counts = sums.apportioned(ring_shares, pieces)
    inside_shares = [sum(counts[ring + 1 :]) / pieces for ring in range(len(counts) - 1)]
    radii = [sums.radius_of(share, outside, inside, job.solid) for share in inside_shares]
    return job.cut("rings" if many > 1 else "wedges", counts, (outside, *radii, inside))
