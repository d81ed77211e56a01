"""When the kitchen works, and what works in it: house/kitchen.yaml."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Annotated
from zoneinfo import ZoneInfo

from pydantic import Field

from tinbook.models.finish import Share
from tinbook.models.reading import ONE_OR_MORE, Private, Written, YesNo, like, spelled, such_as, whole_number
from tinbook.units import Measures, Misread

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
OFF = "off"
_CLOCK = r"(?:[01]?[0-9]|2[0-4])[:.][0-5][0-9]"
_SPAN = rf"{_CLOCK}\s*[-–]\s*{_CLOCK}"
PUBLIC = "public holidays in "


@dataclass(frozen=True, slots=True)
class Hours:
    """Spans of a day, in order, each from and to a minute after midnight; none for a day off."""

    spans: tuple[tuple[int, int], ...]
    written: str


def read_hours(text: str, _: Measures) -> Hours:
    """`08:00-18:00`, `08:00-12:30, 14:00-18:00` or `off`; raises Misread."""
    if text.strip().lower() == OFF:
        return Hours((), text)
    spans: list[tuple[int, int]] = []
    at = 0
    for part in text.split(","):
        found = re.fullmatch(rf"\s*({_CLOCK})\s*[-–]\s*({_CLOCK})\s*", part)
        span = found and (_minute(found[1]), _minute(found[2]))
        if not span or span[1] > 24 * 60:
            hint = 'write a start and an end, such as 08:00-18:00, or "off"'
            raise Misread(f'"{part.strip()}" is not a span of hours', hint, at, at + len(part))
        if span[0] >= span[1] or (spans and span[0] < spans[-1][1]):
            raise Misread("these hours run backwards", "write the earlier time first", at, at + len(part))
        spans.append(span)
        at += len(part) + 1
    return Hours(tuple(spans), text)


def _minute(clock: str) -> int:
    hour, minute = re.split(r"[:.]", clock)
    return int(hour) * 60 + int(minute)


WrittenHours = Annotated[Hours, spelled(read_hours, like(rf"off|{_SPAN}(?:\s*,\s*{_SPAN})*", "hours"))]


USUAL, AT_MOST = Hours(((480, 1080),), "08:00-18:00"), Hours(((360, 1320),), "06:00-22:00")
"""The hours of a kitchen that has not said when it works, and those it would work at a pinch."""


class WorkingHours(Written):
    """When you work, by day of the week."""

    every_day: Annotated[WrittenHours | None, such_as("08:00-18:00", "off")] = None
    """The hours of every day that has none of its own. Left out: from 08:00 to 18:00."""
    monday: Annotated[WrittenHours | None, Field(alias="Monday", examples=["09:00-17:00"])] = None
    """Your hours on a Monday. Left out: the hours of every day."""
    tuesday: Annotated[WrittenHours | None, Field(alias="Tuesday", examples=["09:00-17:00"])] = None
    """Your hours on a Tuesday. Left out: the hours of every day."""
    wednesday: Annotated[WrittenHours | None, Field(alias="Wednesday", examples=["09:00-12:30, 14:00-17:00"])] = None
    """Your hours on a Wednesday. Left out: the hours of every day."""
    thursday: Annotated[WrittenHours | None, Field(alias="Thursday", examples=["09:00-17:00"])] = None
    """Your hours on a Thursday. Left out: the hours of every day."""
    friday: Annotated[WrittenHours | None, Field(alias="Friday", examples=["09:00-17:00"])] = None
    """Your hours on a Friday. Left out: the hours of every day."""
    saturday: Annotated[WrittenHours | None, Field(alias="Saturday", examples=["08:00-13:00"])] = None
    """Your hours on a Saturday. Left out: the hours of every day."""
    sunday: Annotated[WrittenHours | None, Field(alias="Sunday", examples=["off"])] = None
    """Your hours on a Sunday. Left out: the hours of every day."""

    def of(self, weekday: int) -> Hours:
        """The hours of a day of the week, counted from Monday, 0."""
        own: Hours | None = getattr(self, WEEKDAYS[weekday].lower())
        return own or self.every_day or USUAL


@dataclass(frozen=True, slots=True)
class DaysOff:
    """Days off from one to another, or the public holidays of a place, by its codes (`GB`, `GB-SCT`)."""

    first: date | None
    last: date | None
    public: str
    written: str


PLACES: Mapping[str, str] = {
    "England": "GB-ENG",
    "Wales": "GB-WLS",
    "Scotland": "GB-SCT",
    "Northern Ireland": "GB-NIR",
    "Ireland": "IE",
}
"""Places whose public holidays can be asked for by name; any other by its code (ISO 3166)."""


def read_days_off(text: str, _: Measures) -> DaysOff:
    """`2026-12-25`, `2026-12-24 to 2027-01-02`, `public holidays in England`; raises Misread."""
    if text.lower().startswith(PUBLIC):
        place = text[len(PUBLIC) :].strip()
        code = next((code for name, code in PLACES.items() if name.lower() == place.lower()), place)
        if not re.fullmatch(r"[A-Z]{2}(-[A-Z0-9]{1,3})?", code):
            hint = "write " + ", ".join(PLACES) + ", or the code of a country such as FR"
            raise Misread(
                f'"{place}" is not a place whose public holidays are known', hint, len(text) - len(place), len(text)
            )
        return DaysOff(None, None, code, text)
    first, to, last = text.partition(" to ")
    try:
        start = date.fromisoformat(first.strip())
        end = date.fromisoformat(last.strip()) if to else start
    except ValueError:
        hint = "write a day such as 2026-12-25, or 2026-12-24 to 2027-01-02"
        raise Misread(f'"{text}" is neither a day nor a range of days', hint, 0, len(text)) from None
    if end < start or end - start > timedelta(days=366):
        raise Misread(f'"{text}" runs backwards, or over a year', "write the earlier day first", 0, len(text))
    return DaysOff(start, end, "", text)


_DAY = r"[0-9]{4}-[0-9]{2}-[0-9]{2}"
WrittenDays = Annotated[
    DaysOff, spelled(read_days_off, like(rf"{_DAY}(?: to {_DAY})?|[pP]ublic holidays in .+", "days"))
]


def _zone(text: str, _: Measures) -> ZoneInfo:
    try:
        return ZoneInfo(text)
    except (ValueError, OSError, KeyError):
        hint = "write the name of a time zone, such as Europe/London"
        raise Misread(f'there is no time zone called "{text}"', hint, 0, len(text)) from None


Zone = Annotated[ZoneInfo, spelled(_zone, like("[A-Za-z_]+(?:/[A-Za-z_+-]+)*[0-9]*"))]


class WorkingKitchen(Written):
    """When you work, and how much can go on at once: what a plan of the week goes by."""

    hours: Annotated[WorkingHours, such_as("{every day: 08:00-18:00, Sunday: off}")] = WorkingHours()
    """Your working hours by day of the week."""
    at_a_pinch: Annotated[WrittenHours | None, such_as("06:00-22:00")] = None
    """The hours you would work if you had to, on any day. Nothing is ever planned outside them. Left out: from 06:00 to
    22:00."""
    days_off: Annotated[
        tuple[WrittenDays, ...], ONE_OR_MORE, such_as("[2026-12-24 to 2026-12-27, public holidays in England]")
    ] = ()
    """Days on which you do not work, except at a pinch. Left out: there are none."""
    hands: Annotated[int, whole_number(1, 9), such_as("2")] = 1
    """How many people work at once."""
    mixers: Annotated[int, whole_number(1, 9), such_as("2")] = 1
    """How many mixers you have."""
    fridge: Annotated[int, whole_number(1, 99), such_as("3")] = 3
    """How many tiers or trays your fridge takes at once."""
    freezer: Annotated[YesNo, such_as("yes")] = False
    """Whether there is room in the freezer for cakes. If there is, the plan may bake as far ahead as the freezer
    keeps them."""
    oven_may_be_left: Annotated[YesNo, such_as("yes")] = False
    """Whether the oven may be on while nobody is in the kitchen."""
    spare: Annotated[Share | None, such_as("5 %")] = None
    """How much more of each ingredient to buy than your orders take, for what goes wrong. Left out: no more."""
    time_zone: Annotated[Zone | None, such_as("Europe/London")] = None
    """The time zone of the kitchen's clock, for the calendar. Left out: that of London."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""

    @property
    def pinch(self) -> Hours:
        """The hours in which anybody may work at all."""
        return self.at_a_pinch or AT_MOST

    @property
    def zone(self) -> ZoneInfo:
        """The time zone of its clock."""
        return self.time_zone or ZoneInfo("Europe/London")
