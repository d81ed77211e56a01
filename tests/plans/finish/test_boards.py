"""Boards, ribbon and box for one cake and for all."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Finish
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.finish.boards import Board, board_for, board_row, board_table
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.tins import Tin


def test_the_wide_board_under_a_cake_with_a_figure(
    kitchen: Book, facts: Facts, practice: Callable[[str], tuple[float, ...]]
) -> None:
    """Common practice, no source: tests/data/common_practice.csv."""
    across, drum = practice("mm of a cake with a figure on its front and of the drum under it")
    settled = finishing(Finish(), facts)
    row = board_row(
        Cake(Tin(shape="round", sizes_mm=(across,)), 100.0, 4),
        True,
        settled,
        facts,
        paste_g_per_ml=1.4,
        steps=steps_of(kitchen),
    )
    assert row.drums["wide"].board.size_mm == (drum, drum)
    assert row.drums["least"].board.size_mm == (200.0, 200.0)
    assert row.chosen == row.drums["usual"]


def test_paste_and_ribbon_by_hand(kitchen: Book, facts: Facts) -> None:
    settled = finishing(Finish.model_validate({"board": "wide"}), facts)
    row = board_row(
        Cake(Tin(shape="round", sizes_mm=(150.0,)), 100.0, 4),
        True,
        settled,
        facts,
        paste_g_per_ml=1.4,
        steps=steps_of(kitchen),
    )
    outer = 150 + 2 * (settled.coats_mm + settled["paste"])
    assert row.chosen.whole_g == pytest.approx(math.pi / 4 * 250**2 * 3 / 1000 * 1.4)
    assert row.chosen.ring_g == pytest.approx(math.pi / 4 * (250**2 - outer**2) * 3 / 1000 * 1.4, rel=1e-3)
    assert row.chosen.ribbon_mm == pytest.approx(math.pi * 250 + 20)
    assert row.cake_ribbon_mm == pytest.approx(math.pi * outer + 20, rel=1e-4)
    assert row.guide_mm == pytest.approx((outer, outer))
    assert row.chosen.box_mm is not None
    assert row.chosen.box_mm[:2] == (260.0, 260.0)


def test_long_cakes_stand_on_long_boards() -> None:
    board = board_for(Cake(Tin(shape="rectangle", sizes_mm=(330.0, 230.0)), 80.0, 2), 6.0, 50.0)
    assert not board.disc
    assert board.size_mm == (280.0, 380.0)
    assert board.edge_mm == 2 * (380 + 280)


def test_no_board_so_large_is_sold(kitchen: Book, facts: Facts) -> None:
    board = board_for(Cake(Tin(shape="round", sizes_mm=(450.0,)), 80.0, 2), 6.0, 50.0)
    assert board == Board(None, True)
    settled = finishing(Finish(), facts)
    row = board_row(
        Cake(Tin(shape="round", sizes_mm=(450.0,)), 80.0, 2),
        True,
        settled,
        facts,
        paste_g_per_ml=1.4,
        steps=steps_of(kitchen),
    )
    assert (row.chosen.whole_g, row.chosen.ribbon_mm, row.chosen.box_mm) == (None, None, None)


def test_a_larger_cake_never_has_a_smaller_board(kitchen: Book, facts: Facts) -> None:
    rows = [
        row for row in board_table(usual_cakes(kitchen, facts), kitchen, facts).rows if row.cake.tin.shape == "round"
    ]
    sizes = [row.chosen.board.size_mm[0] for row in rows if row.chosen.board.size_mm]
    assert len(sizes) > 8
    assert sizes == sorted(sizes)
    for row in rows:
        if row.drums["least"].board.size_mm and row.drums["usual"].board.size_mm and row.drums["wide"].board.size_mm:
            assert (
                row.drums["least"].board.size_mm <= row.drums["usual"].board.size_mm <= row.drums["wide"].board.size_mm
            )
