"""How large letters are printed: from the height of an x in mm to a size of type, by the font's own measures."""

from __future__ import annotations

from functools import cache
from importlib import resources

POINT_MM = 25.4 / 72.0
WORDS, FIGURES = "atkinson.ttf", "besley.ttf"
"""The book's typefaces: that of its words, and that of its names and figures."""


@cache
def x_share(font: str = WORDS) -> float:
    """The height of its x as a share of the size of type."""
    from fontTools.ttLib import TTFont

    with resources.as_file(resources.files("tinbook") / "press" / "fonts" / font) as path, TTFont(path) as face:
        return float(face["OS/2"].sxHeight) / float(face["head"].unitsPerEm)


def size_pt(x_mm: float, font: str = WORDS) -> float:
    """The size of type at which an x is so high."""
    return x_mm / x_share(font) / POINT_MM


def x_mm(size: float, font: str = WORDS) -> float:
    """How high an x is at a size of type in points."""
    return size * POINT_MM * x_share(font)
