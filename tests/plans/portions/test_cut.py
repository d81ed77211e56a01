"""Where the knife goes: it parts exactly the pieces that are counted."""

from __future__ import annotations

import pytest
from shapely import LineString, Polygon
from shapely.geometry import Point
from shapely.ops import polygonize, unary_union
from tests.every import every

from tinbook.plans.portions.cut import knife_of, outline, pieces_of
from tinbook.plans.portions.cutting import Portion, cut_of, ring_cut
from tinbook.tins import Tin, cutting, read_tin

DESSERT = Portion("dessert", 25.0, 50.0, "")
CAKES = [
    "round 20 cm", "round 23 cm", "square 18 cm", "square 13 cm", "rectangle 23 cm x 33 cm", "heart 23 cm",
    "heart 20 cm", "hexagon 23 cm", "oval 20 cm x 28 cm", "petal 30 cm", "ring 23 cm", "fluted ring 25 cm", "dome 20 cm",
]  # fmt: skip


@every("name", CAKES)
def test_the_cuts_drawn_part_the_pieces_counted(name: str) -> None:
    """The faces that the drawn lines make of the outline, found by polygonising them, are as many as the pieces, and
    every piece's number stands in a face of its own."""
    tin = read_tin(name)[1]
    for cut in filter(None, (cut_of(tin, DESSERT, 100.0), ring_cut(tin, DESSERT))):
        knife = knife_of(cut)
        assert knife is not None
        rings = outline(tin)
        cake = Polygon(rings[0], rings[1:])
        lines = [LineString(line) for line in knife.lines]
        lines = [line.buffer(0.001).intersection(cake).length and _longer(line) for line in lines]
        circles = [Point(0, 0).buffer(radius, quad_segs=90).exterior for radius in knife.circles]
        net = unary_union([cake.boundary, *(line.intersection(cake.buffer(0.01)) for line in lines), *circles])
        faces = [face for face in polygonize(net) if face.area > 20.0 and cake.contains(face.representative_point())]
        assert len(faces) * cut.parts == cut.count
        for face in faces:
            assert sum(face.contains(Point(middle)) for middle in knife.middles) == 1


def _longer(line: LineString) -> LineString:
    """A hair longer at both ends, so that cuts meet."""
    (x1, y1), (x2, y2) = line.coords
    long = line.length or 1.0
    dx, dy = (x2 - x1) / long * 0.05, (y2 - y1) / long * 0.05
    return LineString([(x1 - dx, y1 - dy), (x2 + dx, y2 + dy)])


def test_pieces_are_numbered_from_the_top_and_from_the_left() -> None:
    pieces = pieces_of(cut_of(Tin(shape="square", sizes_mm=(200.0,)), DESSERT, 100.0)) or ()
    assert pieces[0].middle == pytest.approx((-87.5, 75.0))
    assert pieces[1].middle == pytest.approx((-62.5, 75.0))
    assert pieces[-1].middle == pytest.approx((87.5, -75.0))


def test_joined_pieces_have_no_straight_knife() -> None:
    tin = read_tin("outline M32 0H104V208H136V256H0V208H48V64L13 83V35Z x 5 cm")[1]
    cut = cut_of(tin, Portion("finger", 25.0, 25.0, ""), 100.0)
    assert cut.way == "joined"
    assert knife_of(cut) is None
    assert len(pieces_of(cut) or ()) == cut.count


def test_a_turned_outline_turned_again_is_as_it_was() -> None:
    rings = outline(read_tin("heart 20 cm")[1])
    assert cutting.turned(cutting.turned(rings)) == rings
