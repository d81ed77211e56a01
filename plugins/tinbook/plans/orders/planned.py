"""The weeks until the last order has gone out: what is to be done when, so that everything is ready in time."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from tinbook.models.kitchen import DaysOff, WorkingKitchen
from tinbook.plans.orders.solving import Aim, Chore, Solved, Week, solved
from tinbook.plans.orders.tasks import SLOT_MIN, After, Task
from tinbook.plans.orders.week_work import WeekWork

DAY = 24 * 60 // SLOT_MIN
EFFORT = 1.0
"""How hard a plan is looked for, whatever the machine: about so many seconds."""
MOST_LATE_DAYS = 35
"""How late an order may be at most in a plan that only says when it could be handed over."""


Solve = Callable[[Week, float], Solved | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedTask:
    """A task, and when it begins by the kitchen's clock."""

    task: Task
    start: datetime

    @property
    def end(self) -> datetime:
        """When hands and oven are done with it."""
        return self.start + timedelta(minutes=self.task.long_min)

    @property
    def hands_end(self) -> datetime:
        """When hands are done with it."""
        return self.start + timedelta(minutes=self.task.hands_min)


@dataclass(frozen=True, kw_only=True)
class WeekPlan:
    """Everything there is to do, in order of time. `late`: by how many minutes each order would be, where it cannot be
    ready; `clash`: then the orders of which at least one has to give way. `aims` in rounds. `unsaid`: recipes of which
    nobody says how long they keep, by order. `days_off` are the days without usual hours."""

    placed: tuple[PlannedTask, ...]
    late: Mapping[str, float]
    clash: tuple[str, ...]
    aims: Mapping[str, Aim]
    unsaid: Mapping[str, tuple[str, ...]]

    @property
    def proven(self) -> bool:
        """Whether no plan could be better in any of the aims."""
        return all(aim.reached == aim.least for aim in self.aims.values())


class NoPlan(Exception):
    """There is no way through, however late: what is asked for does not fit into the kitchen's days at all."""


def plan_of(
    work: WeekWork, kitchen: WorkingKitchen, now: datetime, effort: float = EFFORT, solve: Solve = solved
) -> WeekPlan:
    """The plan for the work of some orders, from `now` on; `solve` may do it in another process. NoPlan if there is
    none, NoSolver without the library."""
    if not work.tasks:
        return WeekPlan(placed=(), late={}, clash=(), aims={}, unsaid={})
    start = datetime.combine(now.date(), datetime.min.time())
    week = week_of(work, kitchen, now, start)
    found = solve(week, effort)
    if found is None:
        raise NoPlan
    slugs = [order.slug for order in work.orders]
    late = {slug: float(each * SLOT_MIN) for slug, each in zip(slugs, found.late, strict=True) if each}
    return WeekPlan(
        placed=tuple(sorted(_placed(work.tasks, found, start), key=lambda each: (each.start, each.end))),
        late=late,
        clash=_clash(week, slugs, effort, solve) if late else (),
        aims=found.aims,
        unsaid=work.unsaid,
    )


def _placed(tasks: Sequence[Task], found: Solved, start: datetime) -> Iterator[PlannedTask]:
    for task, at in zip(tasks, found.starts, strict=True):
        yield PlannedTask(task=task, start=start + timedelta(minutes=at * SLOT_MIN))


