"""The register of tin shapes: a new shape is one file beside this one and one line here.

The order is the order of rows in every table.
"""

from __future__ import annotations

from tinbook.tins.ball import BALL
from tinbook.tins.cups import CUPS
from tinbook.tins.dome import DOME
from tinbook.tins.fluted_ring import FLUTED_RING
from tinbook.tins.heart import HEART
from tinbook.tins.hexagon import HEXAGON
from tinbook.tins.loaf import LOAF
from tinbook.tins.octagon import OCTAGON
from tinbook.tins.outline import OUTLINE
from tinbook.tins.oval import OVAL
from tinbook.tins.petal import PETAL_TIN
from tinbook.tins.rectangle import RECTANGLE
from tinbook.tins.ring import RING
from tinbook.tins.round import ROUND
from tinbook.tins.shape import Shape
from tinbook.tins.sheet import SHEET
from tinbook.tins.sold import sold_in_inches
from tinbook.tins.square import SQUARE
from tinbook.tins.tapered_ring import TAPERED_RING
from tinbook.units import Sold

SHAPES: dict[str, Shape] = {
    "round": ROUND,
    "square": SQUARE,
    "rectangle": RECTANGLE,
    "sheet": SHEET,
    "loaf": LOAF,
    "ring": RING,
    "tapered ring": TAPERED_RING,
    "fluted ring": FLUTED_RING,
    "heart": HEART,
    "hexagon": HEXAGON,
    "octagon": OCTAGON,
    "petal": PETAL_TIN,
    "oval": OVAL,
    "dome": DOME,
    "ball": BALL,
    "outline": OUTLINE,
    "cups": CUPS,
}
SOLD_IN: dict[Sold, dict[str, Shape]] = {
    "cm": SHAPES,
    "inches": {key: sold_in_inches(shape) for key, shape in SHAPES.items()},
}
"""The shapes with the trade's sizes as they really are, by the units tins are sold in."""
