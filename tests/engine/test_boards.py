"""Boards, ribbons and boxes."""

from __future__ import annotations

from tinbook.engine.boards import board_mm, box_mm, ribbon_mm

SOLD = (150.0, 180.0, 200.0, 230.0, 250.0, 280.0, 300.0)


def test_the_least_board_that_is_wide_enough() -> None:
    assert board_mm(150.0, 50.0, SOLD) == 200.0
    assert board_mm(150.0, 51.0, SOLD) == 230.0
    assert board_mm(150.0, 100.0, SOLD) == 250.0
    assert board_mm(280.0, 50.0, SOLD) is None


def test_ribbon_lies_over_itself_and_the_box_clears_the_board() -> None:
    assert ribbon_mm(628.3, 20.0) == 648.3
    assert box_mm(250.0, 5.0) == 260.0
