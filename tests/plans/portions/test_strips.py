"""Straight strips: equally wide, uneven, upright."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tinbook.plans.portions.cut import Job, pieces_of
from tinbook.plans.portions.strips import in_strips, uneven
from tinbook.tins import Tin


def widths(edges: tuple[float, ...]) -> list[float]:
    return [other - one for one, other in pairwise(edges)]


def test_equal_strips_while_their_pieces_lie_near_enough() -> None:
    cut = in_strips(Job(Tin(shape="round", sizes_mm=(250.0,)), 25.0, 50.0))
    assert cut.way == "strips"
    assert widths(cut.edges_mm) == pytest.approx([250.0 / 6] * 6)
    assert cut.counts == (4, 7, 8, 8, 7, 4)


def test_uneven_strips_make_all_pieces_alike() -> None:
    cut = in_strips(Job(Tin(shape="round", sizes_mm=(12 * 25.4,)), 25.4, 50.8))
    assert (cut.way, cut.counts) == ("uneven", (5, 8, 10, 9, 10, 8, 5))
    areas = [piece.area_mm2 for piece in pieces_of(cut) or ()]
    assert max(areas) / min(areas) == pytest.approx(1.0, abs=2e-3)
    assert sum(widths(cut.edges_mm)) == pytest.approx(12 * 25.4)


def test_a_long_cake_is_cut_along_its_length() -> None:
    cut = in_strips(Job(Tin(shape="oval", sizes_mm=(200.0, 280.0)), 25.0, 50.0))
    assert cut.upright
    assert cut.edges_mm[-1] == pytest.approx(200.0)
    assert min(widths(cut.edges_mm)) >= 0.75 * cut.piece_mm[1]


def test_a_heart_is_cut_so_that_no_piece_falls_apart() -> None:
    for width in (150.0, 203.2, 230.0, 300.0):
        cut = in_strips(Job(Tin(shape="heart", sizes_mm=(width,)), 25.0, 50.0))
        assert cut.way in ("strips", "uneven")
        assert len(pieces_of(cut) or ()) == cut.count


def test_uneven_strips_as_asked() -> None:
    job = Job(Tin(shape="square", sizes_mm=(130.0,)), 25.0, 50.0)
    cut = uneven(job, (4, 3, 4), False)
    assert widths(cut.edges_mm) == pytest.approx([130.0 * count / 11 for count in (4, 3, 4)], rel=1e-3)
