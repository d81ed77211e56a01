"""Where a week has no way through, the task that is in the way is named."""

from __future__ import annotations

from dataclasses import replace

from tests.plans.orders.conftest import LIGHT, WEDDING, Weeks

from tinbook.plans.orders.tasks import Window
from tinbook.plans.orders.tight import tightest


def test_the_task_with_the_least_room(weeks: Weeks) -> None:
    work = weeks(light=LIGHT)
    usual = tightest(work)
    assert not usual.never and usual.needs_min <= usual.ahead_min
    tasks = tuple(
        replace(task, windows=(Window(order="light", ahead_min=60.0),)) if task.key == "light/cover-a-board-1" else task
        for task in work.tasks
    )
    found = tightest(replace(work, tasks=tasks))
    assert found.task.key == "light/cover-a-board-1" and found.never
    # the board dries for a day, then it is moved to and the border piped
    assert found.needs_min > 24 * 60


def test_the_drive_counts(weeks: Weeks) -> None:
    near, far = (tightest(weeks(w={**WEDDING, "delivered": drive})) for drive in ("5 min", "2 h"))
    assert far.needs_min == near.needs_min + 115
