"""What an order that is asked for would push."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.orders.conftest import CLASS, CUPS

from tinbook.pages.base.page import Desk
from tinbook.pages.orders.pushes import pushed
from tinbook.pages.orders.week import KitchenWeek, kitchen_week
from tinbook.pages.spelling.orders import day


def test_an_agreed_order_pushes_nothing(kitchen_desk: Desk, planned_week: KitchenWeek) -> None:
    line = next(each for each in planned_week.orders if each.slug == CLASS)
    assert pushed(line, planned_week, kitchen_desk) == ()


def test_what_it_names_is_what_differs(kitchen_desk: Desk) -> None:
    """Cups for the time of the class: what moves is named with both days, and each of them is in the plans."""
    orders = dict(kitchen_desk.book.others["order"])
    orders[CUPS] = orders[CUPS].model_copy(update={"hand_over": orders[CLASS].hand_over})
    desk = replace(kitchen_desk, book=replace(kitchen_desk.book, others={**kitchen_desk.book.others, "order": orders}))
    week = kitchen_week(desk, kitchen_desk.now or week_error())
    line = next(each for each in week.orders if each.slug == CUPS)
    without = {slug: order for slug, order in orders.items() if slug != CUPS}
    alone = replace(desk, book=replace(desk.book, others={**desk.book.others, "order": without}))
    before = {task.key: task for each in kitchen_week(alone, week.now).days for task in each.lines}
    after = {task.key: task for each in week.days for task in each.lines}
    moved = [task for key, task in after.items() if key in before and before[key].day != task.day]
    told = pushed(line, week, desk)
    assert any("cannot be ready by" in said for said in told)
    assert sum("instead of" in said for said in told) == len(moved)
    for task in moved:
        assert f"{task.words}, {task.handles}: {day(task.day)} instead of {day(before[task.key].day)}" in told


def week_error() -> None:
    raise AssertionError("the desk has no moment to plan from")
