"""A week as numbers, and the best way through it, found by OR-Tools CP-SAT: rounds of time, one after another from 0.

The library is asked for only when a week is planned; without it, `NoSolver` is raised.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import Any

LATE, AGE, OUTSIDE, DAYS = "late", "age", "outside", "days"
AIMS = (LATE, AGE, OUTSIDE, DAYS)
"""What is made as small as can be, one after the other: rounds that orders are late; rounds from the end of whatever is
eaten until it goes out; rounds of hands outside the usual hours; days on which an order is taken up."""


class NoSolver(Exception):
    """The library that finds the plan is not installed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chore:
    """Something to do, in rounds: `hands` busy, then the `oven`, then it chills for `chill` in `fridge` places.

    `after`: jobs by their places, with the least and the most rounds from their end to this one's beginning (None for
    any). `orders` by their places, each with how many rounds before it is due this may begin. `at`: when it begins,
    if that is given; an order that is late moves it. `away`: nobody is in the kitchen meanwhile. `earliest`: it does
    not begin before that.
    """

    hands: int
    oven: int = 0
    mixer: bool = False
    away: bool = False
    fridge: int = 0
    chill: int = 0
    eaten: bool = False
    after: tuple[tuple[int, int, int | None], ...] = ()
    orders: tuple[tuple[int, int], ...] = ()
    at: int | None = None
    earliest: int = 0

    @property
    def long(self) -> int:
        """Until hands and oven are done with it."""
        return self.hands + self.oven


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """The jobs, when each order is due, and the kitchen.

    `may`: the spans in which hands may work at all, `usual`: those in which they like to; in order, none touching the
    next. `day`: rounds in a day. `most_late`: the latest an order can be. `fixed`: orders that cannot be late.
    """

    jobs: tuple[Chore, ...]
    due: tuple[int, ...]
    may: tuple[tuple[int, int], ...]
    usual: tuple[tuple[int, int], ...]
    day: int
    hands: int = 1
    mixers: int = 1
    fridge: int = 3
    oven_may_be_left: bool = False
    most_late: int = 0
    fixed: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Aim:
    """What was reached, and the least it could be; equal if it is proven best."""

    reached: int
    least: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """When each job begins, how late each order is, and each aim by its name."""

    starts: tuple[int, ...]
    late: tuple[int, ...]
    aims: dict[str, Aim]


def solved(week: Week, effort: float = 2.0) -> Solved | None:
    """The best way through a week; None if there is none, however late. The same answer each time: one worker, a fixed
    seed, and an `effort` that does not depend on the machine (about a second each). NoSolver without the library.

    With everything in time there is less to look through, and nobody can be less late: that is tried first.
    """
    in_time = _solved(replace(week, most_late=0), effort)
    return in_time if in_time or not week.most_late else _solved(week, effort)


def made_ready() -> None:
    """Load the library, which takes as long as reading the book."""
    with suppress(NoSolver):
        _library()


def _solved(week: Week, effort: float) -> Solved | None:
    cp = _library()
    model, parts = _modelled(week, cp)
    answer: Solved | None = None
    aims: dict[str, Aim] = {}
    for aim in AIMS:
        model.clear_objective()
        model.minimize(parts.aims[aim]())
        solver = cp.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_deterministic_time = effort / len(AIMS)
        status = solver.solve(model)
        if status not in (cp.OPTIMAL, cp.FEASIBLE):
            if answer is None:
                return None
            break
        reached, least = round(solver.objective_value), round(solver.best_objective_bound)
        aims[aim] = Aim(reached, min(least, reached))
        starts = tuple(solver.value(start) for start in parts.starts)
        answer = Solved(starts=starts, late=tuple(solver.value(each) for each in parts.late), aims=aims)
        model.add(parts.aims[aim]() <= reached)
        model.clear_hints()
        for index in range(len(model.proto.variables)):
            var = model.get_int_var_from_proto_index(index)
            model.add_hint(var, solver.value(var))
    return answer


@dataclass
class _Parts:
    starts: list[Any]
    late: list[Any]
    aims: dict[str, Callable[[], Any]]


def _library() -> Any:
    try:
        from ortools.sat.python import cp_model
    except ImportError:
        raise NoSolver from None
    return cp_model


