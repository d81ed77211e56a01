"""Times read whole or not at all. Two figures of hours and minutes are one time: 1 hour 10 minutes is 70 minutes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.notes.times import plain, times


def read(text: str) -> list[str]:
    return [time.text for time in times(plain(text)) if time.whole]


@every(
    ("text", "minutes"),
    [
        ("1 hour 10 minutes", "70 min"),
        ("1 hr 30", "90 min"),
        ("1h10", "70 min"),
        ("Bake for 1 hour 10.", "70 min"),
        ("1 hr 30, until firm", "90 min"),
        ("1 hour and 5 minutes", "65 min"),
        ("1¼ hours", "75 min"),
        ("1 1/2 hrs", "90 min"),
        ("2½-3 hours", "150-180 min"),
        ("1¼-1½ hours", "75-90 min"),
        ("70-75 mins", "70-75 min"),
        ("25 to 30 minutes", "25-30 min"),
        ("45 minutes to 1 hour", "45-60 min"),
        ("50 minutes to one hour", "50-60 min"),
        ("an hour", "60 min"),
        ("half an hour", "30 min"),
        ("an hour and a half", "90 min"),
        ("two hours and a half", "150 min"),
        ("three quarters of an hour", "45 min"),
        ("forty minutes", "40 min"),
        ("about an hour", "60 min"),
        ("1 hr 30 at 160C", "90 min"),
    ],
)
def test_what_is_read(text: str, minutes: str) -> None:
    assert read(text) == [minutes]


@pytest.mark.parametrize(
    "text",
    ["two hours or a little over", "at least 40 minutes", "another 20 minutes", "20 minutes per pound", "40 min or so"],
)
def test_what_its_words_leave_open(text: str) -> None:
    assert list(times(plain(text))) and read(text) == []


@pytest.mark.parametrize("text", ["1 hour 160C", "1 hour, 180 °C"])
def test_a_heat_is_no_minutes(text: str) -> None:
    assert read(text) == ["60 min"]


@every("text", ["250 g", "4 minions", "hourly", "overnight", "6 months", "20 in", "1 hundred"])
def test_what_is_no_time(text: str) -> None:
    assert list(times(plain(text))) == []


@given(
    st.integers(1, 9),
    st.integers(1, 59),
    st.sampled_from(["{} hours {} minutes", "{} hrs {} mins", "{}h{}", "{} h {} min"]),
)
def test_hours_and_minutes_together(hours: int, minutes: int, form: str) -> None:
    assert read(form.format(hours, minutes)) == [f"{60 * hours + minutes} min"]
