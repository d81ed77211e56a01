"""Tins drawn from their own outlines: each drawing, read as a path again, has the tin's area and scale."""

from __future__ import annotations

import re

import pytest
from shapely import Polygon
from tests.every import every

from tinbook.pages.base.icons import BOXES, EM, ROUNDS, drawn, icon, paths
from tinbook.tins import SHAPES, Tin, read_tin, standard_tins
from tinbook.tins.path import read_path

TINS = [*standard_tins(), read_tin("outline M0 0H80V160H0ZM20 20H60V60H20Z")[1]]


@every("tin", TINS, ids=lambda tin: tin.name[:30])
def test_a_drawing_is_the_tins_outline(tin: Tin) -> None:
    made = drawn(tin)
    rings = read_path(made.solid, 0, len(made.solid)) if tin.shape not in ("ball", "cups") else None
    if rings:
        outer, *holes = rings
        assert Polygon(outer, holes).area == pytest.approx(tin.area_mm2, rel=0.01)
        assert (made.width, made.height) == tin.bounds_mm
        x, y = zip(*outer, strict=True)
        # Nothing stands out of the frame; SVG counts downwards.
        assert min(x) >= -1 and max(x) <= made.width + 1 and max(y) <= 1 and min(y) >= -made.height - 1
    sloping = tin.area_mm2 != tin.kind.area_mm2(tin.sizes_mm, 0.0)
    assert bool(made.dashed) == sloping


def test_a_ball_is_drawn_as_its_two_halves() -> None:
    made = drawn(read_tin("ball 15 cm")[1])
    assert (made.width, made.height, made.solid.count("z")) == (300.0, 150.0, 2)


@every("tin", TINS, ids=lambda tin: tin.name[:30])
def test_all_stand_to_one_scale(tin: Tin) -> None:
    width, height = map(float, re.findall(r"(?:width|height):([\d.]+)em", str(icon(tin))))
    made = drawn(tin)
    # What is no square may lie on its side.
    sides = sorted((made.width * EM, made.height * EM))
    assert sorted((width, height)) == pytest.approx(sides, abs=0.006)
    assert ("tb-unowned" in icon(tin, False)) and "tb-unowned" not in icon(tin)


def test_the_browser_is_handed_what_width_and_length_do_not_say() -> None:
    plain = {tin.shape for tin in TINS if paths(tin) is None}
    assert plain == {*BOXES, *ROUNDS} == {"square", "rectangle", "sheet", "loaf", "round", "ring", "cups"}
    assert {tin.shape for tin in TINS} == set(SHAPES)
