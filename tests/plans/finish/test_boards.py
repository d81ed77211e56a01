"""Boards, ribbon and box for one cake and for all."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Finish
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import steps_of
from tinbook.plans.finish.boards import SOLD_MM, Board, board_for, board_of, board_row, board_table, drum_under
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.tins import SHAPES, Tin, read_tin


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


@pytest.mark.parametrize(
    ("choice", "drum", "box_high"), [("least", 200.0, 190.0), ("usual", 230.0, 190.0), ("wide", 250.0, 190.0)]
)
def test_each_drum_has_its_own_paste_ribbon_and_box(
    choice: str, drum: float, box_high: float, kitchen: Book, facts: Facts
) -> None:
    """A 15 cm cake 120 mm high by hand: 5 + 5 mm of coats and paste, a drum of 12 with 3 of paste, 45 of air: 190 mm. Common practice."""
    settled = finishing(Finish.model_validate({"box above": "45 mm", "box beside": "8 mm", "paste": "5 mm"}), facts)
    cake = Cake(Tin(shape="round", sizes_mm=(150.0,)), 120.0, 4)
    row = board_row(cake, True, settled, facts, paste_g_per_ml=1.38, steps=steps_of(kitchen))
    told = row.drums[choice]
    assert told.board == Board((drum, drum), True)
    coated = 150 + 2 * (settled.coats_mm + settled["paste"])
    high = 120 + settled.coats_mm + settled["paste"] + 12 + 3 + 45
    assert high == pytest.approx(box_high)
    assert told.box_mm == pytest.approx((drum + 16, drum + 16, box_high))
    assert told.whole_g == pytest.approx(math.pi / 4 * drum**2 * 3 / 1000 * 1.38)
    assert told.ring_g == pytest.approx(math.pi / 4 * (drum**2 - coated**2) * 3 / 1000 * 1.38, rel=1e-3)
    assert told.ribbon_mm == pytest.approx(math.pi * drum + settled["ribbon_over"])
    assert told.box_shown_mm and told.box_mm
    assert all(0 <= shown - side < 5 for shown, side in zip(told.box_shown_mm, told.box_mm, strict=True))


def test_thick_coats_stand_on_the_next_drum_that_holds_them() -> None:
    """45 mm of coats and paste all round make 15 cm to 24: the 23 cm drum is too small, the 25 cm one is sold."""
    assert board_for(Cake(Tin(shape="round", sizes_mm=(150.0,)), 100.0, 4), 45.0, 75.0) == Board((250.0, 250.0), True)


@pytest.mark.parametrize(("choice", "wider_in"), [("least", 2), ("usual", 3), ("wide", 4)])
def test_drums_go_by_the_inch_where_tins_do(facts: Facts, choice: str, wider_in: int) -> None:
    """Boards have both names too: a 6 in cake stands on a drum of whole inches, 2, 3 or 4 in wider. Common practice."""
    settled = finishing(Finish(), facts)
    for inch in range(4, 18 - wider_in + 1):
        cake = Cake(read_tin(f"round {inch} in", sold="inches")[1], 100.0, 4)
        board = board_of(cake, settled, choice, facts)
        assert board.size_mm == pytest.approx([25.4 * (inch + wider_in)] * 2), (inch, choice)


def test_every_tin_of_the_trade_has_a_drum_or_none_is_sold(facts: Facts) -> None:
    """None is sold just where the cake and what the drum is wider come to more than 46 cm, 18 in."""
    settled, missing = finishing(Finish(), facts), 0
    for shape in (shape for shape in SHAPES.values() if not shape.in_trays):
        for sizes, depth in shape.standard:
            cake = Cake(Tin(shape=shape.key, sizes_mm=sizes, depth_mm=depth), 100.0, 4)
            for choice, wider_mm in (("least", 50.0), ("usual", 75.0), ("wide", 100.0)):
                board = board_of(cake, settled, choice, facts)
                sold = max(cake.tin.bounds_mm) + wider_mm <= max(SOLD_MM)
                assert (board.size_mm is not None) == sold, (cake.tin.name, choice)
                missing += not sold
                if board.size_mm:
                    assert all(
                        drum >= side + wider_mm for drum, side in zip(board.size_mm, cake.tin.bounds_mm, strict=True)
                    )
    assert missing > 5


def test_a_box_holds_whatever_stands_on_the_board(kitchen: Book, facts: Facts) -> None:
    """Which is more than the cake, with 3 mm of paste under it, where a figure is higher, and the same where nothing is
    said."""
    settled = finishing(kitchen.finish, facts)
    cake = Cake(read_tin("round 20 cm")[1], 100.0, 4)
    board, outer_mm = board_of(cake, settled, "usual", facts), settled.coats_mm + settled["paste"]
    plain, same, high = (
        drum_under(board, cake, settled, 1.38, facts, steps_of(kitchen), stands_mm)
        for stands_mm in (None, 100.0 + outer_mm + 3.0, 300.0)
    )
    assert plain == same and plain.box_mm and high.box_mm
    assert high.box_mm[2] - plain.box_mm[2] == pytest.approx(200.0 - outer_mm - 3.0)
    assert high.box_mm[:2] == plain.box_mm[:2]
