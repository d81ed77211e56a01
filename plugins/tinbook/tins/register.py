"""The register of tin shapes: a new shape is one file beside this one and one line here.

The order is the order of rows in every table.
"""

from __future__ import annotations

from tinbook.tins.cups import CUPS
from tinbook.tins.loaf import LOAF
from tinbook.tins.rectangle import RECTANGLE
from tinbook.tins.ring import RING
from tinbook.tins.round import ROUND
from tinbook.tins.shape import Shape
from tinbook.tins.square import SQUARE

SHAPES: dict[str, Shape] = {
    "round": ROUND,
    "square": SQUARE,
    "rectangle": RECTANGLE,
    "loaf": LOAF,
    "ring": RING,
    "cups": CUPS,
}
