"""The kitchen's week for its pages: orders still to go out, what to do for them and when, all spelled.

It is worked out once for a book and a moment; pages hold the lines they show, so that a page changes when they do.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from itertools import groupby

from tinbook.models import Book
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk
from tinbook.pages.orders.plan_text import late_lines, note_lines, task_words, why_not
from tinbook.pages.spelling.orders import clock, day, lasts, moment
from tinbook.plans.base.asking import AskError
from tinbook.plans.orders.asked import OrderWorked, worked_order
from tinbook.plans.orders.planned import NoPlan, PlannedTask, WeekPlan, plan_of
from tinbook.plans.orders.solving import NoSolver
from tinbook.plans.orders.tight import tightest
from tinbook.plans.orders.week_work import WeekWork, week_work

WANTS = "Planning needs a library that reading recipes does not: run “pip install ortools holidays icalendar”."
COUNT = re.compile(r" \((\d+) of (\d+)\)$")
LOAD = re.compile(r"\bload (\d)")
HATCHES = 6
"""How many orders are told apart by their hatching; the next begins again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskLine:
    """A task as a line: when, how long, what, for whom. `hatch`: its first order's. `minutes` from midnight to the end
    of hands and of the oven; `waits_min`: how long it is then left. `of` and `said` go back with the tick; `page` is
    where all its steps are."""

    key: str
    day: date
    clock: str
    takes: str
    words: str
    handles: str
    slugs: tuple[str, ...]
    hatch: int
    start_min: int
    hands_min: int
    oven_min: int
    waits_min: float
    waits: str
    steps: tuple[str, ...]
    of: str
    page: str
    said: str
    own: str
    goes_out: bool

    @property
    def hands_end_min(self) -> int:
        """When hands are done with it."""
        return self.start_min + self.hands_min

    @property
    def end_min(self) -> int:
        """When hands and oven are."""
        return self.hands_end_min + self.oven_min


