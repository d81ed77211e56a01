"""Steps, and the times they take, stand and keep."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar

from tinbook.models.reading import Text, Texts, WrittenLine, like, spelled, such_as
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
    """One step: what to do, how long it takes, and what done looks like. The text alone is enough."""

    chief: ClassVar[str] = "do"

    do: Annotated[Text, such_as("Beat until pale and light.")]
    """What to do, in a sentence or two."""
    hands_on: Annotated[Minutes | None, such_as("5 min", "5-8 min")] = None
    """How long your hands are busy. Left out: the step counts for no time."""
    waiting: Annotated[Minutes | None, such_as("25-30 min", "48 h")] = None
    """How long it bakes, dries, chills or rests by itself. The page has a timer for it. Left out: there is no wait."""
    done: Annotated[Text | None, such_as("A thumbnail leaves no mark.")] = None
    """How you know that the step is done. Left out: the step ends with its work."""
    ahead: Annotated[Standing | None, such_as("2 days", "2 weeks")] = None
    """How long beforehand it may be done. Left out: it is done on the day."""
    stands: Annotated[Standing | None, such_as("24 h")] = None
    """How long what it makes must stand, at least, before the next step uses it. Left out: you go straight on."""
    keeps: Annotated[Standing | None, such_as("14 days")] = None
    """How long what it makes keeps. Left out: nothing is said of that."""
    called: Annotated[Text | None, such_as("paste")] = None
    """A short name, by which other steps can say that they come `after` it. Left out: it has none."""
    after: Annotated[Texts, such_as("[buoys, paste]")] = ()
    """The steps that have to be done first, by their `called`. Left out: it follows the step before it."""
    picture: Annotated[Text | None, such_as("rope-twist.svg")] = None
    """The file in `recipes/pictures` that is shown beside the step. Left out: the step has no picture."""
