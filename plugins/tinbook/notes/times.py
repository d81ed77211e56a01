"""Times as notes write them, read whole or not at all: 1 hour 10 minutes, 1 hr 30, 1h10, 2½-3 hours, an hour."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.notes.amounts import NUM
from tinbook.notes.numbers import in_figures
from tinbook.units import Misread, read_number

LONGEST_MIN = 7 * 24 * 60

_H = r"(?:hours?|hrs?|h)(?![^\W\d_])\.?"
_M = r"(?:minutes?|mins?|min|m|')(?![^\W\d_])\.?"
# what must not follow the figure in "1 hr 30" if it is minutes
_NO_UNIT = r"(?!\s*[-–]?\s*[.,]?[0-9°]|\s*(?:°|º|deg|c\b|f\b|cm|in\b|g\b|k?g|ml|tins?|h|x\b|per|more))"


def _one(name: str) -> str:
    """One time: its hours, the minutes after them, or minutes alone, in groups that begin with `name`."""
    after = rf"(?:\s*,?\s*(?:and\s+)?(?P<{name}m>[0-9]{{1,2}})(?:\s*{_M}|{_NO_UNIT}))?"
    return rf"(?:(?P<{name}h>{NUM})\s*-?\s*{_H}{after}|(?P<{name}o>{NUM})\s*-?\s*{_M})"


_TO = r"\s*(?:[-‐‑‒–—−]|to\b|or\b|until\b)\s*"
_TIME = re.compile(
    rf"(?<![\w.,/]){_one('a')}(?:{_TO}{_one('b')})?|(?<![\w.,/])(?P<low>{NUM}){_TO}{_one('c')}", re.IGNORECASE
)
_WORDS = (
    (re.compile(r"\b(?:an|one|1) hour and an? half\b", re.IGNORECASE), "90 minutes"),
    (re.compile(r"\b(?:an|one|1) hour and an? quarter\b", re.IGNORECASE), "75 minutes"),
    (re.compile(r"\b(?:an|one|1) hour and three[- ]quarters\b", re.IGNORECASE), "105 minutes"),
    (re.compile(r"\b(?:three[- ]quarters of an|3/4 of an|¾ of an) hour\b", re.IGNORECASE), "45 minutes"),
    (re.compile(r"\b(?:a )?quarter of an hour\b", re.IGNORECASE), "15 minutes"),
    (re.compile(r"\b(?:half an|half a|a half) ?hour\b", re.IGNORECASE), "30 minutes"),
    (re.compile(r"\b(\w+) hours? and an? half\b", re.IGNORECASE), r"\1 and a half hours"),
    (re.compile(r"\b(\w+) hours? and an? quarter\b", re.IGNORECASE), r"\1 and a quarter hours"),
    (re.compile(r"\ban hour\b", re.IGNORECASE), "1 hour"),
)
_MORE_AFTER = re.compile(
    r"^\s*(?:,?\s*(?:or|and)\s+(?:a\s+little|a\s+bit|so|more|over|longer|rather"
    r"|even|thereabouts)\b|per\b|for each|each\b|a pound|to the pound"
    r"|more\b|longer\b|extra\b|\+|plus\b|and upwards|or so\b|at least\b)",
    re.IGNORECASE,
)
_MORE_BEFORE = re.compile(
    r"(?:\b(?:at least|up to|no more than|not more than|under|over|less than"
    r"|more than|nearly|almost|a further|further|another|extra|every"
    r"|another|after|after about|last|first|final|remaining|within|rather over"
    r"|from)\s+(?:about\s+)?|\+\s*|\bhours?\s+and\s+)$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedTime:
    """From `low` to `high` minutes; `whole`: whether the words round it leave the time as it is."""

    low: float
    high: float
    start: int
    end: int
    written: str
    whole: bool = True

    @property
    def text(self) -> str:
        """In the book's spelling, in minutes."""
        return f"{self.low:g} min" if self.low == self.high else f"{self.low:g}-{self.high:g} min"


def plain(text: str) -> str:
    """The text with its numbers in digits and hours in words as minutes; places are those of this text."""
    for words, figures in _WORDS:
        text = words.sub(figures, text)
    return in_figures(text)


def times(text: str) -> Iterator[NotedTime]:
    """Each time in a plain text, in order."""
    for found in _TIME.finditer(text):
        try:
            low, high = _span(found)
        except Misread:
            continue
        if 0 < low <= high <= LONGEST_MIN:
            whole = not (
                _MORE_AFTER.match(text[found.end() : found.end() + 40])
                or _MORE_BEFORE.search(text[max(0, found.start() - 40) : found.start()])
            )
            yield NotedTime(
                low=round(low, 1),
                high=round(high, 1),
                start=found.start(),
                end=found.end(),
                written=found[0].strip(),
                whole=whole,
            )


def _span(found: re.Match[str]) -> tuple[float, float]:
    if found["low"]:
        high = _minutes(found, "c")
        # "2½-3 hours": the later unit counts for both; in "1-1 hr 30" too
        return _number(found["low"]) * (60 if found["ch"] else 1), high
    low = _minutes(found, "a")
    return low, (_minutes(found, "b") if found["bh"] or found["bo"] else low)


def _minutes(found: re.Match[str], name: str) -> float:
    if found[f"{name}o"]:
        return _number(found[f"{name}o"])
    return _number(found[f"{name}h"]) * 60 + float(found[f"{name}m"] or 0)


def _number(text: str) -> float:
    value, end = read_number(text, 0)
    if end < len(text.rstrip()):
        raise Misread(f'"{text}" is not a number', "", 0, len(text))
    return value
