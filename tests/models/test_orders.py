"""An order as written."""

from __future__ import annotations

from datetime import datetime
from typing import Any

import pytest

from tinbook.models import read_model
from tinbook.models.orders import STATES, Order, read_moment
from tinbook.units import METRIC, Misread

BARE = {"handle": "quay", "cake": "tide-cake", "hand over": "2026-12-05 11:00"}


def read(**more: Any) -> Order:
    order, flaws = read_model(
        Order, {**BARE, **{key.replace("_", " "): each for key, each in more.items()}}, "an order"
    )
    assert order is not None, flaws
    return order


def test_six_lines_are_enough() -> None:
    order = read(guests="40", must_be_free_from="nuts")
    assert (order.state, order.guests, order.must_be_free_from) == ("asked", 40, ("nuts",))
    assert order.hand_over == datetime(2026, 12, 5, 11)
    assert order.delivered is None and order.change is None


@pytest.mark.parametrize("text", ["2026-12-05 11:00", "2026-12-05 11.00", "2026-12-05T11:00", "2026-12-05  11:00"])
def test_a_day_and_a_time(text: str) -> None:
    assert read_moment(text, METRIC) == datetime(2026, 12, 5, 11)


@pytest.mark.parametrize("text", ["2027-02-29 11:00", "2026-13-01 09:00", "2026-12-05 25:00", "2026-11-31 10:00"])
def test_what_is_not_in_the_calendar(text: str) -> None:
    """2027 is no leap year (Gregorian calendar); 2028 is."""
    with pytest.raises(Misread, match="calendar"):
        read_moment(text, METRIC)
    assert read_moment("2028-02-29 11:00", METRIC).day == 29


@pytest.mark.parametrize("text", ["tomorrow", "2026-12-05", "5/12/26 11:00", "11:00"])
def test_what_is_no_moment(text: str) -> None:
    with pytest.raises(Misread, match="is not a day and a time"):
        read_moment(text, METRIC)


def test_only_what_is_asked_or_agreed_is_still_to_do() -> None:
    assert [state for state in STATES if read(state=state).open] == ["asked", "agreed"]


def test_a_change_takes_the_keys_of_a_cake() -> None:
    order = read(change={"filling": "lemon-buttercream", "board": {"colour": "slate"}})
    assert order.change is not None and order.change.model_fields_set == {"filling", "board"}
    _, (flaw,) = read_model(Order, {**BARE, "change": {"fillin": "x"}}, "an order")
    assert flaw.path == ("change", "fillin") and 'did you mean "filling"' in flaw.hint


def test_a_handle_is_short() -> None:
    _, (flaw,) = read_model(Order, {**BARE, "handle": "x" * 41}, "an order")
    assert flaw.path == ("handle",) and "40" in flaw.message
