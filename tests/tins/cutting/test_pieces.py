"""Strips cut across and grids, piece by piece."""

import pytest
from shapely import Polygon

from tinbook.tins import Tin, cutting


def test_pieces_of_a_strip_are_alike() -> None:
    pieces = cutting.strip_pieces(Tin(shape="oval", sizes_mm=(200.0, 280.0)).outline_mm(), (0.0, 90.0, 280.0), (5, 8))
    assert pieces is not None
    assert [piece.area_mm2 for piece in pieces[:5]] == pytest.approx([pieces[0].area_mm2] * 5, rel=2e-3)
    assert [piece.area_mm2 for piece in pieces[5:]] == pytest.approx([pieces[5].area_mm2] * 8, rel=2e-3)
    lefts = [min(x for x, _ in piece.rings[0]) for piece in pieces[:5]]
    assert lefts == sorted(lefts)


def test_a_piece_that_would_fall_apart_is_none() -> None:
    """The top of a heart in one strip of two: its lobes are two bits."""
    rings = Tin(shape="heart", sizes_mm=(200.0,)).outline_mm()
    assert cutting.strip_pieces(rings, (0.0, 10.0, 180.0), (1, 3)) is None


def test_a_grid_tiles_its_rectangle() -> None:
    pieces = cutting.grid_pieces(Tin(shape="rectangle", sizes_mm=(200.0, 300.0)).outline_mm(), 8, 6)
    assert len(pieces) == 48
    assert sum(piece.area_mm2 for piece in pieces) == pytest.approx(60_000.0)
    assert Polygon(pieces[0].rings[0]).contains(Polygon(pieces[0].rings[0]).centroid)
    assert pieces[0].middle == pytest.approx((-87.5, 125.0))


def test_there_is_room_for_a_number() -> None:
    crooked = Polygon([(0, 0), (60, 0), (60, 60), (50, 60), (50, 10), (0, 10)])
    x, y = cutting.roomiest(crooked)
    assert (x, y) == pytest.approx((54.5, 5.5), abs=1.5)