@dataclass(frozen=True, slots=True)
class DayLines:
    """A day with work: its address's part, `Sat 5 Dec`, hands in all, its lines in order of time."""

    day: date
    name: str
    hands: str
    lines: tuple[TaskLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """An order in a list: its page, what it is called, what is made, when it goes out, how far it has got."""

    slug: str
    handle: str
    what: str
    when: str
    state: str
    hatch: int
    hand_over: datetime

    @property
    def address(self) -> str:
        """Its page."""
        return order_address(self.slug)

    @property
    def fill(self) -> str:
        """What its bars are filled with."""
        return fill_of(self.hatch)


def fill_of(hatch: int) -> str:
    """A hatching of parts/order_hatches.html; the last has none."""
    return f"url(#tb-h{hatch})" if hatch < HATCHES - 1 else "var(--paper)"


@dataclass(frozen=True, kw_only=True)
class KitchenWeek:
    """Everything planned. `wrong`: why there is no plan, or what in it cannot be; `notes`: what was assumed."""

    now: datetime
    orders: tuple[OrderLine, ...]
    overdue: tuple[OrderLine, ...]
    past: tuple[OrderLine, ...]
    days: tuple[DayLines, ...]
    wrong: tuple[str, ...]
    notes: tuple[str, ...]

    def of_order(self, slug: str) -> tuple[DayLines, ...]:
        """The days of one order, with its lines alone."""
        return tuple(
            day_lines(each.day, mine)
            for each in self.days
            if (mine := tuple(_alone(line) for line in each.lines if slug in line.slugs))
        )


def _alone(line: TaskLine) -> TaskLine:
    """On the page of an order only those are named that share a task with it."""
    return replace(line, handles="") if len(line.slugs) == 1 else line


def day_lines(when: date, lines: tuple[TaskLine, ...]) -> DayLines:
    """A day from its lines."""
    return DayLines(when, day(when), lasts(sum(line.hands_min for line in lines)), lines)


def order_address(slug: str) -> str:
    """Where an order's page is."""
    return f"orders/{slug}"


def price_of_order(slug: str) -> str:
    """Where an order's price is."""
    return f"orders/price-of/{slug}"


def day_address(when: date) -> str:
    """Where a day's sheet is."""
    return f"orders/day/{when.isoformat()}"


def kitchen_week(desk: Desk, now: datetime) -> KitchenWeek:
    """The orders of a book with some, planned from a moment on."""
    ahead, overdue, past = _in_time(desk, now)
    hatches = {slug: nth % HATCHES for nth, slug in enumerate(ahead)}

    def told(these: Iterable[tuple[str, Order]]) -> tuple[OrderLine, ...]:
        return tuple(_order_line(slug, order, hatches.get(slug, 0), desk) for slug, order in these)

    days, wrong, notes = _planned(ahead, hatches, desk, now)
    return KitchenWeek(
        now=now,
        orders=told(ahead.items()),
        overdue=told(overdue.items()),
        past=told(past.items()),
        days=days,
        wrong=wrong,
        notes=notes,
    )


def order_lines(desk: Desk, now: datetime) -> tuple[OrderLine, ...]:
    """A book's orders as lines, without a plan: those to come, those overdue, those that are done."""
    return tuple(
        _order_line(slug, order, nth % HATCHES, desk)
        for these in _in_time(desk, now)
        for nth, (slug, order) in enumerate(these.items())
    )


def _in_time(desk: Desk, now: datetime) -> tuple[Mapping[str, Order], Mapping[str, Order], Mapping[str, Order]]:
    """The orders ahead, overdue and done, each in order of time, the last backwards."""
    orders: Mapping[str, Order] = desk.book.others["order"]
    by_time = sorted(orders.items(), key=lambda each: (each[1].hand_over, each[0]))
    ahead = {slug: order for slug, order in by_time if order.open and order.hand_over >= now}
    overdue = {slug: order for slug, order in by_time if order.open and slug not in ahead}
    return ahead, overdue, {slug: order for slug, order in reversed(by_time) if not order.open}


def _order_line(slug: str, order: Order, hatch: int, desk: Desk) -> OrderLine:
    return OrderLine(
        slug=slug, handle=order.handle, what=what_is_made(order, desk), when=moment(order.hand_over),
        state=order.state, hatch=hatch, hand_over=order.hand_over,
    )  # fmt: skip


def what_is_made(order: Order, desk: Desk) -> str:
    """`Headland cake, for 40 guests`, `48 × Little-boat cupcakes`, `Class for 4: Lay a rope round the foot`."""
    told = []
    if order.cake and order.cake in desk.book.cakes:
        name = (order.change.name if order.change else None) or desk.book.cakes[order.cake].name
        size = f", for {order.guests} guests" if order.guests else f", {order.size}" if order.size else ""
        told.append(f"{name}{size}")
    for each in order.mixtures:
        name = desk.book.mixtures[each.mixture].name if each.mixture in desk.book.mixtures else each.mixture
        told.append(f"{each.count} × {name}" if each.count > 1 else name)
    if order.class_:
        known = desk.book.techniques
        names = [known[slug].name for slug in order.class_.techniques if slug in known]
        told.append(f"Class for {order.class_.people}: {', '.join(names)}")
    return "; ".join(told)


Planned = tuple[tuple[DayLines, ...], tuple[str, ...], tuple[str, ...]]


def _planned(ahead: Mapping[str, Order], hatches: Mapping[str, int], desk: Desk, now: datetime) -> Planned:
    """The days, what is wrong with them, and what is to be known about them."""
    if not ahead:
        return (), (), ()
    kitchen: WorkingKitchen = desk.book.others["kitchen"]
    worked, wrong = _worked(ahead, desk)
    work = week_work(worked, desk.book, desk.facts, kitchen)
    try:
        plan = plan_of(work, kitchen, now)
    except (NoSolver, ImportError):
        return (), (*wrong, WANTS), ()
    except NotImplementedError as error:
        return (), (*wrong, f"The public holidays of that place are not known: {error}"), ()
    except NoPlan:
        return (), (*wrong, why_not(tightest(work))), ()
    late = tuple(line for line in late_lines(plan, work.orders) if line)
    handles = {order.slug: order.handle for order in work.orders}
    return tuple(_days(plan, work, hatches, desk.book)), (*wrong, *late), tuple(note_lines(plan, handles))


def _worked(ahead: Mapping[str, Order], desk: Desk) -> tuple[list[OrderWorked], tuple[str, ...]]:
    worked, wrong = list[OrderWorked](), list[str]()
    for slug, order in ahead.items():
        try:
            worked.append(worked_order(slug, order, desk.book, desk.facts, desk.bakes))
        except AskError as error:
            wrong.append(f"{order.handle} is not in the plan: {error.message}. {error.hint}.")
    return worked, tuple(wrong)


def _days(plan: WeekPlan, work: WeekWork, hatches: Mapping[str, int], book: Book) -> Iterator[DayLines]:
    def page_of(slug: str) -> str:
        return f"mixtures/{slug}" if slug in book.mixtures else f"techniques/{slug}" if slug in book.techniques else ""

    handles = {order.slug: order.handle for order in work.orders}
    waits: dict[str, float] = {}
    for task in work.tasks:
        for after in task.after:
            waits[after.key] = max(after.wait_min, waits.get(after.key, 0.0))
    busy = [each for each in plan.placed if each.task.hands_min]
    for when, of_day in groupby(busy, key=lambda each: each.start.date()):
        yield day_lines(
            when, tuple(_line(each, waits.get(each.task.key, 0.0), handles, hatches, page_of) for each in of_day)
        )


def _line(
    placed: PlannedTask,
    waits_min: float,
    handles: Mapping[str, str],
    hatches: Mapping[str, int],
    page_of: Callable[[str], str],
) -> TaskLine:
    task, start = placed.task, placed.start
    oven = f" + oven {lasts(task.oven_min)}" if task.oven_min else ""
    ready = placed.end + timedelta(minutes=waits_min)
    until = clock(ready) if ready.date() == start.date() else moment(ready)
    return TaskLine(
        key=task.key,
        day=start.date(),
        clock=clock(start),
        takes=f"{lasts(task.hands_min)}{oven}",
        words=LOAD.sub("load\u00a0\\1", COUNT.sub("\u00a0(\\1\u00a0of\u00a0\\2)", task_words(placed))),
        handles=", ".join(handles[slug] for slug in task.orders),
        slugs=task.orders,
        hatch=hatches[task.orders[0]],
        start_min=start.hour * 60 + start.minute,
        hands_min=task.hands_min,
        oven_min=task.oven_min,
        waits_min=waits_min,
        waits=f"leave {lasts(waits_min)}, until {until}" if waits_min else "",
        steps=task.steps,
        of=task.of,
        page=page_of(task.of),
        said=lasts(task.said_min) if task.said_min else "",
        own=f"the steps say {lasts(task.said_min)}; this is our own pace, from {task.sittings} logged"
        if task.sittings and task.said_min != task.hands_min
        else "",
        goes_out=task.at is not None,
    )
