"""What this package's readers accept, as regular expressions for programs that cannot call them, such as an editor.

JavaScript and Python read them alike: no names, no flags, so letters are given in both cases. A pattern refuses nothing
its reader accepts; the reader refuses more, since a pattern cannot count.
"""

from __future__ import annotations

from collections.abc import Iterable

from tinbook.units.numerals import DIGITS
from tinbook.units.words import UNITS, WORDS

_ONE = DIGITS.removeprefix("0-9")


def any_case(word: str) -> str:
    """A word in upper or lower case: `[cC][mM]`."""
    letters = (f"[{sign.lower()}{sign.upper()}]" if sign.isalpha() else _escaped(sign) for sign in word)
    return "".join(letters)


def _escaped(sign: str) -> str:
    return rf"\{sign}" if sign in r"\^$.*+?()[]{}|/" else sign


def either(words: Iterable[str]) -> str:
    """Any one of some words, in any case; longer ones first."""
    return f"(?:{'|'.join(any_case(word) for word in sorted(words, key=lambda word: (-len(word), word)))})"


def whole(pattern: str) -> str:
    """The whole of a text, spaces around it allowed."""
    return rf"^\s*(?:{pattern})\s*$"


NUMBER = rf"(?:[0-9]+(?:[,.][0-9]+)*(?:\s+[0-9]+)?(?:\s*[/⁄]\s*[0-9]+)?(?:\s*[{_ONE}])?|[{_ONE}])"
_OWNERS = ("us", "american", "uk", "imperial", "british", "metric", "australian")
_WHOSE = rf"(?:{any_case('level')}\s+)?(?:{either(_OWNERS)}\s+)?"
_FLUID = rf"{any_case('fl')}(?:{any_case('uid')})?\.?\s*(?:{any_case('oz')}|{any_case('ounce')}[sS]?)"
DEGREES = rf"(?:[°º˚]|{any_case('deg')}(?:{any_case('ree')}[sS]?)?)\s*{either(('celsius', 'fahrenheit', 'c', 'f'))}"


def _units(*dimensions: str) -> str:
    """The words for units of these dimensions."""
    words = either(word for word, unit in WORDS.items() if UNITS[unit] in dimensions)
    more = [_FLUID] if "volume" in dimensions else []
    more += [DEGREES] if "temperature" in dimensions else []
    return rf"{_WHOSE}(?:{'|'.join((*more, words))})\.?"


def _amount(*dimensions: str) -> str:
    """A quantity, perhaps with a smaller part: `1 lb 4 oz`."""
    part = rf"{NUMBER}\s*{_units(*dimensions)}"
    return rf"{part}(?:\s*{part})?"


_TO = rf"\s*(?:[-‐‑‒–—−]|{any_case('to')})\s*"
MASS, VOLUME, LENGTH, TIME = (_amount(dimension) for dimension in ("mass", "volume", "length", "time"))
TIME_SPAN = rf"{TIME}(?:{_TO}{TIME})?|{NUMBER}{_TO}{TIME}"
STANDING = rf"{TIME_SPAN}|{NUMBER}\s*{either(('day', 'days', 'week', 'weeks'))}"
PERCENT = rf"{NUMBER}\s*(?:%|{any_case('per')}\s*{any_case('cent')})"
HEAT_TEXT = rf"^(?=[\s\S]*[{DIGITS}])(?=[\s\S]*(?:[cCfF°º˚]|{either(('gas', 'mark', 'regulo'))}))"
"""An oven's temperature: a figure, and the scale it is on."""
LINE_TEXT = (
    rf"^(?!\s*{NUMBER}\s*(?:{_units('mass', 'volume', 'length', 'time', 'temperature')})?\s*$)\s*[{DIGITS}][\s\S]*\S"
)
"""An amount and what it is of: it starts with a figure, and goes on with more than a unit."""
