"""A plan of the week as a calendar file: RFC 5545, by the icalendar package."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import UTC, date, datetime, timedelta
from hashlib import blake2b
from zoneinfo import ZoneInfo

from tinbook.pages.orders.plan_text import task_words
from tinbook.plans.orders.planned import PlannedTask


def calendar_of(
    shown: Sequence[PlannedTask],
    handles: Mapping[str, str],
    zone: ZoneInfo,
    stamp: datetime,
    alarm_min: int | None = None,
) -> bytes:
    """One event for each task that keeps hands busy, and a UID for each that stays when the plan changes, so that a
    calendar which has read it before makes no doubles. `stamp`: now, by the kitchen's clock. ImportError without the
    library."""
    from icalendar import Alarm, Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", "-//Tinbook//Plan of the week//EN")
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    for each in shown:
        if not each.task.hands_min:
            continue
        event = Event()
        event.add("uid", uid_of(each.task.key))
        event.add("dtstamp", stamp.replace(tzinfo=zone).astimezone(UTC))
        event.add("dtstart", each.start.replace(tzinfo=zone))
        event.add("dtend", each.hands_end.replace(tzinfo=zone))
        event.add("summary", f"{task_words(each)} [{', '.join(handles[slug] for slug in each.task.orders)}]")
        if each.task.steps:
            event.add("description", "\n".join(each.task.steps))
        if alarm_min is not None:
            alarm = Alarm()
            alarm.add("action", "DISPLAY")
            alarm.add("description", task_words(each))
            alarm.add("trigger", timedelta(minutes=-alarm_min))
            event.add_component(alarm)
        calendar.add_component(event)
    # a zone told from 1970 on is long, and read wrongly by some
    years = [each.start.year for each in shown] or [stamp.year]
    calendar.add_missing_timezones(date(min(years), 1, 1), date(max(years) + 2, 1, 1))
    return bytes(calendar.to_ical())


def uid_of(key: str) -> str:
    """The same for the same task of the same orders, whatever day it falls on."""
    return f"{blake2b(key.encode(), digest_size=12).hexdigest()}@tinbook.invalid"
