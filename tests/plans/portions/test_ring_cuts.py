"""Rings: equal pieces, none cut through a hollow of the edge."""

from __future__ import annotations

from math import hypot, pi

import pytest
from tests.every import every

from tinbook.plans.portions.cut import Job, outline, pieces_of
from tinbook.plans.portions.ring_cuts import in_rings
from tinbook.tins import Tin, read_tin


@every("name", ["round 20 cm", "round 40 cm", "ring 25 cm", "fluted ring 25 cm", "petal 38 cm"])
@every("sides", [(25.0, 25.0), (25.0, 50.0), (38.0, 50.0)])
def test_every_piece_holds_the_same(name: str, sides: tuple[float, float]) -> None:
    cut = in_rings(Job(read_tin(name)[1], *sides))
    areas = [piece.area_mm2 for piece in pieces_of(cut) or ()]
    assert max(areas) / min(areas) == pytest.approx(1.0, abs=5e-3)


def test_radii_by_hand() -> None:
    """24 pieces of a 20 cm round: 18 in the outer ring, so that the inner circle holds the rest of its area."""
    cut = in_rings(Job(Tin(shape="round", sizes_mm=(200.0,)), 25.0, 50.0))
    inner = cut.counts[1]
    assert cut.edges_mm[1] == pytest.approx((inner / 24.0) ** 0.5 * 100.0, rel=1e-4)
    assert pi * cut.edges_mm[1] ** 2 / inner == pytest.approx(pi * 100.0**2 / 24.0, rel=1e-3)


def test_rings_stay_inside_the_petals() -> None:
    tin = Tin(shape="petal", sizes_mm=(380.0,))
    cut = in_rings(Job(tin, 25.0, 25.0))
    assert cut.edges_mm[1] < min(hypot(x, y) for x, y in outline(tin)[0])


def test_half_a_ball_is_shared_out_by_volume() -> None:
    """Two rings of a 20 cm half ball: the volume within the inner radius, 1 − (1 − r²/R²)^1.5, goes by the pieces."""
    cut = in_rings(Job(read_tin("dome 20 cm")[1], 25.0, 50.0, 100.0))
    share = 1.0 - (1.0 - (cut.edges_mm[1] / 100.0) ** 2) ** 1.5
    assert share == pytest.approx(cut.counts[1] / sum(cut.counts), rel=1e-3)
