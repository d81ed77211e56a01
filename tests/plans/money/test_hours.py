"""The hours of an order: those of the timetable, and those it took."""

from __future__ import annotations

from dataclasses import replace

from tests.plans.money.conftest import TillOf
from tests.plans.orders.conftest import LIGHT, WEDDING, Weeks

from tinbook.models import Book, read_model
from tinbook.models.hours import WorkDone
from tinbook.plans.money.hours import hours_of, hours_taken
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked


def with_hours(till: Till, *entries: dict[str, str]) -> Till:
    logged = []
    for data in entries:
        found, flaws = read_model(WorkDone, {"done": "2026-12-05 10:40", **data}, "it")
        assert found is not None and not flaws
        logged.append(found)
    book: Book = replace(till.book, others={**till.book.others, "hours": tuple(logged)})
    return replace(till, things=replace(till.things, book=book))


def test_they_are_those_of_the_timetable(orders_worked: dict[str, OrderWorked], till: Till, weeks: Weeks) -> None:
    """The same figure as the plan of the order alone."""
    none = with_hours(till)
    for slug, data in (("light", LIGHT), ("wedding", WEDDING)):
        hours = hours_of(orders_worked[slug], none)
        work = weeks(none.kitchen, **{slug: data})
        # the demo's own log makes lining quicker or slower: without it both go by the steps
        assert hours.hands_min > 0 and hours.oven_min == sum(task.oven_min for task in work.tasks)
        assert hours.least_min <= hours.hands_min and hours.oven_least_min <= hours.oven_min
        assert hours.tasks == len(work.tasks) and hours.logged == 0


def test_our_own_pace_comes_before_what_the_steps_say(orders_worked: dict[str, OrderWorked], till: Till) -> None:
    slow = {"task": "other/line-a-tin", "of": "line-a-tin", "said": "30 min", "took": "60 min"}
    plain, own = with_hours(till), with_hours(till, slow)
    worked = orders_worked["light"]
    assert hours_of(worked, own).hands_min > hours_of(worked, plain).hands_min and hours_of(worked, own).own


def test_what_is_done_counts_as_long_as_it_took(orders_worked: dict[str, OrderWorked], till: Till) -> None:
    worked = orders_worked["light"]
    plain = with_hours(till)
    planned = hours_taken(worked, plain)
    assert planned == hours_of(worked, plain)
    took = hours_taken(worked, with_hours(till, {"task": f"{worked.slug}/goes-out", "took": "40 min"}))
    assert (took.logged, took.tasks) == (1, planned.tasks) and took.hands_min == planned.hands_min - 10 + 40
    shared = hours_taken(worked, with_hours(till, {"task": f"{worked.slug}+other/make-tea", "took": "30 min"}))
    assert shared.hands_min == planned.hands_min + 15 and shared.tasks == planned.tasks + 1
    # what somebody has ticked without a time counts as planned
    assert hours_taken(worked, with_hours(till, {"task": f"{worked.slug}/goes-out"})) == planned


def test_an_order_done_is_priced_whole(orders_worked: dict[str, OrderWorked], till_with: TillOf, till: Till) -> None:
    """What is ticked is left out of a plan, but not out of a cost."""
    worked = orders_worked["light"]
    ticked = with_hours(till, {"task": f"{worked.slug}/goes-out", "took": "10 min"})
    assert hours_of(worked, ticked).tasks == hours_of(worked, with_hours(till)).tasks
