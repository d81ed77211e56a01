"""A class: its timetable adds up, and what cannot be waited for stands ready."""

from __future__ import annotations

import pytest
from tests.plans.orders.conftest import CUPS, Ordered, Weeks

from tinbook.loading import Loaded
from tinbook.plans.orders.class_work import GREET_MIN, LAY_OUT_MIN, LONGEST_WAIT_MIN, class_plan

LESSON = {
    "class": {"techniques": ["rope-edge", "cover-a-board"], "people": "6", "lasts": "3 h"},
    "hand over": "2026-12-08 14:00",
}


def test_lessons_follow_each_other_and_pieces_stand_for_long_waits(demo: Loaded, ordered: Ordered) -> None:
    plan = class_plan(ordered(LESSON), demo.book, demo.facts)
    assert plan is not None and [each.slug for each in plan.taught] == ["rope-edge", "cover-a-board"]
    lessons = [lesson for each in plan.taught for lesson in each.lessons]
    at = GREET_MIN
    for lesson in lessons:
        assert lesson.begins_min == pytest.approx(at)
        assert (lesson.piece is not None) == (lesson.wait_min > LONGEST_WAIT_MIN)
        at += lesson.hands_min + (0.0 if lesson.piece else lesson.wait_min)
    assert plan.ends_min == pytest.approx(at) and plan.over_min == 0.0
    for each in plan.taught:
        steps = each.technique.steps
        for piece in each.pieces:
            made = sum(step.hands_on.high.base for step in steps[: piece.step] if step.hands_on)
            assert piece.hands_min == pytest.approx(made)
        assert each.kit.people == 6


def test_a_class_that_is_booked_too_short_says_by_how_much(demo: Loaded, ordered: Ordered) -> None:
    long = class_plan(ordered(LESSON), demo.book, demo.facts)
    short = class_plan(ordered(LESSON, **{"class": {**LESSON["class"], "lasts": "30 min"}}), demo.book, demo.facts)
    assert long is not None and short is not None
    assert short.over_min == pytest.approx(long.ends_min - 30.0)
    assert class_plan(ordered(CUPS), demo.book, demo.facts) is None


def test_its_tasks_are_over_before_it_begins(weeks: Weeks) -> None:
    week = weeks(lesson=LESSON)
    tasks = {task.key: task for task in week.tasks}
    out = tasks.pop("lesson/goes-out")
    assert {each.key for each in out.after} == set(tasks)
    assert {name.partition("/")[2] for name in tasks} >= {"lay-out-rope-edge", "lay-out-cover-a-board"}
    assert tasks["lesson/lay-out-rope-edge"].hands_min == 6 * LAY_OUT_MIN
