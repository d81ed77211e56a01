"""Outlines given as a path: areas by hand and by shapely, slips at their places."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon, affinity
from tests.every import every

from tinbook.tins import Tin, read_tin
from tinbook.tins.path import read_path
from tinbook.units import Misread


def polygon(path: str) -> Polygon:
    outer, *holes = read_path(path, 0, len(path))
    return Polygon(outer, holes)


@every(
    ("path", "area"),
    [
        ("M0 0H80V160H0Z", 12800.0),
        ("m10,10 h80 v160 h-80z", 12800.0),
        ("M0 0 80 0 80 160 0 160Z", 12800.0),
        ("M 0 0 L 100 0 L 50 80 Z", 4000.0),
        ("M0 0H100V100H0ZM20 20V60H60V20Z", 10000.0 - 1600.0),
        # Half a disc of 50 mm, and a disc of two arcs.
        ("M0 0A50 50 0 0 1 100 0Z", math.pi * 2500 / 2),
        ("M0 50a50 50 0 1 0 100 0a50 50 0 1 0-100 0z", math.pi * 2500),
        # A piece under a parabola is two thirds of its box: (SVG counts downwards) 90 x 30 of it here.
        ("M0 0Q45 60 90 0Z", 90 * 30 * 2 / 3),
        # The integral of y dx with x = 100 (3 t² - 2 t³), y = 180 t (1 - t): 100 x 60 x 18/30.
        ("M0 0C0 60 100 60 100 0Z", 0.6 * 100 * 60),
    ],
)
def test_areas_by_hand(path: str, area: float) -> None:
    assert polygon(path).is_valid
    assert polygon(path).area == pytest.approx(area, rel=3e-4)


@given(
    rx=st.floats(30.0, 200.0), ry=st.floats(30.0, 200.0), turn=st.integers(-180, 180), share=st.floats(0.05, 0.95),
    large=st.booleans(), sweep=st.booleans(),
)  # fmt: skip
def test_an_arc_is_a_piece_of_its_ellipse(
    rx: float, ry: float, turn: int, share: float, large: bool, sweep: bool
) -> None:
    """Every point of the arc lies on the ellipse that shapely draws round one of the two possible middles."""
    width = 2 * min(rx, ry) * share
    path = f"M0 0A{rx} {ry} {turn} {int(large)} {int(sweep)} {width} 0Z"
    (ring,) = read_path(path, 0, len(path))
    turned = [affinity.rotate(Point(x, y), turn, origin=(0, 0)) for x, y in ring]
    flat = [(point.x / rx, point.y / ry) for point in turned]
    # In the ellipse's own measure all points lie 1 from one middle.
    (x1, y1), (x2, y2), (x3, y3) = flat[0], flat[len(flat) // 2], flat[-1]
    d = 2 * (x1 * (y2 - y3) + x2 * (y3 - y1) + x3 * (y1 - y2))
    s1, s2, s3 = x1 * x1 + y1 * y1, x2 * x2 + y2 * y2, x3 * x3 + y3 * y3
    cx = (s1 * (y2 - y3) + s2 * (y3 - y1) + s3 * (y1 - y2)) / d
    cy = (s1 * (x3 - x2) + s2 * (x1 - x3) + s3 * (x2 - x1)) / d
    assert all(math.hypot(x - cx, y - cy) == pytest.approx(1.0, rel=1e-6) for x, y in flat)


@every(
    ("text", "at", "message"),
    [
        ("outline", "", "an outline needs its path"),
        ("outline M0 0H80V160H0", "M0 0H80V160H0", "the outline is open"),
        ("outline M0 0H80V160 x 5 cm", "M0 0H80V160", "the outline is open"),
        ("outline M0 0H80M10 10H20V20Z", "M10 10", "the outline is open"),
        ("outline M0 0L80 80L80 0L0 80Z x 5 cm", "L0 80", "the outline crosses or touches itself"),
        ("outline M0 0H80V80H0ZM60 20H100V40H60Z", "H100", "the outline crosses or touches itself"),
        ("outline M0 0H80V80H0ZM100 0H120V20H100Z", "M0 0H80V80H0ZM100 0H120V20H100Z",
         "the second outline is outside the first"),
        ("outline M0 0H80V160S0 0 10 10Z", "S", '"S" is not a command in an outline'),
        ("outline H80V160H0Z", "H", "an outline starts with M"),
        ("outline 0 0H80V160H0Z", "0", '"0" is where a command should be'),
        ("outline M0H80V160H0Z", "M0", '"M" is followed by 2 numbers'),
        ("outline M0 0H80VH0Z", "V", '"V" is followed by 1 number'),
        ("outline M0 0H80Z", "M0 0H80Z", "this outline encloses nothing"),
        ("outline M0 0H9000V160H0Z", "H9000", "this is bigger than any tin"),
        ("outline M0 0A1e30 1 0 0 1 80 0V160H0Z", "A1e30 1 0 0 1 80 0", "this is bigger than any tin"),
        ("outline M0 0H8V16H0Z", "M0 0H8V16H0Z", "an outline 8 mm across is too small for a tin"),
        ("outline M0 0H80V160H0Z x 2 mm", "2 mm", "2 mm is too shallow for a drawn tin"),
        ("outline M0 0H80V160H0Z x 5 cm x 6 cm", "6 cm", "too many sizes for a drawn tin"),
    ],
)  # fmt: skip
def test_a_slip_is_told_at_its_place(text: str, at: str, message: str) -> None:
    with pytest.raises(Misread) as caught:
        read_tin(text)
    wrong = caught.value
    assert (wrong.message, text[wrong.start : wrong.end]) == (message, at)
    assert wrong.hint


@given(text=st.text(alphabet="MmLlHhVvCcQqAaZz0159 .,-+eE²\n", max_size=40))
def test_any_path_is_a_tin_or_a_misread_within_it(text: str) -> None:
    try:
        _, tin = read_tin(f"outline {text}")
    except Misread as wrong:
        assert wrong.message and wrong.hint
        assert 0 <= wrong.start <= wrong.end <= len(text) + 8
    else:
        outer, *holes = tin.outline_mm()
        assert Polygon(outer, holes).is_valid
        assert tin.area_mm2 == pytest.approx(Polygon(outer, holes).area, rel=1e-9)


def test_a_tin_goes_by_its_owners_name() -> None:
    tin = Tin(
        shape="outline", sizes_mm=read_tin("outline M0 0H80V160H0Z")[1].sizes_mm, depth_mm=50.0, called="number 1"
    )
    assert (tin.name, tin.full_name, tin.size_label, tin.size_label_in) == (
        "number 1", "number 1 x 5 cm", "number 1", "",
    )  # fmt: skip
    names = {"number 1": tin}
    for text in ("number 1", "Number  1", "number 1 x 5 cm", "2 number 1"):
        assert read_tin(text, names)[1] == tin
    assert read_tin("2 number 1", names)[0] == 2
    with pytest.raises(Misread):
        read_tin("number 2", names)
    assert tin.volume_ml(50.0) == pytest.approx(8 * 16 * 5)
