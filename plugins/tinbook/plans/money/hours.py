"""How long an order keeps hands and oven busy: as the plan has it, and as it was once it is done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.models.hours import WorkDone
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.orders.diary import Diary
from tinbook.plans.orders.tasks import Task
from tinbook.plans.orders.week_work import week_work

NOTHING_DONE = Diary({})


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderHours:
    """Minutes of hands and oven, as planned and at the least the steps say. `own`: of how many tasks the minutes are
    the kitchen's own; `logged` of the `tasks` are done, with the minutes they took."""

    hands_min: float
    least_min: float
    oven_min: float
    oven_least_min: float
    own: int
    logged: int
    tasks: int


def hours_of(worked: OrderWorked, till: Till) -> OrderHours:
    """The hours of an order by itself, with nothing shared and nothing done: what the timetable would have, at the
    kitchen's own pace where that is known."""
    return _summed(_tasks(worked, till))


def hours_taken(worked: OrderWorked, till: Till) -> OrderHours:
    """The hours of an order as the log has them; what nobody has timed counts as planned. Minutes logged for several
    orders at once are shared evenly."""
    entries: Sequence[WorkDone] = till.book.others["hours"]
    timed: dict[str, float] = {}
    for entry in entries:
        orders, _, name = entry.task.partition("/")
        slugs = orders.split("+")
        if worked.slug in slugs and entry.took is not None:
            timed[name] = timed.get(name, 0.0) + entry.took / len(slugs)
    planned = _tasks(worked, till)
    known = {task.key.partition("/")[2] for task in planned}
    left = _summed([task for task in planned if task.key.partition("/")[2] not in timed])
    took = sum(timed.values())
    return OrderHours(
        hands_min=left.hands_min + took,
        least_min=left.least_min + took,
        oven_min=sum(task.oven_min for task in planned),
        oven_least_min=sum(_oven_least(task) for task in planned),
        own=left.own,
        logged=len(timed),
        tasks=len(known | timed.keys()),
    )


def _tasks(worked: OrderWorked, till: Till) -> Sequence[Task]:
    return week_work([worked], till.book, till.facts, till.kitchen, NOTHING_DONE).tasks


def _oven_least(task: Task) -> int:
    return task.oven_min if task.oven_least_min is None else task.oven_least_min


def _summed(tasks: Sequence[Task]) -> OrderHours:
    return OrderHours(
        hands_min=sum(task.hands_min for task in tasks),
        least_min=sum(task.hands_min if task.least_min is None else task.least_min for task in tasks),
        oven_min=sum(task.oven_min for task in tasks),
        oven_least_min=sum(map(_oven_least, tasks)),
        own=sum(1 for task in tasks if task.sittings),
        logged=0,
        tasks=len(tasks),
    )
