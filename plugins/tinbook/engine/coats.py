"""Filling between layers, coats round them, borders on them. Lengths mm, areas mm², volumes ml.

A coat is the shell between two solids: the cake, and the cake grown by the coat's thickness at its sides and top (it
stands on the board). The areas of both outlines come from the tin; see `tins/growth`.
"""

from __future__ import annotations

from math import pi, sqrt

from tinbook.engine.tolerance import whole_down

MM3_IN_ML = 1000.0


def filling_ml(area_mm2: float, thickness_mm: float, layers: int) -> float:
    """Filling between `layers` layers: area × thickness × (layers − 1)."""
    return area_mm2 * thickness_mm * max(0, layers - 1) / MM3_IN_ML


def slice_radii_mm(radius_mm: float, layers: int, whole_ball: bool = False) -> tuple[float, ...]:
    """Radii in mm of the cuts through a half ball on its flat, or a `whole_ball`, in `layers` slices of equal
    height.
    """
    foot_mm, high_mm = (-radius_mm, 2.0 * radius_mm) if whole_ball else (0.0, radius_mm)
    cuts = (foot_mm + high_mm * layer / layers for layer in range(1, layers))
    return tuple(sqrt(radius_mm**2 - cut_mm**2) for cut_mm in cuts)


def shell_ml(inner_mm2: float, outer_mm2: float, height_mm: float, thickness_mm: float) -> float:
    """A coat on the sides and top of an upright cake: outer solid less inner solid.

    inner_mm2, outer_mm2: areas of the outline before and after; height_mm: the cake's height before.
    """
    return (outer_mm2 * (height_mm + thickness_mm) - inner_mm2 * height_mm) / MM3_IN_ML


def dome_shell_ml(radius_mm: float, thickness_mm: float) -> float:
    """A coat on a half ball standing on its flat: 2/3 π ((r + t)³ − r³)."""
    return 2.0 / 3.0 * pi * ((radius_mm + thickness_mm) ** 3 - radius_mm**3) / MM3_IN_ML


def ball_shell_ml(radius_mm: float, thickness_mm: float) -> float:
    """A coat all round a ball: twice that of a half ball."""
    return 2.0 * dome_shell_ml(radius_mm, thickness_mm)


def with_bowl(used: float, bowl: float) -> float:
    """How much to make so that `used` is left when a share `bowl` of it stays in the bowl and on the tools."""
    return used / (1.0 - bowl)


def marks_on_edge(edge_mm: float, pitch_mm: float) -> int:
    """How many shells, loops or rosettes close up round an edge: the nearest whole number, at least 1."""
    return max(1, whole_down(edge_mm / pitch_mm + 0.5))


def border_ml(marks: int, opening_mm: float, stroke_mm: float, open_share: float) -> float:
    """A piped border: what leaves the nozzle as it is pressed along `stroke_mm` for each mark.

    volume = marks × π/4 × opening² × open share × stroke. `open_share` is how much of the circle round its points a
    star nozzle leaves open; 1 for a plain one.
    """
    return marks * pi / 4.0 * opening_mm**2 * open_share * stroke_mm / MM3_IN_ML