def _modelled(week: Week, cp: Any) -> tuple[Any, _Parts]:
    model = cp.CpModel()
    last = max((end for _, end in week.may), default=0)
    late = [
        model.new_int_var(0, 0 if order in week.fixed else week.most_late, f"late{order}")
        for order in range(len(week.due))
    ]
    starts, hands, mixers, fridge, fridge_takes, ovens, aways = [], [], [], [], [], [], []
    outside: list[Any] = []
    for place, job in enumerate(week.jobs):
        if job.at is not None:
            order = job.orders[0][0] if job.orders else None
            start = model.new_int_var(job.at, job.at + week.most_late, f"start{place}")
            model.add(start == job.at + (late[order] if order is not None else 0))
        else:
            watched = job.long if job.oven and not week.oven_may_be_left else job.hands
            domain = _spans(week.may, watched) if watched else [(0, last)]
            if not domain:
                model.add_bool_or([])  # it does not fit into any day
                domain = [(0, last)]
            start = model.new_int_var_from_domain(cp.Domain.from_intervals(domain), f"start{place}")
            usual = _spans(week.usual, job.hands)
            if job.hands:
                extra = model.new_bool_var(f"outside{place}")
                model.add_linear_expression_in_domain(start, cp.Domain.from_intervals(usual)).only_enforce_if(
                    extra.negated()
                )
                outside.append(job.hands * extra)
            if job.earliest > 0:
                model.add(start >= job.earliest)
        starts.append(start)
        if job.hands:
            hands.append(model.new_fixed_size_interval_var(start, job.hands, f"hands{place}"))
            if job.mixer:
                mixers.append(hands[-1])
            if job.away:
                aways.append(hands[-1])
        if job.oven:
            ovens.append((model.new_fixed_size_interval_var(start + job.hands, job.oven, f"oven{place}"), start, job))
        if job.fridge and job.chill:
            fridge.append(model.new_fixed_size_interval_var(start + job.long, job.chill, f"fridge{place}"))
            fridge_takes.append(min(job.fridge, week.fridge))
    _taken(model, hands, [1] * len(hands), week.hands)
    _taken(model, mixers, [1] * len(mixers), week.mixers)
    _taken(model, fridge, fridge_takes, week.fridge)
    _taken(model, [oven for oven, _, _ in ovens], [1] * len(ovens), 1)
    if not week.oven_may_be_left:
        for away in aways:
            for oven, _, _ in ovens:
                model.add_no_overlap([away, oven])
    for place, job in enumerate(week.jobs):
        for before, least, most in job.after:
            end = starts[before] + week.jobs[before].long
            model.add(starts[place] >= end + least)
            if most is not None:
                model.add(starts[place] <= end + max(least, most))
        for order, ahead in job.orders if job.at is None else ():
            model.add(starts[place] >= week.due[order] + late[order] - ahead)
            model.add(starts[place] + job.long <= week.due[order] + late[order])
    return model, _Parts(starts, late, _aims(week, model, starts, late, outside))


def _aims(
    week: Week, model: Any, starts: Sequence[Any], late: Sequence[Any], outside: Sequence[Any]
) -> dict[str, Callable[[], Any]]:
    def age() -> Any:
        return sum(
            week.due[order] + late[order] - starts[place] - job.long
            for place, job in enumerate(week.jobs)
            if job.eaten
            for order, _ in job.orders[:1]
        )

    taken: list[Any] = []

    def days() -> Any:
        if not taken:
            taken.extend(_days(week, model, starts))
        return sum(taken)

    return {LATE: lambda: sum(late), AGE: age, OUTSIDE: lambda: sum(outside), DAYS: days}


def _days(week: Week, model: Any, starts: Sequence[Any]) -> list[Any]:
    """For each order and day, whether hands take it up then."""
    last = max((end for _, end in week.may), default=0)
    found: dict[tuple[int, int], Any] = {}
    for place, job in enumerate(week.jobs):
        if not job.hands:
            continue
        day = model.new_int_var(0, last // week.day + 1, f"day{place}")
        model.add_division_equality(day, starts[place], week.day)
        for order, _ in job.orders:
            for each in range(last // week.day + 2):
                taken = found.setdefault((order, each), model.new_bool_var(f"taken{order}-{each}"))
                model.add(day != each).only_enforce_if(taken.negated())
    return list(found.values())


def _taken(model: Any, intervals: Sequence[Any], takes: Sequence[int], have: int) -> None:
    if have == 1 and all(take == 1 for take in takes):
        model.add_no_overlap(intervals)
    elif intervals:
        model.add_cumulative(intervals, takes, have)


def _spans(spans: Collection[tuple[int, int]], long: int) -> list[tuple[int, int]]:
    """Where something so long can begin so as to end within one of the spans."""
    return [(start, end - long) for start, end in spans if end - start >= long]
