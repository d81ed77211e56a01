"""American sheet pans by name: shallow rectangles, the quarter half the half and the half half the full one.

Sizes outside the rolled edge, as the trade names them: 9 x 13, 13 x 18 and 18 x 26 in, 1 in deep (common practice).
"""

from __future__ import annotations

from tinbook.tins.rectangle import Rectangle
from tinbook.tins.shape import NamedSize


class SheetTin(Rectangle):
    """A sheet pan: quarter, half or full."""

    key = "sheet"
    title = "Sheet"
    words = ("sheet", "sheets")
    named = (
        NamedSize(name="quarter", sizes_mm=(230.0, 330.0), depth_mm=25.0),
        NamedSize(name="half", sizes_mm=(330.0, 460.0), depth_mm=25.0),
        NamedSize(name="full", sizes_mm=(460.0, 660.0), depth_mm=25.0),
    )
    standard = tuple((named.sizes_mm, named.depth_mm) for named in named)
    depths_mm = (25.0, 50.0)
    usual_mm = 25.0
    example = "sheet 33 cm x 46 cm x 2.5 cm"
    everyday = False

    @property
    def noun(self) -> str:
        return "sheet tin"


SHEET = SheetTin()
