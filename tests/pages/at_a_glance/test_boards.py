"""Boards and ribbon, spelled and drawn."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.models import Finish
from tinbook.pages.at_a_glance.boards import CALLED, BoardsView, board_cell, board_plan
from tinbook.pages.base.page import Desk
from tinbook.plans.finish.boards import Board

N = "\u00a0"


def cells(desk: Desk, name: str, drum: str = "usual") -> list[str]:
    (grid,) = [grid for grid in BoardsView(desk).items if grid.anchor == f"{drum}-drum"]
    (row,) = [row for row in grid.rows if row.head == name]
    assert len(row.cells) == len(grid.heads) - 1
    return [cell.text for cell in row.cells]


def test_a_wide_drum_for_a_figure_on_the_front(desk: Desk) -> None:
    """5, 7.5 and 10 cm wider than the cake, and up to the next size sold."""
    drums = [cells(desk, f"round 15{N}cm", drum)[0] for drum in ("least", "usual", "wide")]
    assert drums == [f"20{N}cm", f"23{N}cm", f"25{N}cm"]
    assert cells(desk, f"round 15{N}cm")[6] == f"15{N}cm"


def test_figures_are_those_of_the_plan(desk: Desk) -> None:
    plan = next(row for row in BoardsView(desk).table.rows if row.cake.tin.name == "square 20 cm")
    for name, drum in plan.drums.items():
        told = cells(desk, f"square 20{N}cm", name)
        assert drum.whole_shown_g and drum.ring_shown_g and drum.ribbon_shown_mm and drum.box_shown_mm
        assert told[1:4] == [f"{drum.whole_shown_g:g}", f"{drum.ring_shown_g:g}", f"{drum.ribbon_shown_mm / 10:g}"]
        assert told[4] == f"{N}×{N}".join(f"{side / 10:g}" for side in drum.box_shown_mm)
    told = cells(desk, f"square 20{N}cm")
    assert (told[5], told[7]) == (f"{plan.cake_ribbon_shown_mm / 10:g}", f"{plan.guide_shown_mm[0]:g}")


def test_no_stock_size_is_said_in_every_cell(desk: Desk) -> None:
    for drum in ("usual", "wide"):
        assert cells(desk, f"round 40{N}cm", drum)[:5] == ["not a stock size", "none", "none", "none", "none"]
    assert board_cell(Board(None, True)).note == f"stock sizes go up to 46{N}cm"


def test_every_tin_has_a_drum_or_is_told_that_none_is_sold(desk: Desk) -> None:
    """On each of the three drums: a size of the trade with its paste, ribbon and box, or that none is sold and how far they go."""
    view, none = BoardsView(desk), 0
    for grid in view.items:
        assert len(grid.rows) == len(view.table.rows) > 30
        for row in grid.rows:
            drum, *figures = row.cells[:5]
            if drum.text == "not a stock size":
                assert drum.note == f"stock sizes go up to 46{N}cm" and {cell.text for cell in figures} == {"none"}
                none += 1
            else:
                assert re.fullmatch(rf"[\d.]+({N}×{N}[\d.]+)?{N}cm", drum.text), drum.text
                assert all(re.match(r"\d", cell.text) for cell in figures)
    assert none


def test_both_names_of_a_board() -> None:
    assert board_cell(Board((250.0, 250.0), True)).note == f"10{N}in"
    long = board_cell(Board((330.0, 430.0), False), True)
    assert (long.text, long.note, long.main) == (f"33{N}×{N}43{N}cm", f"13{N}×{N}17{N}in", True)
    assert board_cell(Board((209.5, 209.5), True)).note == ""


@pytest.mark.parametrize("taken", ["least", "usual", "wide"])
def test_the_one_the_house_takes_is_first(taken: str, desk: Desk) -> None:
    finish = Finish.model_construct(**{**Finish().model_dump(), "board": taken, "board_covered": "ring"})
    view = BoardsView(Desk(replace(desk.book, finish=finish), desk.facts, {}))
    assert view.items[0].anchor == f"{taken}-drum" and len({grid.anchor for grid in view.items}) == 3
    assert [cell.main for cell in view.items[0].rows[0].cells[:3]] == [True, False, True]
    assert f"the {CALLED[taken]} drum" in view.lead and "as a ring" in view.lead


def test_the_plan_is_to_its_scale_and_told(desk: Desk, filled: Callable[[str], str]) -> None:
    view = BoardsView(desk)
    plan = view.plan
    assert plan
    one = (plan.scale_to - 10.0) / 100.0
    assert plan.drum == pytest.approx(140 * one, rel=0.01)
    assert plan.cake == pytest.approx(100 * one, rel=0.01)
    # by hand: a 20 cm cake with 6 mm of coats and 5 mm of paste all round
    assert plan.guide == pytest.approx((200 + 2 * 11) / 2 * one, rel=0.01)
    assert plan.words == "Seen from above, to scale: cake 20 cm, guide ring 222 mm, drum 28 cm, one inside the other"
    text = filled("boards")
    assert re.search(rf'<circle [^>]*r="{plan.guide}"', text) and f'aria-label="{plan.words}"' in text
    assert "<b>Not edible.</b>" in text and "before the cake is served" in text
    none = next(row for row in view.table.rows if row.chosen.board.size_mm is None)
    assert board_plan(none) is None
