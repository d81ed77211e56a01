"""Steps, and the times they take, stand and keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar

from tinbook.models.reading import Text, Texts, WrittenLine, like, spelled
from tinbook.problems import nearest
from tinbook.units import WORDS, Measures, Misread, Span, patterns, read_number, read_span

DAY_MIN = 24 * 60
LONG = {name: days * DAY_MIN for one, days in (("day", 1), ("week", 7), ("month", 30)) for name in (one, one + "s")}
LONGEST_MIN = 365 * DAY_MIN


@dataclass(frozen=True, slots=True)
class Stand:
    """How long something stands or keeps: minutes, and as it was written."""

    minutes: float
    written: str


def read_stand(text: str, measures: Measures) -> Stand:
    """`12 h`, `45 min`, `2 days`, `3 weeks`, `2 months` of 30 days; raises Misread."""
    word = text.rpartition(" ")[2].lower()
    slip = word.isalpha() and word not in (*LONG, *WORDS) and nearest(word, [*LONG, *WORDS], 0.75)
    if slip in LONG:
        raise Misread(f'no unit called "{word}"', f'did you mean "{slip}"?', len(text) - len(word), len(text))
    if word not in LONG:
        span = read_span(text, ("time",), measures)
        if span.low != span.high:
            raise Misread("one time belongs here, not a range", "write the one that is safe", 0, len(text))
        return Stand(span.low.base, text)
    value, end = read_number(text, 0, "2 days")
    if text[end:].strip().lower() != word:
        raise Misread(f'"{text}" is not a time', "write 2 days, 3 weeks or 12 h", 0, len(text))
    minutes = value * LONG[word]
    if not 0 < minutes <= LONGEST_MIN:
        raise Misread(f'"{text}" is longer than a year, or nothing', "write 2 days, 3 weeks or 12 h", 0, len(text))
    return Stand(minutes, text)


def _minutes(text: str, measures: Measures) -> Span:
    return read_span(text, ("time",), measures)


Minutes = Annotated[Span, spelled(_minutes, like(patterns.TIME_SPAN, "time"))]
Standing = Annotated[Stand, spelled(read_stand, like(patterns.STANDING, "time to stand"))]


class Step(WrittenLine):
    """One step: what to do, hands-on and waiting time, and what done looks like.

    `ahead`: it may be done so long before; `stands`: what it makes must stand at least so long; `keeps`: it keeps
    until then. `called` names it for the `after` of others; without `after` it follows the step before it.
    """

    chief: ClassVar[str] = "do"

    do: Text
    hands_on: Minutes | None = None
    waiting: Minutes | None = None
    done: Text | None = None
    ahead: Standing | None = None
    stands: Standing | None = None
    keeps: Standing | None = None
    called: Text | None = None
    after: Texts = ()
    picture: Text | None = None
