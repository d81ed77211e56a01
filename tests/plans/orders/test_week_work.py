"""Several orders: what one batch or one load can serve is made once."""

from __future__ import annotations

from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Weeks

from tinbook.loading import Loaded
from tinbook.plans.orders.tasks import Task


def made(tasks: tuple[Task, ...]) -> dict[str, tuple[str, ...]]:
    return {task.key: task.orders for task in tasks if "/make-" in task.key}


def test_a_buttercream_for_two_orders_is_made_once(weeks: Weeks) -> None:
    apart = sum(task.hands_min for each in (WEDDING, LIGHT) for task in weeks(one=each).tasks if "make-" in task.key)
    both = weeks(light=LIGHT, wedding=WEDDING)
    assert made(both.tasks)["light+wedding/make-american-buttercream"] == ("light", "wedding")
    assert sum(task.hands_min for task in both.tasks if "make-" in task.key) < apart
    coat = next(task for task in both.tasks if task.key == "light/crumb-coat-and-final-coat-1")
    assert "light+wedding/make-american-buttercream" in {each.key for each in coat.after}
    assert {window.order for task in both.tasks if len(task.orders) > 1 for window in task.windows} == {
        "light",
        "wedding",
    }


def test_far_apart_nothing_is_shared(weeks: Weeks) -> None:
    later = {**WEDDING, "hand over": "2026-12-19 15:00"}
    assert all(len(task.orders) == 1 for task in weeks(light=LIGHT, wedding=later).tasks)


def test_tins_of_two_orders_share_a_load_if_that_saves_one(weeks: Weeks) -> None:
    dozen = {
        "mixtures": [{"mixture": "madeira-cake", "count": "1", "tin": "round 15 cm"}],
        "hand over": "2026-12-12 10:00",
    }
    one = sum(bool(task.oven_min) for task in weeks(a=dozen).tasks)
    both = weeks(a=dozen, b=dozen)
    loads = [task for task in both.tasks if task.oven_min]
    assert one == 1 and len(loads) == 1 and loads[0].orders == ("a", "b")
    out = {task.key: {each.key for each in task.after} for task in both.tasks if task.key.endswith("goes-out")}
    assert out["a/goes-out"] == out["b/goes-out"] != set()


def test_a_class_and_a_tub(weeks: Weeks, demo: Loaded) -> None:
    lesson = {"class": {"techniques": ["rope-edge"], "people": "4", "lasts": "3 h"}, "hand over": "2026-12-08 14:00"}
    week = weeks(lesson=lesson, tub={"mixtures": [{"mixture": "american-buttercream", "count": "2"}]})
    assert {order.slug: order.fixed for order in week.orders} == {"lesson": True, "tub": False}
    tasks = {task.key: task for task in week.tasks}
    assert tasks["lesson/goes-out"].hands_min == 180 and tasks["lesson/goes-out"].at == week.orders[1].hand_over
    once = sum(step.hands_on.high.base for step in demo.book.mixtures["american-buttercream"].method if step.hands_on)
    assert tasks["tub/make-american-buttercream"].hands_min >= 2 * once


def test_cups_take_no_lining(weeks: Weeks) -> None:
    assert not any("line-a-tin" in task.key for task in weeks(cups=CUPS).tasks)
