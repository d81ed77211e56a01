"""A plan of the week as lines of text, and as plain data."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import timedelta
from itertools import groupby
from typing import Any

from tinbook.pages.spelling.orders import clock, day, lasts, moment
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.orders.planned import PlannedTask, WeekPlan
from tinbook.plans.orders.tasks import SLOT_MIN
from tinbook.plans.orders.tight import Tight
from tinbook.plans.orders.week_work import GoesOut

AIM_WORDS = {
    "late": "late",
    "age": "waiting between the oven or the bowl and the hand-over",
    "outside": "work outside the usual hours",
    "days": "days on which an order is taken up",
}


def task_words(placed: PlannedTask) -> str:
    """What is done: `Crumb coat and final coat (2 of 3)`."""
    task = placed.task
    counted = f" ({task.place} of {task.places})" if task.places > 1 else ""
    return f"{spell(task.said)}{counted}"


def plan_lines(plan: WeekPlan, shown: Sequence[PlannedTask], orders: Sequence[GoesOut]) -> Iterator[str]:
    """The plan, day by day. `shown`: the tasks wanted, in order of time; nobody is busy with some of them, and those
    are left out."""
    handles = {order.slug: order.handle for order in orders}
    yield from late_lines(plan, orders)
    busy = [each for each in shown if each.task.hands_min]
    wide = max((len(_takes(each)) for each in busy), default=0)
    for date_, of_day in groupby(busy, key=lambda each: each.start.date()):
        placed = list(of_day)
        hands = sum(each.task.hands_min for each in placed)
        yield f"{day(date_)}  {lasts(hands)} hands on"
        for each in placed:
            whose = ", ".join(handles[slug] for slug in each.task.orders)
            yield f"  {clock(each.start)}  {_takes(each):{wide}}  {task_words(each)}  [{whose}]"
        yield ""
    if not busy:
        yield "There is nothing to do."
    yield from note_lines(plan, handles)


def _takes(placed: PlannedTask) -> str:
    """`35 min`, `5 min + oven 1 h 40 min`."""
    task = placed.task
    oven = f" + oven {lasts(task.oven_min)}" if task.oven_min else ""
    return f"{lasts(task.hands_min)}{oven}"


def late_lines(plan: WeekPlan, orders: Sequence[GoesOut]) -> Iterator[str]:
    """What cannot be ready, when it could be, and which orders stand in each other's way."""
    for order in orders:
        if order.slug in plan.late:
            late = plan.late[order.slug]
            could = order.hand_over + timedelta(minutes=late)
            yield (
                f"{order.handle} cannot be ready by {moment(order.hand_over)}: it wants {lasts(late)} more. "
                f"It could be handed over from {moment(could)}."
            )
    clash = [order.handle for order in orders if order.slug in plan.clash]
    if len(clash) == 1:
        yield "It could not be ready even if there were nothing else to do."
    if len(clash) > 1:
        yield f"These do not all fit: {', '.join(clash)}. If any one of them gives way, the others can be ready."
    if plan.late:
        yield ""


def note_lines(plan: WeekPlan, handles: Mapping[str, str]) -> Iterator[str]:
    """What was assumed, and how good the plan is."""
    for slug, recipes in plan.unsaid.items():
        yield f"{handles[slug]}: nobody says how long {', '.join(recipes)} keeps, so two days were assumed."
    if not plan.placed:
        return
    if plan.proven:
        yield "No better plan is possible."
    else:
        for name, aim in plan.aims.items():
            if aim.reached > aim.least:
                reached, least = _aim(name, aim.reached), _aim(name, aim.least)
                yield f"Not proven best: {AIM_WORDS[name]} {reached}, and it could not be less than {least}."


def why_not(tight: Tight) -> str:
    """Why there is no way through at all, and what to do."""
    handle, task = tight.order.handle, spell(tight.task.said)
    ahead, needs = lasts(tight.ahead_min), lasts(tight.needs_min)
    if tight.never:
        return (
            f"{handle} cannot be made as it is written: {task} can be done {ahead} ahead at most, but {needs} pass "
            f'from there until it is handed over. Look at "ahead" and "waiting" in its steps.'
        )
    return (
        f"{handle} finds no room in the kitchen's hours: {task} can be done {ahead} ahead at most, and {needs} of work "
        f'and waiting come after it. Widen "at a pinch" in house/kitchen.yaml, or hand it over at another time of day.'
    )


def _aim(name: str, amount: int) -> str:
    return str(amount) if name == "days" else lasts(amount * SLOT_MIN)


def plan_data(plan: WeekPlan, shown: Sequence[PlannedTask], orders: Sequence[GoesOut]) -> dict[str, Any]:
    """The same as plain data, with units in the keys. Times by the kitchen's clock."""
    return {
        "orders": [
            {
                "order": order.slug,
                "handle": order.handle,
                "hand_over": order.hand_over.isoformat(timespec="minutes"),
                "late_min": plan.late.get(order.slug, 0.0),
                "clashes": order.slug in plan.clash,
                "keeping_unknown": list(plan.unsaid.get(order.slug, ())),
            }
            for order in orders
        ],
        "tasks": [
            {
                "key": each.task.key,
                "orders": list(each.task.orders),
                "task": task_words(each),
                "steps": list(each.task.steps),
                "start": each.start.isoformat(timespec="minutes"),
                "end": each.end.isoformat(timespec="minutes"),
                "hands_min": each.task.hands_min,
                "oven_min": each.task.oven_min,
                "oven_c": each.task.oven_c,
                "mixer": each.task.mixer,
                "away": each.task.away,
            }
            for each in shown
            if each.task.hands_min
        ],
        "aims": {
            name: {
                "reached_count" if name == "days" else "reached_min": aim.reached * (1 if name == "days" else SLOT_MIN),
                "least_count" if name == "days" else "least_min": aim.least * (1 if name == "days" else SLOT_MIN),
            }
            for name, aim in plan.aims.items()
        },
        "proven": plan.proven,
    }
