"""The calendar file: RFC 5545, read again by a second library, over a clock change and New Year's night."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from io import StringIO
from zoneinfo import ZoneInfo

import pytest
import vobject
from dateutil.tz import tzical
from icalendar import Calendar
from tests.plans.orders.conftest import LIGHT, Weeks, ordered, weeks, worked

from tinbook.models.kitchen import WorkingKitchen
from tinbook.pages.orders.calendar import calendar_of, uid_of
from tinbook.pages.orders.plan_text import task_words
from tinbook.plans.base.saying import saying
from tinbook.plans.orders.planned import PlannedTask, plan_of
from tinbook.plans.orders.tasks import Task

__all__ = ["ordered", "weeks", "worked"]
LONDON = ZoneInfo("Europe/London")
STAMP = datetime(2026, 11, 30, 8)


def task(start: datetime, key: str = "quay/rope", minutes: int = 60) -> PlannedTask:
    said = saying("task_technique", technique="Lay a rope; twist it, \\ then “rest” – " + "long " * 20)
    return PlannedTask(
        task=Task(key=key, orders=("quay",), said=said, hands_min=minutes, steps=("Roll.", "Twist, twice.")),
        start=start,
    )


def events(raw: bytes) -> list[vobject.base.Component]:
    return list(vobject.readOne(raw.decode()).vevent_list)


def test_a_second_library_reads_the_same_plan(weeks: Weeks) -> None:
    plan = plan_of(weeks(light=LIGHT), WorkingKitchen(), STAMP)
    raw = calendar_of(plan.placed, {"light": "harbour light"}, LONDON, STAMP, alarm_min=10)
    busy = [each for each in plan.placed if each.task.hands_min]
    read = events(raw)
    assert [event.dtstart.value.replace(tzinfo=None) for event in read] == [each.start for each in busy]
    assert [event.summary.value for event in read] == [f"{task_words(each)} [harbour light]" for each in busy]
    assert all(event.valarm.trigger.value == timedelta(minutes=-10) for event in read)
    assert {each.value for each in vobject.readOne(raw.decode()).vtimezone.contents["tzid"]} == {"Europe/London"}


def test_lines_end_and_fold_as_the_standard_says() -> None:
    """RFC 5545, 3.1: lines of at most 75 octets, each ending in CRLF."""
    raw = calendar_of([task(datetime(2026, 12, 5, 9))], {"quay": "quay – the far one"}, LONDON, STAMP)
    lines = raw.split(b"\r\n")
    assert lines[-1] == b"" and all(len(line) <= 75 and b"\n" not in line and b"\r" not in line for line in lines)
    assert Calendar.from_ical(raw).to_ical() == raw


@pytest.mark.parametrize(
    ("start", "utc"),
    [
        # clocks go back on 25 October 2026 and forward on 28 March 2027: GOV.UK, https://www.gov.uk/when-do-the-clocks-change
        (datetime(2026, 10, 24, 9), datetime(2026, 10, 24, 8, tzinfo=UTC)),
        (datetime(2026, 10, 26, 9), datetime(2026, 10, 26, 9, tzinfo=UTC)),
        (datetime(2027, 3, 27, 9), datetime(2027, 3, 27, 9, tzinfo=UTC)),
        (datetime(2027, 3, 29, 9), datetime(2027, 3, 29, 8, tzinfo=UTC)),
        (datetime(2026, 12, 31, 23, 30), datetime(2026, 12, 31, 23, 30, tzinfo=UTC)),
    ],
)
def test_the_kitchens_clock_is_meant(start: datetime, utc: datetime) -> None:
    raw = calendar_of([task(start)], {"quay": "quay"}, LONDON, STAMP)
    (event,) = events(raw)
    told = raw.decode().replace("\r\n ", "").replace("\r\n", "\n")
    zone = tzical(StringIO(told[told.index("BEGIN:VTIMEZONE") : told.index("BEGIN:VEVENT")])).get("Europe/London")
    begins, ends = (each.value.replace(tzinfo=None) for each in (event.dtstart, event.dtend))
    assert begins == start and ends == start + timedelta(hours=1)
    assert begins.replace(tzinfo=zone).astimezone(UTC) == utc


def test_a_task_keeps_its_name_when_the_plan_changes() -> None:
    """Read twice, a calendar makes no doubles: the UID is the task's, not the hour's."""
    one, other = (
        events(calendar_of([task(datetime(2026, 12, day, 9))], {"quay": "q"}, LONDON, STAMP)) for day in (5, 6)
    )
    assert one[0].uid.value == other[0].uid.value == uid_of("quay/rope") != uid_of("pier/rope")


def test_what_takes_no_hands_is_no_event() -> None:
    raw = calendar_of([task(datetime(2026, 12, 5, 9), minutes=0)], {"quay": "quay"}, LONDON, STAMP)
    assert b"VEVENT" not in raw
