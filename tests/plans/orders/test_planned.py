"""A plan in days and hours: hours, days off, holidays, lateness, and who stands in whose way."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta
from typing import Any

import pytest
from tests.oracles.weeks import wrong
from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Weeks

from tinbook.models import read_model
from tinbook.models.kitchen import WorkingKitchen
from tinbook.plans.orders.planned import NoPlan, WeekPlan, plan_of, public_holidays, week_of
from tinbook.plans.orders.solving import solved
from tinbook.plans.orders.tasks import SLOT_MIN

NOW = datetime(2026, 11, 30, 8)
Kitchens = Callable[..., WorkingKitchen]


def kitchen(**said: Any) -> WorkingKitchen:
    read, flaws = read_model(WorkingKitchen, {key.replace("_", " "): each for key, each in said.items()}, "a kitchen")
    assert read is not None, flaws
    return read


def starts(plan: WeekPlan) -> dict[str, datetime]:
    return {each.task.key: each.start for each in plan.placed}


def test_three_orders_are_ready_in_time_and_other_eyes_agree(weeks: Weeks) -> None:
    work, ours = weeks(wedding=WEDDING, light=LIGHT, cups=CUPS), WorkingKitchen()
    plan = plan_of(work, ours, NOW)
    assert plan.late == {} and plan.clash == () and plan.proven
    midnight = datetime(2026, 11, 30)
    week = week_of(work, ours, NOW, midnight)
    at = starts(plan)
    slots = [int((at[task.key] - midnight).total_seconds() // 60 // SLOT_MIN) for task in work.tasks]
    assert wrong(week, slots, [0] * len(work.orders)) == []
    # and told again by the clock, without rounds
    for task in work.tasks:
        begins, ends = at[task.key], at[task.key] + timedelta(minutes=task.long_min)
        for each in task.after:
            ended = at[each.key] + timedelta(minutes=next(one.long_min for one in work.tasks if one.key == each.key))
            assert begins >= ended + timedelta(minutes=each.wait_min), (task.key, each.key)
        for order in work.orders:
            if order.slug in task.orders and task.at is None:
                assert ends <= order.out


def test_nothing_is_done_at_night_or_before_now(weeks: Weeks) -> None:
    plan = plan_of(weeks(light=LIGHT), kitchen(at_a_pinch="07:00-20:00"), datetime(2026, 12, 8, 10, 2))
    for each in plan.placed:
        if each.task.hands_min:
            assert each.start >= datetime(2026, 12, 8, 10, 5)
            assert each.start.hour >= 7 and each.hands_end <= datetime.combine(
                each.start.date(), datetime.min.time()
            ) + timedelta(hours=20)


def test_a_day_off_is_worked_only_at_a_pinch(weeks: Weeks) -> None:
    """What has no hurry moves off a day that becomes a day off."""
    usual = plan_of(weeks(light=LIGHT), WorkingKitchen(), NOW)
    outside = usual.aims["outside"].reached
    off = plan_of(weeks(light=LIGHT), kitchen(days_off="2026-12-10"), NOW)
    assert off.late == {} and off.aims["outside"].reached > outside
    assert off.aims["age"] == usual.aims["age"], "freshness comes first"


def test_public_holidays_come_from_the_library() -> None:
    """GOV.UK, Bank holidays, https://www.gov.uk/bank-holidays: 2026 and 2027."""
    england = public_holidays("GB-ENG", {2026, 2027})
    assert {date(2026, 12, 25), date(2026, 12, 28), date(2027, 1, 1), date(2026, 5, 4)} <= england
    assert date(2026, 11, 30) not in england and date(2026, 11, 30) in public_holidays("GB-SCT", {2026})


def test_an_order_that_cannot_be_ready_is_late_by_as_little_as_can_be(weeks: Weeks) -> None:
    plan = plan_of(weeks(light=LIGHT), WorkingKitchen(), datetime(2026, 12, 10, 8))
    assert set(plan.late) == {"light"} and plan.clash == ("light",)
    on_time = {
        **LIGHT,
        "hand over": (datetime(2026, 12, 11, 11) + timedelta(minutes=plan.late["light"])).isoformat(" ", "minutes"),
    }
    assert plan_of(weeks(light=on_time), WorkingKitchen(), datetime(2026, 12, 10, 8)).late == {}


def test_a_clash_is_between_orders_none_of_which_can_be_left_out(weeks: Weeks) -> None:
    """Each alone can be ready, both cannot: one pair of hands at one time."""
    lesson = {"class": {"techniques": ["line-a-tin"], "lasts": "5 h"}, "hand over": "2026-12-05 08:00"}
    cups = {**CUPS, "hand over": "2026-12-05 12:00"}
    now, hours = datetime(2026, 12, 5, 7, 30), kitchen(at_a_pinch="07:30-21:00")
    assert plan_of(weeks(cups=cups), hours, now).late == {}
    both = plan_of(
        weeks(cups=cups, lesson=lesson, tub={"mixtures": ["american-buttercream"], "hand over": "2026-12-05 20:00"}),
        hours,
        now,
    )
    assert set(both.late) == {"cups"} and set(both.clash) == {"cups", "lesson"}


def test_no_way_through_at_all(weeks: Weeks) -> None:
    with pytest.raises(NoPlan):
        plan_of(weeks(light=LIGHT), kitchen(at_a_pinch="09:00-09:30"), NOW)


def test_nothing_to_do() -> None:
    from tinbook.plans.orders.week_work import WeekWork

    assert plan_of(WeekWork(tasks=(), orders=(), unsaid={}), WorkingKitchen(), NOW).placed == ()


def test_two_pairs_of_hands_are_no_worse_than_one(weeks: Weeks) -> None:
    work = weeks(light=LIGHT)
    one, two = (plan_of(work, kitchen(hands=str(hands), mixers=str(hands)), NOW) for hands in (1, 2))
    assert two.aims["age"].reached <= one.aims["age"].reached


def test_an_oven_that_may_not_be_left_is_off_at_night(weeks: Weeks) -> None:
    found = solved(week_of(weeks(light=LIGHT), WorkingKitchen(), NOW, datetime(2026, 11, 30)))
    assert found is not None
    plan = plan_of(weeks(light=LIGHT), WorkingKitchen(), NOW)
    for each in plan.placed:
        if each.task.oven_min:
            assert each.end <= datetime.combine(each.start.date(), datetime.min.time()) + timedelta(hours=22)
