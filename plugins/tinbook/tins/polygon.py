"""Regular polygons: what hexagon, octagon and petal share."""

from __future__ import annotations

import math

from tinbook.tins.shape import Ring


def corners(sides: int, across_corners_mm: float, turned: float = 0.0) -> Ring:
    """The corners of a regular polygon about (0, 0), anticlockwise; `turned` is the angle of the first, in turns."""
    radius = across_corners_mm / 2.0
    turns = (2.0 * math.pi * (k / sides + turned) for k in range(sides))
    return tuple((radius * math.cos(turn), radius * math.sin(turn)) for turn in turns)
