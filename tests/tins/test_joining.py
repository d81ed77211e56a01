"""Outlines that strips cut into bits: the bits are joined, and the whole is still tiled."""

from __future__ import annotations

import pytest
from shapely import Polygon
from shapely.ops import unary_union
from tests.every import every

from tinbook.tins import read_tin
from tinbook.tins.joining import SMALL, joined

NUMBERS = {
    "1": "outline M32 0H104V208H136V256H0V208H48V64L13 83V35Z x 5 cm",
    "8": "outline M0 0H160V260H0Z M40 40H120V110H40Z M40 150H120V220H40Z x 5 cm",
    "cross": "outline M60 0H120V60H180V120H120V180H60V120H0V60H60Z x 5 cm",
}


@every("name", NUMBERS)
@every("sides", [(25.0, 25.0), (25.0, 50.0), (38.0, 50.0)])
def test_joined_pieces_tile_the_outline(name: str, sides: tuple[float, float]) -> None:
    rings = read_tin(NUMBERS[name])[1].outline_mm()
    cake = Polygon(rings[0], rings[1:])
    wanted = int(0.9 * cake.area / (sides[0] * sides[1]))
    pieces = joined(rings, wanted, sides[1]).pieces
    shapes = [Polygon(piece.rings[0], piece.rings[1:]) for piece in pieces]
    mean = cake.area / wanted
    assert len(pieces) == wanted
    assert SMALL * mean <= min(shape.area for shape in shapes)
    assert max(shape.area for shape in shapes) <= 1.3 * mean
    assert sum(shape.area for shape in shapes) == pytest.approx(cake.area, rel=1e-3)
    assert unary_union(shapes).area == pytest.approx(cake.area, rel=1e-3)
    assert all(shape.is_valid for shape in shapes)


@pytest.mark.parametrize("name", NUMBERS)
def test_there_are_as_many_as_wanted_whatever_is_wanted(name: str) -> None:
    rings = read_tin(NUMBERS[name])[1].outline_mm()
    for wanted in range(1, 24):
        pieces = joined(rings, wanted, (Polygon(rings[0], rings[1:]).area / wanted / 2.0) ** 0.5 * 2.0).pieces
        assert len(pieces) == wanted
