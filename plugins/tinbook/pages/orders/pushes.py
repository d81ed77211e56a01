"""What an order that is only asked for would push, if it were agreed: the plan with it beside the plan without."""

from __future__ import annotations

from dataclasses import replace

from tinbook.models import changed_book
from tinbook.models.orders import STATES
from tinbook.pages.base.page import Desk
from tinbook.pages.orders.week import KitchenWeek, OrderLine, TaskLine, kitchen_week
from tinbook.pages.spelling.orders import day


def pushed(line: OrderLine, week: KitchenWeek, desk: Desk) -> tuple[str, ...]:
    """What would move to another day, and which orders could not be ready; nothing for an order that is agreed."""
    if line.state != STATES[0] or not week.days:
        return ()
    orders = {slug: order for slug, order in desk.book.others["order"].items() if slug != line.slug}
    book = changed_book(desk.book, others={**desk.book.others, "order": orders})
    without = kitchen_week(replace(desk, book=book), week.now)
    before = _by_name(without)
    told = [said.rstrip(".") for said in week.wrong if said not in without.wrong]
    for name, task in _by_name(week).items():
        was = before.get(name)
        if was and was.day != task.day:
            told.append(f"{task.words}, {task.handles}: {day(task.day)} instead of {day(was.day)}")
    return tuple(told)


def _by_name(week: KitchenWeek) -> dict[tuple[str, str], TaskLine]:
    """Each order's tasks, whoever else shares them."""
    return {
        (slug, task.key.partition("/")[2]): task for each in week.days for task in each.lines for slug in task.slugs
    }
