"""Sugarpaste and marzipan: on the cake, rolled out for it, and what comes back. Lengths in mm, weights in g."""

from __future__ import annotations

from math import pi

MM3_IN_ML = 1000.0


def net_g(surface_mm2: float, thickness_mm: float, g_per_ml: float) -> float:
    """Paste on the cake: surface × thickness × density."""
    return surface_mm2 * thickness_mm / MM3_IN_ML * g_per_ml


def upright_mm2(area_mm2: float, edge_mm: float, height_mm: float) -> float:
    """The surface of an upright cake without its base: top and sides."""
    return area_mm2 + edge_mm * height_mm


def dome_mm2(radius_mm: float) -> float:
    """Surface of a half ball without its flat: 2 π r²."""
    return 2.0 * pi * radius_mm**2


def rolled_mm(across_mm: float, height_mm: float, trim_mm: float) -> float:
    """The width to roll paste to for a cake `across_mm` wide: over the top, down both sides, and a bit over."""
    return across_mm + 2.0 * height_mm + trim_mm


def disc_g(across_mm: float, thickness_mm: float, g_per_ml: float) -> float:
    """Weight of a rolled disc."""
    return pi / 4.0 * across_mm**2 * thickness_mm / MM3_IN_ML * g_per_ml


def sheet_g(width_mm: float, length_mm: float, thickness_mm: float, g_per_ml: float) -> float:
    """Weight of a rolled rectangle."""
    return width_mm * length_mm * thickness_mm / MM3_IN_ML * g_per_ml
