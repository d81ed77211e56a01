"""How many equal tins fit on an oven shelf."""

from __future__ import annotations

from functools import lru_cache

from tinbook.engine.tolerance import whole_down


@lru_cache(maxsize=1024)
def per_shelf(tin_bounds_mm: tuple[float, float], shelf_mm: tuple[float, float], clearance_mm: float) -> int:
    """How many tins of one size stand on one shelf, by their bounding rectangles.

    At least clearance_mm is left for hot air between tins, and between a tin and the shelf's edge. Rows run along the
    shelf or across it; within a row all tins are turned one way, and rows turned either way may be mixed. No
    interlocked layouts: now and then a pinwheel would hold one more.

    tin_bounds_mm, shelf_mm: (width, depth) in mm. 0 when none fits. ValueError for a size that is not positive or a
    negative clearance.
    """
    if not (all(side > 0.0 for side in (*tin_bounds_mm, *shelf_mm)) and clearance_mm >= 0.0):
        raise ValueError("sizes must be more than 0 and the clearance at least 0")
    # Give each tin a clearance on two sides and take one off the shelf, and every gap is accounted for.
    tin = tuple(side + clearance_mm for side in tin_bounds_mm)
    along, across = (side - clearance_mm for side in shelf_mm)
    return max(_by_rows(tin[0], tin[1], along, across), _by_rows(tin[0], tin[1], across, along))


def _by_rows(width: float, depth: float, along: float, across: float) -> int:
    """The most in rows running along: some rows `depth` deep, the others of turned tins, `width` deep."""
    straight, turned = _times(width, along), _times(depth, along)
    best = 0
    for rows in range(_times(depth, across) + 1):
        left = across - rows * depth
        best = max(best, rows * straight + _times(width, left) * turned)
    return best


def _times(part: float, whole: float) -> int:
    """How often part goes into whole; a tiny shortfall still counts, as lengths are sums of decimals."""
    return max(0, whole_down(whole / part))
