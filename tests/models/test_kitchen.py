"""When the kitchen works, as written."""

from __future__ import annotations

from datetime import date

import pytest

from tinbook.models import read_model
from tinbook.models.kitchen import WorkingKitchen, read_days_off, read_hours
from tinbook.units import METRIC, Misread


def test_hours() -> None:
    assert read_hours("08:00-18:00", METRIC).spans == ((480, 1080),)
    assert read_hours("8.30-12:30, 14:00-18:00", METRIC).spans == ((510, 750), (840, 1080))
    assert read_hours("off", METRIC).spans == () == read_hours("Off", METRIC).spans
    assert read_hours("00:00-24:00", METRIC).spans == ((0, 1440),)


@pytest.mark.parametrize(
    ("text", "message", "at"),
    [("18:00-08:00", "backwards", 0), ("08:00-12:00, 11:00-13:00", "backwards", 12), ("8 to 6", "not a span", 0),
     ("08:00-24:30", "not a span", 0), ("25:00-26:00", "not a span", 0), ("08:00-12:00, late", "not a span", 12)],
)  # fmt: skip
def test_hours_that_cannot_be(text: str, message: str, at: int) -> None:
    with pytest.raises(Misread, match=message) as told:
        read_hours(text, METRIC)
    assert told.value.start == at and told.value.hint


def test_days_off() -> None:
    assert read_days_off("2026-12-25", METRIC).last == date(2026, 12, 25)
    assert read_days_off("2026-12-24 to 2027-01-02", METRIC).first == date(2026, 12, 24)
    assert read_days_off("public holidays in Northern Ireland", METRIC).public == "GB-NIR"
    assert read_days_off("Public holidays in FR", METRIC).public == "FR"


@pytest.mark.parametrize("text", ["Christmas", "2026-12-27 to 2026-12-24", "2026-02-30", "public holidays in Avalon"])
def test_days_off_that_cannot_be(text: str) -> None:
    with pytest.raises(Misread) as told:
        read_days_off(text, METRIC)
    assert told.value.hint


def test_a_day_with_hours_of_its_own() -> None:
    data = {"hours": {"every day": "08:00-17:00", "Sunday": "off"}}
    kitchen, flaws = read_model(WorkingKitchen, data, "a kitchen")
    assert kitchen is not None, flaws
    assert [bool(kitchen.hours.of(day).spans) for day in range(7)] == [True] * 6 + [False]
    assert WorkingKitchen().hours.of(6).spans == ((480, 1080),)


def test_a_day_that_is_none_and_a_zone_that_is_none() -> None:
    _, flaws = read_model(WorkingKitchen, {"hours": {"Sundey": "off"}, "time zone": "Europe/Lundon"}, "a kitchen")
    assert [flaw.path for flaw in flaws] == [("hours", "Sundey"), ("time zone",)]
    assert 'did you mean "Sunday"?' in flaws[0].hint
