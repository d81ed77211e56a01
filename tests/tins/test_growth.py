"""Outlines moved out by a coat, for every shape in the register, against the Clipper library's offset of the same points.

Clipper (through pyclipper) works in whole numbers and knows neither our formula nor shapely.
"""

from __future__ import annotations

import math

import pyclipper
import pytest
from shapely import Polygon
from tests.every import every

from tinbook.tins import SHAPES, Tin, read_tin
from tinbook.tins.growth import CakeOutline, outline_of, ring_round, turns

GRAIN = 1e-4
"""Clipper counts in these, mm."""


def tins(key: str) -> list[Tin]:
    shape = SHAPES[key]
    return [Tin(shape=key, sizes_mm=sizes, depth_mm=depth) for sizes, depth in shape.standard] or [
        read_tin(shape.example)[1]
    ]


def offset_mm2(tin: Tin, by_mm: float) -> float:
    """The cake half-way up, or a dome at its foot, with its outline moved out: area mm²."""
    height = 1.0 if tin.kind.solid != "upright" else 0.5
    outer, *tubes = tin.kind.outline_mm(tin.sizes_mm, height)
    clipper = pyclipper.PyclipperOffset(20.0, 250.0)
    for ring, way in [(outer, True), *((tube, False) for tube in tubes)]:
        points = [(round(x / GRAIN), round(y / GRAIN)) for x, y in ring]
        if pyclipper.Orientation(points) is not way:
            points.reverse()
        clipper.AddPath(points, pyclipper.JT_MITER, pyclipper.ET_CLOSEDPOLYGON)
    return sum(pyclipper.Area(path) for path in clipper.Execute(by_mm / GRAIN)) * GRAIN**2


@every("thickness", [1.0, 2.0, 4.0, 7.0])
@every("key", [key for key, shape in SHAPES.items() if not shape.in_trays])
def test_the_coated_outline_is_the_offset_one(key: str, thickness: float) -> None:
    for tin in tins(key):
        outline = outline_of(tin)
        if thickness >= outline.room_mm:
            continue
        assert outline.grown(thickness).area_mm2 == pytest.approx(offset_mm2(tin, thickness), rel=2e-3), tin.name


@every("key", [key for key, shape in SHAPES.items() if not shape.in_trays])
def test_a_coat_never_shrinks_as_it_thickens(key: str) -> None:
    for tin in tins(key):
        outline = outline_of(tin)
        most = min(20.0, outline.room_mm * 0.95)
        areas = [outline.grown(most * step / 20).area_mm2 for step in range(21)]
        assert areas == sorted(areas), tin.name


def test_corners_of_plain_outlines() -> None:
    assert outline_of(Tin(shape="square", sizes_mm=(200.0,))).corners == pytest.approx(4.0)
    assert outline_of(Tin(shape="round", sizes_mm=(200.0,))).corners == pytest.approx(math.pi, rel=1e-4)
    hexagon = tuple((math.cos(k * math.pi / 3), math.sin(k * math.pi / 3)) for k in range(6))
    assert turns(hexagon) == pytest.approx([math.pi / 3] * 6)
    assert turns(hexagon[::-1]) == pytest.approx([math.pi / 3] * 6)


def test_growing_twice_is_growing_once() -> None:
    outline = outline_of(Tin(shape="square", sizes_mm=(200.0,)))
    twice, once = outline.grown(2.0).grown(3.0), outline.grown(5.0)
    assert (twice.area_mm2, twice.edge_mm) == pytest.approx((once.area_mm2, once.edge_mm))


def test_a_tube_closes_up_and_a_cake_is_used_up() -> None:
    ring = outline_of(Tin(shape="ring", sizes_mm=(200.0, 20.0)))
    assert ring.room_mm == pytest.approx(10.0, rel=1e-3)
    with pytest.raises(ValueError, match="closes the tube"):
        ring.grown(10.1)
    with pytest.raises(ValueError, match="nothing is left"):
        CakeOutline(area_mm2=10_000.0, edge_mm=400.0, corners=4.0).grown(-60.0)


@every("name", ["round 20 cm", "square 20 cm", "hexagon 23 cm", "petal 25 cm", "dome 20 cm"])
@every("by_mm", [0.0, 11.0, -20.0])
def test_the_ring_round_a_cake_has_the_length_of_its_outline(name: str, by_mm: float) -> None:
    """The same edge by points as by the formula; a circle of 360 sides is 13 in a million shorter."""
    _, tin = read_tin(name)
    ring = Polygon(ring_round(tin, by_mm))
    outline = outline_of(tin).grown(by_mm)
    assert ring.length == pytest.approx(outline.edge_mm, rel=3e-4)
    assert ring.area == pytest.approx(outline.area_mm2, rel=3e-4)


def test_nothing_is_left_inside() -> None:
    with pytest.raises(ValueError, match="nothing is left 120 mm inside the edge"):
        ring_round(read_tin("round 20 cm")[1], -120.0)
