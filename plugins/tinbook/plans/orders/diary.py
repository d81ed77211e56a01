"""What has been done for the orders, and what the kitchen's own minutes say about the next time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from tinbook.engine.pace import pace
from tinbook.models.hours import WorkDone
from tinbook.plans.orders.tasks import After, Task


@dataclass(frozen=True, slots=True)
class Pace:
    """How many times as long as its steps say a recipe or a technique takes in this kitchen, and from how many
    sittings."""

    factor: float
    sittings: int


def paces(hours: Iterable[WorkDone]) -> Mapping[str, Pace]:
    """The kitchen's own pace, by the file names of recipes and techniques."""
    ratios: dict[str, list[float]] = {}
    for entry in hours:
        if entry.of and entry.said and entry.took:
            ratios.setdefault(entry.of, []).append(entry.took / entry.said)
    return {slug: Pace(pace(of), len(of)) for slug, of in ratios.items()}


@dataclass(frozen=True)
class Diary:
    """The tasks that are done, by their keys (`ORDERS/NAME`, orders joined by +), and when each was over."""

    done: Mapping[str, datetime]

    def over(self, orders: Sequence[str], name: str) -> datetime | None:
        """When a task of some orders was over: by itself, or for these orders and others besides."""
        wanted = set(orders)
        found = [
            when
            for key, when in self.done.items()
            if key.partition("/")[2] == name and wanted <= set(key.partition("/")[0].split("+"))
        ]
        return min(found, default=None)

    def bound(self) -> Iterator[frozenset[str]]:
        """Orders of which something is done: each with those it was done together with. Nothing can be shared with
        them any more in another way, or it would be done twice."""
        groups: list[set[str]] = []
        for key in self.done:
            mine = set(key.partition("/")[0].split("+"))
            for group in [group for group in groups if group & mine]:
                groups.remove(group)
                mine |= group
            groups.append(mine)
        yield from map(frozenset, groups)


def diary_of(hours: Iterable[WorkDone]) -> Diary:
    """The diary of a log; a task logged twice was over when it was first."""
    done: dict[str, datetime] = {}
    for entry in hours:
        done[entry.task] = min(entry.done, done.get(entry.task, entry.done))
    return Diary(done)


def left_to_do(tasks: Iterable[Task], diary: Diary) -> tuple[Task, ...]:
    """The tasks that are not done. What comes after one that is done may begin once that has stood long enough."""
    every = tuple(tasks)
    over = {task.key: when for task in every if (when := diary.over(task.orders, task.key.partition("/")[2]))}
    return tuple(_freed(task, over) for task in every if task.key not in over)


def _freed(task: Task, over: Mapping[str, datetime]) -> Task:
    before = [after for after in task.after if after.key in over]
    if not before:
        return task
    soonest = max(_stood(after, over) for after in before)
    return replace(task, after=tuple(each for each in task.after if each.key not in over), not_before=soonest)


def _stood(after: After, over: Mapping[str, datetime]) -> datetime:
    return over[after.key] + timedelta(minutes=after.wait_min)
