"""Areas below a line against the Clipper library and closed forms; strips of given shares."""

from __future__ import annotations

import math

import pyclipper
import pytest
from tests.every import every

from tinbook.tins import Tin, cutting, standard_tins

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


@every("tin", CAKES, ids=lambda tin: tin.name)
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


@pytest.mark.parametrize("key", ["round", "heart", "petal", "hexagon"])
def test_strips_of_given_shares(key: str) -> None:
    rings = Tin(shape=key, sizes_mm=(230.0,)).outline_mm()
    edges = cutting.strip_edges(rings, [0.2, 0.5, 0.3])
    top = cutting.spans(rings)[3]
    below = cutting.area_below(rings, [top - edge for edge in edges])
    assert (below[:-1] - below[1:]) / below[0] == pytest.approx([0.2, 0.5, 0.3], abs=1e-4)
