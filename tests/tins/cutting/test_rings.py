"""Rings cut towards the middle, piece by piece."""

import math

import pytest

from tinbook.tins import SHAPES, Tin, cutting


def test_rings_are_cut_from_the_top_clockwise() -> None:
    pieces = cutting.ring_pieces(Tin(shape="round", sizes_mm=(200.0,)).outline_mm(), (60.0,), (8, 4))
    assert len(pieces) == 12
    assert pieces[0].middle[0] > 0 < pieces[0].middle[1]
    assert pieces[8].area_mm2 == pytest.approx(math.pi * 60.0**2 / 4, rel=1e-3)


def test_one_piece_of_a_whole_ring_keeps_its_hole() -> None:
    (piece,) = cutting.ring_pieces(Tin(shape="ring", sizes_mm=(230.0, 75.0)).outline_mm(), (), (1,))
    assert len(piece.rings) == 2
    assert piece.area_mm2 == pytest.approx(SHAPES["ring"].area_mm2((230.0, 75.0)), rel=1e-3)
