"""What plans/orders says: the tasks of a week, and when they are."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date, datetime

from tinbook.models.keeping import MONTHS
from tinbook.models.kitchen import WEEKDAYS
from tinbook.pages.spelling import formats


def day(when: date) -> str:
    """`Sat 5 Dec`."""
    return f"{WEEKDAYS[when.weekday()][:3]} {when.day} {MONTHS[when.month - 1][:3]}"


def clock(when: datetime) -> str:
    """`09:30`."""
    return f"{when.hour:02}:{when.minute:02}"


def moment(when: datetime) -> str:
    """`Sat 5 Dec, 11:00`."""
    return f"{day(when)}, {clock(when)}"


def lasts(minutes: float) -> str:
    """`35 min`, `1 h 40 min`, `2 days 4 h`: from two days on, in whole hours."""
    hours, rest = divmod(round(minutes), 60)
    if hours >= 48:
        days, hours = divmod(hours + (rest >= 30), 24)
        told = f"{days} days"
        return f"{told} {formats.with_unit(str(hours), 'h')}" if hours else told
    parts = [formats.with_unit(str(hours), "h")] if hours else []
    parts += [formats.with_unit(str(rest), "min")] if rest or not hours else []
    return " ".join(parts)


def _deliver(handle: str, there_min: float) -> str:
    there = f", including {lasts(there_min)} to put it together there" if there_min else ""
    return f"Deliver {handle}{there}"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "task_make": "Make {mixture}",
    "task_technique": "{technique}",
    "task_mix": "Mix {mixture} for load {load}",
    "task_bake": "Bake load {load}",
    "task_cool": "Turn out and wrap {mixture} from load {load}",
    "task_deliver": _deliver,
    "task_hand_over": "Collection: {handle}",
    "task_class": "Class: {handle}",
    "task_piece": "Demo piece: {technique}, as far as step {step}",
    "task_lay_out": "Lay out for {people}: {technique}",
}
