"""Outlines cut: areas below a line against the Clipper library and closed forms; strips and rings piece by piece."""

from __future__ import annotations

import math

import pyclipper
import pytest
from shapely import Polygon

from tinbook.tins import SHAPES, Tin, cutting, standard_tins

CAKES = [tin for tin in standard_tins() if not tin.kind.in_trays]
GRAIN = 1e-4


def below(tin: Tin, height: float) -> float:
    """What of a tin's outline lies below a height, by Clipper."""
    clipper = pyclipper.Pyclipper()
    for ring in tin.outline_mm():
        clipper.AddPath([(round(x / GRAIN), round(y / GRAIN)) for x, y in ring], pyclipper.PT_SUBJECT, True)
    far, level = round(1000 / GRAIN), round(height / GRAIN)
    clipper.AddPath([(-far, -far), (far, -far), (far, level), (-far, level)], pyclipper.PT_CLIP, True)
    found = clipper.Execute(pyclipper.CT_INTERSECTION, pyclipper.PFT_EVENODD, pyclipper.PFT_EVENODD)
    return sum(pyclipper.Area(path) for path in found) * GRAIN**2


@pytest.mark.parametrize("tin", CAKES, ids=lambda tin: tin.name)
def test_the_area_below_a_line(tin: Tin) -> None:
    rings = tin.outline_mm()
    heights = [-60.0, -12.5, 0.0, 7.3, 55.0]
    for height, area in zip(heights, cutting.area_below(rings, heights), strict=True):
        assert area == pytest.approx(below(tin, height), rel=1e-5, abs=1.0)
    assert cutting.area(rings) == pytest.approx(tin.area_mm2 / tin.kind.parts, rel=2e-4)


def test_strips_of_a_circle_by_its_formula() -> None:
    """A quarter of the width off a circle of radius r: r² (π/3 − √3/4)."""
    outer = 100.0**2 * (math.pi / 3 - math.sqrt(3) / 4)
    rings = Tin(shape="round", sizes_mm=(200.0,)).outline_mm()
    areas = cutting.strip_areas(rings, 4)
    assert areas[0] == pytest.approx(outer, rel=1e-3)
    assert areas == pytest.approx(areas[::-1])
    assert cutting.strips_areas(rings, 4)[3] == pytest.approx(areas)


@pytest.mark.parametrize("key", ["round", "heart", "petal", "hexagon"])
def test_strips_of_given_shares(key: str) -> None:
    rings = Tin(shape=key, sizes_mm=(230.0,)).outline_mm()
    edges = cutting.strip_edges(rings, [0.2, 0.5, 0.3])
    top = cutting.spans(rings)[3]
    below = cutting.area_below(rings, [top - edge for edge in edges])
    assert (below[:-1] - below[1:]) / below[0] == pytest.approx([0.2, 0.5, 0.3], abs=1e-4)


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


def test_rings_are_cut_from_the_top_clockwise() -> None:
    pieces = cutting.ring_pieces(Tin(shape="round", sizes_mm=(200.0,)).outline_mm(), (60.0,), (8, 4))
    assert len(pieces) == 12
    assert pieces[0].middle[0] > 0 < pieces[0].middle[1]
    assert pieces[8].area_mm2 == pytest.approx(math.pi * 60.0**2 / 4, rel=1e-3)
    knife = cutting.ring_knife(Tin(shape="round", sizes_mm=(200.0,)).outline_mm(), (60.0,), (8, 4))
    assert (len(knife.lines), knife.circles, len(knife.middles)) == (12, (60.0,), 12)


def test_one_piece_of_a_whole_ring_keeps_its_hole() -> None:
    (piece,) = cutting.ring_pieces(Tin(shape="ring", sizes_mm=(230.0, 75.0)).outline_mm(), (), (1,))
    assert len(piece.rings) == 2
    assert piece.area_mm2 == pytest.approx(SHAPES["ring"].area_mm2((230.0, 75.0)), rel=1e-3)


def test_there_is_room_for_a_number() -> None:
    crooked = Polygon([(0, 0), (60, 0), (60, 60), (50, 60), (50, 10), (0, 10)])
    x, y = cutting.roomiest(crooked)
    assert (x, y) == pytest.approx((54.5, 5.5), abs=1.5)
