"""Steps: how long they take, and how long the result stands and keeps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar

from tinbook.models.reading import Text, Texts, WrittenLine, like, one_of, spelled, such_as
from tinbook.problems import nearest
from tinbook.units import WORDS, Measures, Misread, Span, patterns, read_number, read_span

DAY_MIN = 24 * 60
LONG = {name: days * DAY_MIN for one, days in (("day", 1), ("week", 7), ("month", 30)) for name in (one, one + "s")}
LONGEST_MIN = 365 * DAY_MIN
FRIDGE, FREEZER = "fridge", "freezer"


@dataclass(frozen=True, slots=True)
class Stand:
    """How long something stands or keeps: minutes, and the text as written."""

    minutes: float
    written: str


def read_stand(text: str, measures: Measures) -> Stand:
    """`12 h`, `45 min`, `2 days`, `3 weeks`, `2 months` of 30 days; raises Misread."""
    word = text.rpartition(" ")[2].lower()
    slip = word.isalpha() and word not in (*LONG, *WORDS) and nearest(word, [*LONG, *WORDS], 0.75)
    if slip in LONG:
        raise Misread(f'there is no unit called "{word}"', f'did you mean "{slip}"?', len(text) - len(word), len(text))
    if word not in LONG:
        span = read_span(text, ("time",), measures)
        if span.low != span.high:
            raise Misread("this takes one time, not a range", "write whichever is safer", 0, len(text))
        return Stand(span.low.base, text)
    value, end = read_number(text, 0, "2 days")
    if text[end:].strip().lower() != word:
        raise Misread(f'"{text}" is not a time', "write 2 days, 3 weeks or 12 h", 0, len(text))
    minutes = value * LONG[word]
    if not 0 < minutes <= LONGEST_MIN:
        raise Misread(f'"{text}" is not between one minute and a year', "write 2 days, 3 weeks or 12 h", 0, len(text))
    return Stand(minutes, text)


def _minutes(text: str, measures: Measures) -> Span:
    return read_span(text, ("time",), measures)


Minutes = Annotated[Span, spelled(_minutes, like(patterns.TIME_SPAN, "time"))]
Standing = Annotated[Stand, spelled(read_stand, like(patterns.STANDING, "time to stand"))]


class Step(WrittenLine):
    """One step: what to do, how long it takes, and how you know it is done. If you only have the words, write them
    without a key.
    """

    chief: ClassVar[str] = "do"

    do: Annotated[Text, such_as("Beat until pale and light.")]
    """What to do, in a sentence or two."""
    hands_on: Annotated[Minutes | None, such_as("5 min", "5-8 min")] = None
    """How long you are busy with it. Left out: no working time is counted."""
    waiting: Annotated[Minutes | None, such_as("25-30 min", "48 h")] = None
    """How long it bakes, dries, chills or rests without you. The page gives it a timer. Left out: there is nothing to
    wait for."""
    waits_in: Annotated[str | None, one_of(FRIDGE, FREEZER), such_as(FRIDGE)] = None
    """Where it waits, if it takes up room there. Left out: it takes up room in neither."""
    done: Annotated[Text | None, such_as("A thumbnail leaves no mark.")] = None
    """How you know the step is done. Left out: nothing is shown."""
    ahead: Annotated[Standing | None, such_as("2 days", "2 weeks")] = None
    """How far ahead you can do it. Left out: do it on the day."""
    stands: Annotated[Standing | None, such_as("24 h")] = None
    """How long the result has to stand before you go on. Left out: you can go straight on."""
    keeps: Annotated[Standing | None, such_as("14 days")] = None
    """How long the result will keep. Left out: the page does not say."""
    called: Annotated[Text | None, such_as("paste")] = None
    """A short name, for its timer and for other steps that come `after` it. Left out: its first few words."""
    after: Annotated[Texts, such_as("[buoys, paste]")] = ()
    """In a technique, the steps that have to be done first, by their `called` names. Left out: the step before it."""
    picture: Annotated[Text | None, such_as("rope-twist.svg")] = None
    """In a technique, a picture to show beside the step. List its file under `pictures` too. Left out: there is
    none."""
