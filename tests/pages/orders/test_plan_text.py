"""A plan in words and as data."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import datetime

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Weeks, ordered, weeks, worked

from tinbook.models.kitchen import WorkingKitchen
from tinbook.pages.orders.plan_text import late_lines, plan_data, plan_lines, task_words, why_not
from tinbook.plans.orders.planned import plan_of
from tinbook.plans.orders.tight import tightest

__all__ = ["ordered", "weeks", "worked"]
NOW = datetime(2026, 11, 30, 8)


def test_every_task_of_hands_is_told_once_and_the_minutes_of_a_day_add_up(weeks: Weeks) -> None:
    work = weeks(light=LIGHT, cups=CUPS)
    plan = plan_of(work, WorkingKitchen(), NOW)
    text = "\n".join(plan_lines(plan, plan.placed, work.orders))
    busy = [each for each in plan.placed if each.task.hands_min]
    assert text.count("\n  ") == len(busy)
    assert all(task_words(each) in text for each in busy)
    assert "Fri 11 Dec" in text and "Collection: light  [light]" in text and "No better plan is possible." in text
    data = plan_data(plan, plan.placed, work.orders)
    assert sum(each["hands_min"] for each in data["tasks"]) == sum(each.task.hands_min for each in busy)
    assert json.loads(json.dumps(data)) == data


def test_what_takes_several_goes_is_counted(weeks: Weeks) -> None:
    work = weeks(light=LIGHT)
    told = [task_words(each) for each in plan_of(work, WorkingKitchen(), NOW).placed if "crumb-coat" in each.task.key]
    assert told == [f"Crumb coat and final coat with sharp edges ({place} of 3)" for place in (1, 2, 3)]


def test_what_cannot_be_ready_says_by_how_much_and_from_when_it_could(weeks: Weeks) -> None:
    work = weeks(light=LIGHT)
    plan = replace(plan_of(work, WorkingKitchen(), NOW), late={"light": 3 * 1440.0 + 90}, clash=("light",))
    first, second, _ = late_lines(plan, work.orders)
    assert first == (
        "light cannot be ready by Fri 11 Dec, 11:00: it wants 3 days 2 h more. "
        "It could be handed over from Mon 14 Dec, 12:30."
    ).replace("2 h", "2\N{NO-BREAK SPACE}h")
    assert second == "It could not be ready even if there were nothing else to do."


def test_a_clash_names_all_who_are_in_it(weeks: Weeks) -> None:
    work = weeks(light=LIGHT, cups=CUPS)
    plan = replace(plan_of(work, WorkingKitchen(), NOW), late={"cups": 30.0}, clash=("cups", "light"))
    assert "These do not all fit: light, cups. If any one of them gives way, the others can be ready." in list(
        late_lines(plan, work.orders)
    )


def test_no_room_at_all_names_the_task(weeks: Weeks) -> None:
    found = tightest(weeks(w=WEDDING))
    assert "finds no room in the kitchen's hours" in why_not(found) and "at a pinch" in why_not(found)
    assert "cannot be made as it is written" in why_not(replace(found, ahead_min=10.0))


@pytest.mark.parametrize("kept", [(), ("cupcakes",)])
def test_what_nobody_says_is_told(kept: tuple[str, ...], weeks: Weeks) -> None:
    work = weeks(cups=CUPS)
    plan = replace(plan_of(work, WorkingKitchen(), NOW), unsaid={"cups": kept} if kept else {})
    assert ("two days were assumed" in "\n".join(plan_lines(plan, plan.placed, work.orders))) == bool(kept)
