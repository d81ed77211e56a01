"""The kitchen's week, spelled: every task once, with whose it is and how long it is left."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from tests.pages.orders.conftest import CLASS, CUPS, GONE, NOW

from tinbook.pages.base.page import Desk
from tinbook.pages.orders.week import HATCHES, KitchenWeek, fill_of, kitchen_week, what_is_made


def test_orders_are_sorted_into_what_is_to_come_and_what_has_been(planned_week: KitchenWeek) -> None:
    assert [line.slug for line in planned_week.orders] == [CLASS, CUPS]
    assert [line.slug for line in planned_week.past] == [GONE] and planned_week.overdue == ()
    assert planned_week.orders[1].what == "48 × Little-boat cupcakes" and planned_week.orders[1].state == "asked"


def test_minutes_of_the_days_add_up_and_lines_are_in_order(planned_week: KitchenWeek) -> None:
    for day in planned_week.days:
        assert [line.start_min for line in day.lines] == sorted(line.start_min for line in day.lines)
        assert all(
            line.day == day.day and line.end_min == line.start_min + line.hands_min + line.oven_min
            for line in day.lines
        )
    mine = planned_week.of_order(CUPS)
    whole = [line for day in planned_week.days for line in day.lines if CUPS in line.slugs]
    assert [line.key for day in mine for line in day.lines] == [line.key for line in whole] and whole[-1].goes_out
    assert {line.handles for day in mine for line in day.lines} == {""}, "whose it is need not be said on its own page"


def test_what_is_left_to_stand_says_until_when(planned_week: KitchenWeek) -> None:
    left = [line for day in planned_week.days for line in day.lines if line.waits_min]
    assert left and all("until" in line.waits for line in left)
    cups = next(line for line in left if "cupcakes" in line.words)
    assert cups.page == "mixtures/cupcakes"


def test_an_order_whose_time_is_past_is_overdue(kitchen_desk: Desk) -> None:
    week = kitchen_week(kitchen_desk, NOW + timedelta(days=2))
    assert [line.slug for line in week.overdue] == [CLASS] and [line.slug for line in week.orders] == [CUPS]


def test_an_order_that_cannot_be_made_is_named_and_the_rest_planned(kitchen_desk: Desk) -> None:
    orders = dict(kitchen_desk.book.others["order"])
    orders["huge"] = orders[CUPS].model_copy(
        update={"cake": "lighthouse-cake", "guests": 900, "mixtures": (), "handle": "huge"}
    )
    book = replace(kitchen_desk.book, others={**kitchen_desk.book.others, "order": orders})
    week = kitchen_week(replace(kitchen_desk, book=book), NOW)
    assert any(said.startswith("huge is not in the plan") for said in week.wrong) and week.days


def test_what_is_made_in_words(kitchen_desk: Desk) -> None:
    orders = kitchen_desk.book.others["order"]
    assert (
        what_is_made(orders[CLASS], kitchen_desk)
        == "Class for 4: Lay a rope round the foot, Cover a board with sugarpaste"
    )
    assert what_is_made(orders[GONE], kitchen_desk) == "Lighthouse cake, small"


def test_hatchings_differ() -> None:
    assert len({fill_of(nth) for nth in range(HATCHES)}) == HATCHES
