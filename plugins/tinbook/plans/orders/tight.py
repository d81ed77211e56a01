"""Where a week has no way through: the task that would have to be begun earlier than its own steps allow."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.plans.orders.tasks import Task
from tinbook.plans.orders.week_work import GoesOut, WeekWork


@dataclass(frozen=True, slots=True, kw_only=True)
class Tight:
    """A task of an order that can be done `ahead_min` before it goes out, though `needs_min` pass until then even if
    everybody works night and day; with less, hours and days off leave no room."""

    task: Task
    order: GoesOut
    ahead_min: float
    needs_min: float

    @property
    def never(self) -> bool:
        """Whether no working hours would help."""
        return self.needs_min > self.ahead_min


def tightest(work: WeekWork) -> Tight:
    """The task with the least room of all. ValueError if there is none with a window."""
    last = {order.slug: _until(work, order) for order in work.orders}
    outs = {order.slug: order for order in work.orders}
    found = [
        Tight(
            task=task,
            order=outs[window.order],
            ahead_min=window.ahead_min,
            needs_min=last[window.order][task.key] + drive_min(outs[window.order]),
        )
        for task in work.tasks
        for window in task.windows
        if task.key in last[window.order]
    ]
    return min(found, key=lambda each: each.ahead_min - each.needs_min)


def drive_min(order: GoesOut) -> float:
    """Between leaving the kitchen and being handed over."""
    return (order.hand_over - order.out).total_seconds() / 60.0


def _until(work: WeekWork, order: GoesOut) -> dict[str, float]:
    """The least minutes from the beginning of each task of an order until the order goes out."""
    longest = {f"{order.slug}/goes-out": 0.0}
    # tasks are listed after those they follow, but for what is left to the very end
    for _ in range(len(work.tasks)):
        before = dict(longest)
        for task in reversed(work.tasks):
            if task.key in longest:
                for each in task.after:
                    long = _long(work, each.key) + each.wait_min + longest[task.key]
                    longest[each.key] = max(longest.get(each.key, 0.0), long)
        if longest == before:
            break
    return longest


def _long(work: WeekWork, key: str) -> int:
    return next(task.long_min for task in work.tasks if task.key == key)
