"""Chains of stints as tasks: what comes before what, how far ahead, and how long each takes."""

from __future__ import annotations

from datetime import datetime

import pytest
from tests.plans.orders.conftest import Ordered

from tinbook.loading import Loaded
from tinbook.models.kitchen import WorkingKitchen
from tinbook.plans.base.saying import saying
from tinbook.plans.orders.stints import Stint
from tinbook.plans.orders.tasks import After
from tinbook.plans.orders.work import UNSAID_MIN, Work

DAY = 1440.0
SAID = saying("task_technique", technique="Roll a rope")


@pytest.fixture
def work(demo: Loaded, ordered: Ordered) -> Work:
    order = ordered({"cake": "lighthouse-cake", "hand over": "2026-12-05 11:00", "delivered": "25 min"})
    return Work(orders=(("quay", order),), book=demo.book, kitchen=WorkingKitchen())


def test_one_comes_after_the_other(work: Work) -> None:
    chain = [Stint(hands_min=12, wait_min=20, ahead_min=DAY), Stint(hands_min=3, ahead_min=DAY, after=(0,))]
    ends = work.add("rope", chain, SAID, times=3)
    first, second = work.tasks
    assert (first.hands_min, second.hands_min) == (40, 10)
    assert second.after == (After(key="quay/rope-1", wait_min=20),)
    assert ends == [After(key="quay/rope-2")]
    assert [each.windows[0].ahead_min for each in work.tasks] == [DAY, DAY]


def test_what_is_done_on_the_day_begins_after_midnight(work: Work) -> None:
    work.add("rope", [Stint(hands_min=5)], SAID)
    assert work.tasks[0].windows[0].ahead_min == 11 * 60


def test_what_can_be_done_long_before_does_not_wait_for_the_cake(work: Work) -> None:
    (covered,) = work.add("cover", [Stint(hands_min=30, ahead_min=2 * DAY)], SAID)
    chain = [Stint(hands_min=8, ahead_min=14 * DAY), Stint(hands_min=5, ahead_min=DAY, after=(0,))]
    ends = work.add("stack", chain, SAID, after=[covered])
    drilled, stacked = work.tasks[1:]
    assert drilled.after == () and {each.key for each in stacked.after} == {drilled.key, covered.key}
    assert [each.key for each in ends] == [stacked.key]


def test_where_all_can_be_done_before_both_have_to_be_over(work: Work) -> None:
    (covered,) = work.add("cover", [Stint(hands_min=30, ahead_min=2 * DAY)], SAID)
    ends = work.add("drill", [Stint(hands_min=8, ahead_min=14 * DAY)], SAID, after=[covered])
    assert {each.key for each in ends} == {"quay/cover", "quay/drill"}


def test_the_kitchen_is_done_before_the_drive(work: Work) -> None:
    assert work.out == datetime(2026, 12, 5, 10, 35)
    work.there_min = 40
    assert work.out == datetime(2026, 12, 5, 9, 55)


def test_a_freezer_keeps_longer_if_there_is_room(work: Work, demo: Loaded) -> None:
    sponge = demo.book.mixtures["creamed-butter-sponge"]
    assert work.keeps_min("creamed-butter-sponge", sponge) == 3 * DAY and not work.unsaid
    work.kitchen = WorkingKitchen(freezer=True)  # type: ignore[call-arg]
    assert work.keeps_min("creamed-butter-sponge", sponge) == 60 * DAY
    unsaid = sponge.model_copy(update={"keeps_for": ()})
    assert work.keeps_min("x", unsaid) == UNSAID_MIN and work.unsaid == ["x"]
