"""A class's pack: the clock of each lesson, pieces, what to lay out."""

from __future__ import annotations

from tests.pages.orders.conftest import CLASS, CUPS

from tinbook.pages.base.page import Desk
from tinbook.pages.orders.pack import class_pack


def test_lessons_by_the_clock_and_everything_to_lay_out(kitchen_desk: Desk) -> None:
    orders = kitchen_desk.book.others["order"]
    pack = class_pack(orders[CLASS], kitchen_desk)
    assert (
        pack is not None and pack.begins == "14:00" and pack.people == "4\N{NO-BREAK SPACE}people" and pack.over == ""
    )
    rope, board = pack.taught
    assert rope.lessons[0].clock == "14:10" and rope.page.address == "techniques/rope-edge"
    clocks = [lesson.clock for each in pack.taught for lesson in each.lessons]
    assert clocks == sorted(clocks) and pack.ends >= clocks[-1]
    assert all("<" not in lesson.words for each in pack.taught for lesson in each.lessons)
    assert "piece 1" in board.lessons[7].waits and len(board.pieces) == 1
    assert ("4", "", "cake drum, round 30 cm, 12 mm thick") in board.materials
    assert "4 × icing smoother" in board.tools, "one for each of them"
    assert board.not_food and board.sheet == "tinbook sheet cover-a-board --people 4"
    assert class_pack(orders[CUPS], kitchen_desk) is None


def test_a_class_that_does_not_fit_says_so(kitchen_desk: Desk) -> None:
    order = kitchen_desk.book.others["order"][CLASS]
    short = order.model_copy(update={"class_": order.class_.model_copy(update={"lasts": 45.0})})
    pack = class_pack(short, kitchen_desk)
    assert pack is not None and "longer than the 45\N{NO-BREAK SPACE}min that are booked" in pack.over
