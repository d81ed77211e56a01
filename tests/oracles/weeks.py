"""A week seen with other eyes: what is wrong with a plan, and the best plan by trying every one. No solver is used."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence

from tinbook.plans.orders.solving import Chore, Week

Starts = Sequence[int]


def wrong(week: Week, starts: Starts, late: Sequence[int]) -> list[str]:
    """Everything that a plan breaks, in words; each round is looked at by itself."""
    found = [told for place, start in enumerate(starts) for told in _by_itself(week, place, start, late)]
    for place, (job, start) in enumerate(zip(week.jobs, starts, strict=True)):
        for before, least, most in job.after:
            gap = start - starts[before] - week.jobs[before].long
            if gap < least or (most is not None and gap > max(least, most)):
                found.append(f"{place} is {gap} after {before}")
    found += [f"order {order} cannot be late" for order in week.fixed if late[order]]
    last = max((start + job.long + job.chill for start, job in zip(starts, week.jobs, strict=True)), default=0)
    for at in range(last):
        hands = [job for start, job in zip(starts, week.jobs, strict=True) if start <= at < start + job.hands]
        ovens = [
            job for start, job in zip(starts, week.jobs, strict=True) if start + job.hands <= at < start + job.long
        ]
        cold = [
            job
            for start, job in zip(starts, week.jobs, strict=True)
            if start + job.long <= at < start + job.long + job.chill
        ]
        if len(hands) > week.hands:
            found.append(f"too many hands at {at}")
        if sum(job.mixer for job in hands) > week.mixers:
            found.append(f"too many mixers at {at}")
        if len(ovens) > 1:
            found.append(f"two in the oven at {at}")
        if sum(min(job.fridge, week.fridge) for job in cold) > week.fridge:
            found.append(f"no room in the fridge at {at}")
        if ovens and not week.oven_may_be_left and any(job.away for job in hands):
            found.append(f"the oven is left at {at}")
    return found


def _by_itself(week: Week, place: int, start: int, late: Sequence[int]) -> Iterator[str]:
    """What is wrong with when a job is done, whatever else there is."""
    job = week.jobs[place]
    ends = start + job.hands + job.oven
    if start < 0:
        yield f"{place} begins before it may"
    if job.at is not None:
        if start != job.at + (late[job.orders[0][0]] if job.orders else 0):
            yield f"{place} is not at its time"
        return
    watched = ends if job.oven and not week.oven_may_be_left else start + job.hands
    if watched > start and not any(a <= start and watched <= b for a, b in week.may):
        yield f"{place} is done when nobody may work"
    for order, ahead in job.orders:
        due = week.due[order] + late[order]
        if start < due - ahead:
            yield f"{place} is done too early for {order}"
        if ends > due:
            yield f"{place} is done too late for {order}"


def aims(week: Week, starts: Starts, late: Sequence[int]) -> tuple[int, int, int, int]:
    """What a plan reaches: rounds late, rounds waiting, rounds outside the usual hours, days an order is taken up."""
    age = sum(
        week.due[job.orders[0][0]] + late[job.orders[0][0]] - start - job.long
        for job, start in zip(week.jobs, starts, strict=True)
        if job.eaten and job.orders
    )
    outside = sum(
        job.hands
        for job, start in zip(week.jobs, starts, strict=True)
        if job.at is None and not any(a <= start and start + job.hands <= b for a, b in week.usual)
    )
    days = {
        (order, start // week.day)
        for job, start in zip(week.jobs, starts, strict=True)
        if job.hands
        for order, _ in job.orders
    }
    return sum(late), age, outside, len(days)


def best(week: Week) -> tuple[int, int, int, int] | None:
    """The best of all plans, by trying them; None if there is none."""
    found = [aims(week, starts, late) for late in _lates(week) for starts in _every(week, late, [])]
    return min(found, default=None)


def _lates(week: Week) -> Iterator[tuple[int, ...]]:
    told: list[tuple[int, ...]] = [()]
    for order in range(len(week.due)):
        most = 0 if order in week.fixed else week.most_late
        told = [(*each, late) for each in told for late in range(most + 1)]
    yield from sorted(told, key=sum)


def _every(week: Week, late: Sequence[int], placed: list[int]) -> Iterator[tuple[int, ...]]:
    place = len(placed)
    if place == len(week.jobs):
        if not wrong(week, placed, late):
            yield tuple(placed)
        return
    job = week.jobs[place]
    last = max(end for _, end in week.may)
    for start in [job.at + late[job.orders[0][0]]] if job.at is not None else range(last + 1):
        follows = all(start - placed[b] - week.jobs[b].long >= least for b, least, _ in job.after)
        if follows and not any(_by_itself(week, place, start, late)):
            yield from _every(week, late, [*placed, start])


def random_week(seed: int, jobs: int = 3, days: int = 2, day: int = 8, orders: int = 2) -> Week:
    """A small week: a few jobs for an order or two, some after others, in short days."""
    chance = random.Random(seed)
    may = tuple((at * day + chance.randint(0, 1), at * day + chance.randint(5, day)) for at in range(days))
    usual = tuple((a + chance.randint(0, 2), b - chance.randint(0, 1)) for a, b in may)
    due = tuple(sorted(chance.randint(day, days * day) for _ in range(chance.randint(1, orders))))
    made: list[Chore] = []
    for place in range(jobs):
        whose = sorted(chance.sample(range(len(due)), chance.randint(1, len(due)) if chance.random() < 0.3 else 1))
        after = []
        if place and chance.random() < 0.6:
            least = chance.randint(0, 3)
            after = [(chance.randrange(place), least, least + chance.randint(0, 6) if chance.random() < 0.5 else None)]
        oven = chance.choice((0, 0, 1, 3))
        chill = 0 if oven else chance.choice((0, 0, 2, 4))
        made.append(
            Chore(
                hands=chance.randint(0 if oven else 1, 2),
                oven=oven,
                mixer=chance.random() < 0.4,
                fridge=chance.randint(1, 3) if chill else 0,
                chill=chill,
                eaten=chance.random() < 0.5,
                after=tuple(after),
                orders=tuple((order, chance.randint(6, days * day)) for order in whose),
            )
        )
    if chance.random() < 0.5:
        order = chance.randrange(len(due))
        made.append(Chore(hands=chance.randint(1, 2), away=chance.random() < 0.5, orders=((order, 0),), at=due[order]))
    return Week(
        jobs=tuple(made),
        due=due,
        may=may,
        usual=tuple((a, b) for a, b in usual if a < b),
        day=day,
        hands=chance.choice((1, 1, 2)),
        mixers=1,
        fridge=chance.randint(1, 3),
        oven_may_be_left=chance.random() < 0.3,
        most_late=chance.choice((0, 2)),
        fixed=frozenset(order for order in range(len(due)) if chance.random() < 0.2),
    )
