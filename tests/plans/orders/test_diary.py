"""What is done stays done, and what the kitchen has learned of its own pace."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Worked

from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.models.hours import WorkDone
from tinbook.models.kitchen import WorkingKitchen
from tinbook.plans.orders.diary import diary_of, left_to_do, paces
from tinbook.plans.orders.planned import plan_of
from tinbook.plans.orders.week_work import WeekWork, week_work

NOW = datetime(2026, 12, 10, 8)


def done(task: str, at: str = "2026-12-09 16:00", of: str = "", said: float = 0.0, took: float = 0.0) -> WorkDone:
    return WorkDone.model_construct(
        done=datetime.fromisoformat(at), task=task, of=of or None, said=said or None, took=took or None
    )


def week(demo: Loaded, worked: Worked, hours: tuple[WorkDone, ...], **orders: dict[str, Any]) -> WeekWork:
    book: Book = replace(demo.book, others={**demo.book.others, "hours": hours})
    found = [worked(data, slug, handle=slug) for slug, data in orders.items()]
    return week_work(found, book, demo.facts, WorkingKitchen())


def test_paces_are_by_recipe_with_their_count() -> None:
    known = paces([
        done("a/1", of="rope-edge", said=30.0, took=60.0), done("a/2", of="rope-edge", said=30.0, took=45.0),
        done("a/3", of="cover-a-board"), done("a/4", said=10.0, took=20.0),
    ])  # fmt: skip
    assert set(known) == {"rope-edge"} and known["rope-edge"].sittings == 2
    assert known["rope-edge"].factor == pytest.approx(3.0 ** (1 / 3))


def test_hands_take_as_long_as_they_have_taken(demo: Loaded, worked: Worked) -> None:
    said = {task.key: task for task in week(demo, worked, (), cups=CUPS).tasks}
    slow = tuple(done(f"old/{n}", of="cupcakes", said=20.0, took=40.0) for n in range(40))
    now = {task.key: task for task in week(demo, worked, slow, cups=CUPS).tasks}
    mixing = [key for key in said if "-mix-cupcakes" in key]
    assert mixing
    for key in mixing:
        assert now[key].said_min == said[key].hands_min and now[key].sittings == 40
        assert now[key].hands_min == pytest.approx(2 * said[key].hands_min, abs=10)


def test_a_task_that_is_done_is_not_planned_again_and_what_follows_waits(demo: Loaded, worked: Worked) -> None:
    before = week(demo, worked, (), light=LIGHT)
    boards = [task for task in before.tasks if "/cover-a-board" in task.key]
    first, second = boards
    assert [each.key for each in second.after] == [first.key]
    after = week(demo, worked, (done(first.key),), light=LIGHT)
    assert {task.key for task in before.tasks} - {task.key for task in after.tasks} == {first.key}
    freed = next(task for task in after.tasks if task.key == second.key)
    stood = datetime(2026, 12, 9, 16) + timedelta(minutes=second.after[0].wait_min)
    assert freed.after == () and freed.not_before == stood
    plan = plan_of(after, WorkingKitchen(), NOW)
    assert next(each.start for each in plan.placed if each.task.key == second.key) >= stood


def test_what_was_done_for_two_is_done_for_one_when_the_other_has_gone(demo: Loaded, worked: Worked) -> None:
    made = done("light+wedding/make-american-buttercream")
    both = week(demo, worked, (made,), light=LIGHT, wedding=WEDDING)
    one = week(demo, worked, (made,), light=LIGHT)
    assert not any("make-american-buttercream" in task.key for task in (*both.tasks, *one.tasks))


def test_an_order_that_comes_later_does_not_make_done_work_undone(demo: Loaded, worked: Worked) -> None:
    """The wedding's buttercream is made; then the light comes, whose own is made by itself."""
    made = done("wedding/make-american-buttercream")
    keys = {task.key for task in week(demo, worked, (made,), light=LIGHT, wedding=WEDDING).tasks}
    assert [key for key in keys if "make-american-buttercream" in key] == ["light/make-american-buttercream"]
    assert all("+" not in key for key in keys)


def test_a_task_logged_twice_was_over_the_first_time() -> None:
    diary = diary_of([done("a/x", "2026-12-09 16:00"), done("a/x", "2026-12-08 09:00")])
    assert diary.over(("a",), "x") == datetime(2026, 12, 8, 9) and diary.over(("b",), "x") is None
    assert left_to_do((), diary) == ()
