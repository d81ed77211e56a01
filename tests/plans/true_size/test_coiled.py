"""A rope coiled beside what it goes round: lengths by hand."""

from __future__ import annotations

from math import pi, sqrt

import pytest
from shapely import Polygon

from tinbook.loading import Loaded
from tinbook.plans.techniques.parts import PartAt, decorations
from tinbook.plans.true_size.coiled import coil_across_mm, coil_from_mm, low_ring, rope_mm, rope_rings


def parts(demo: Loaded) -> dict[str, PartAt]:
    every = decorations(demo.book.techniques["coil-of-rope"], demo.book, demo.facts)
    return {part.name: part for part in next(each for each in every if each.as_written).parts}


def test_two_strands_of_5_mm_coil_as_wide_as_what_is_left_of_them_covers(demo: Loaded) -> None:
    """560 mm less two turns round 28 mm and half the 10 mm of the rope on each side: 560 - 2 π 38 = 321 mm, 10 mm wide."""
    found = parts(demo)
    assert rope_mm(found["strand"]) == pytest.approx(10.0)
    across = coil_across_mm(found["strand"], found["bollard"])
    assert across == pytest.approx(sqrt((560 - 2 * pi * 38) * 10 * 4 / pi)) == pytest.approx(63.9, abs=0.1)
    assert coil_from_mm(found["strand"], found["bollard"]) == pytest.approx(14 + 10 + across / 2)


def test_turns_lie_one_on_the_other_and_the_coil_flat_beside_them(demo: Loaded) -> None:
    found = parts(demo)
    *turns, coil = (Polygon(ring).bounds for ring in rope_rings(found["strand"], found["bollard"]))
    assert turns == [pytest.approx((-24.0, 0.0, 24.0, 10.0)), pytest.approx((-24.0, 10.0, 24.0, 20.0))]
    assert coil[1::2] == pytest.approx((0.0, 10.0)) and coil[0] == pytest.approx(24.0)


def test_a_low_outline_is_as_wide_and_as_thick_as_said() -> None:
    assert Polygon(low_ring(40.0, 6.0)).bounds == pytest.approx((-20.0, -3.0, 20.0, 3.0))
    assert Polygon(low_ring(8.0, 6.0)).bounds == pytest.approx((-4.0, -3.0, 4.0, 3.0))