def week_of(work: WeekWork, kitchen: WorkingKitchen, now: datetime, start: datetime) -> Week:
    """The week in rounds from `start`, a midnight; nothing begins before `now`."""
    orders = {order.slug: place for place, order in enumerate(work.orders)}
    places = {task.key: place for place, task in enumerate(work.tasks)}
    out = [_slots(order.out - start) for order in work.orders]
    drive = [_slots(order.hand_over - order.out) for order in work.orders]
    last = max((*out, 0)) // DAY + MOST_LATE_DAYS
    first = -(-_minutes(now - start) // SLOT_MIN)
    days = [start.date() + timedelta(days=day) for day in range(last + 1)]
    off = _days_off(kitchen.days_off, days)
    may = [span for day in range(len(days)) for span in _spans(kitchen.pinch.spans, day)]
    usual = [
        span
        for day, date_ in enumerate(days)
        if date_ not in off
        for span in _spans(kitchen.hours.of(date_.weekday()).spans, day)
    ]

    def job(task: Task) -> Chore:
        ahead = {window.order: window.ahead_min for window in task.windows}
        return Chore(
            hands=task.hands_min // SLOT_MIN,
            oven=task.oven_min // SLOT_MIN,
            mixer=task.mixer,
            away=task.away,
            fridge=task.fridge,
            chill=task.chill_min // SLOT_MIN,
            eaten=task.eaten,
            after=tuple((places[each.key], *_lag(each)) for each in task.after),
            # held against when the kitchen is done with it, which is before the drive
            orders=tuple(
                (orders[slug], int(ahead.get(slug, 0.0) // SLOT_MIN) - drive[orders[slug]]) for slug in task.orders
            ),
            at=None if task.at is None else _slots(task.at - start),
            earliest=0 if task.not_before is None else -(-_minutes(task.not_before - start) // SLOT_MIN),
        )

    return Week(
        jobs=tuple(job(task) for task in work.tasks),
        due=tuple(out),
        may=_from(first, may),
        usual=_from(first, _inside(usual, may)),
        day=DAY,
        hands=kitchen.hands,
        mixers=kitchen.mixers,
        fridge=kitchen.fridge,
        oven_may_be_left=kitchen.oven_may_be_left,
        most_late=MOST_LATE_DAYS * DAY,
        fixed=frozenset(orders[order.slug] for order in work.orders if order.fixed),
    )


def _lag(after: After) -> tuple[int, int | None]:
    """The least and the most rounds after a task."""
    within = None if after.within_min is None else int(after.within_min // SLOT_MIN)
    return -int(-after.wait_min // SLOT_MIN), within


def _clash(week: Week, slugs: Sequence[str], effort: float, solve: Solve) -> tuple[str, ...]:
    """Orders that cannot all be in time, of which none can be left out without the rest becoming possible."""
    wanted = list(range(len(slugs)))
    for order in range(len(slugs)):
        rest = [each for each in wanted if each != order]
        if not rest:
            continue
        tried = solve(_only(week, rest), effort / 2.0)
        if tried is None or any(tried.late):
            wanted = rest
    return tuple(slugs[order] for order in wanted)


def _only(week: Week, orders: Sequence[int]) -> Week:
    """The same week with the jobs of these orders alone."""
    kept = [place for place, job in enumerate(week.jobs) if any(order in orders for order, _ in job.orders)]
    new, order_new = {place: at for at, place in enumerate(kept)}, {order: at for at, order in enumerate(orders)}
    jobs = tuple(
        replace(
            week.jobs[place],
            after=tuple((new[before], least, most) for before, least, most in week.jobs[place].after if before in new),
            orders=tuple((order_new[order], ahead) for order, ahead in week.jobs[place].orders if order in order_new),
        )
        for place in kept
    )
    due = tuple(week.due[order] for order in orders)
    return replace(
        week, jobs=jobs, due=due, fixed=frozenset(order_new[each] for each in week.fixed if each in order_new)
    )


def _minutes(span: timedelta) -> int:
    return int(span.total_seconds() // 60)


def _slots(span: timedelta) -> int:
    return int(span.total_seconds() // 60 // SLOT_MIN)


def _spans(spans: Sequence[tuple[int, int]], day: int) -> list[tuple[int, int]]:
    return [(day * DAY + -(-start // SLOT_MIN), day * DAY + end // SLOT_MIN) for start, end in spans]


def _from(first: int, spans: Sequence[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    return tuple((max(start, first), end) for start, end in spans if end > first)


def _inside(usual: Sequence[tuple[int, int]], may: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """The usual hours as far as they lie within those in which anybody may work at all."""
    cut = ((max(a, c), min(b, d)) for a, b in usual for c, d in may)
    return [(start, end) for start, end in cut if start < end]


def _days_off(written: Sequence[DaysOff], days: Sequence[date]) -> frozenset[date]:
    """Which of some days are off."""
    found = {day for day in days for off in written if off.first and off.last and off.first <= day <= off.last}
    for off in written:
        if off.public:
            found |= public_holidays(off.public, {day.year for day in days}) & set(days)
    return frozenset(found)


def public_holidays(place: str, years: set[int]) -> frozenset[date]:
    """The public holidays of a place by its code, `GB-SCT`. NotImplementedError for a place nobody has written down;
    ImportError without the library."""
    import holidays

    country, _, part = place.partition("-")
    return frozenset(holidays.country_holidays(country, subdiv=part or None, years=sorted(years)))
