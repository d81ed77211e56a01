"""Numbers in words, as notes write them, turned into digits: half a teaspoon, two and a half cups, three quarters of a
pound."""

from __future__ import annotations

import re

_UNITS = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen"
UNITS = {word: number for number, word in enumerate(f"{_UNITS} eighteen nineteen".split(), start=1)}
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
TENS = {word: 10 * number for number, word in enumerate(_TENS.split(), start=2)}
PARTS = {"half": "1/2", "quarter": "1/4", "third": "1/3", "three quarters": "3/4", "three-quarters": "3/4"} | {
    "two thirds": "2/3", "two-thirds": "2/3"
}  # fmt: skip

_ONE = "|".join(UNITS)
_TEN = "|".join(TENS)
_PART = "|".join(re.escape(part) for part in sorted(PARTS, key=len, reverse=True))
_WORDS = re.compile(
    rf"""
      \b(?P<dozen>half\ a\ dozen|an?\ dozen|dozen)\b
    | \b(?P<mixed>{_ONE}|an?|[0-9]+)\ and\ (?:an?\ )?(?P<more>{_PART})\b            # two and a half
    | \b(?:an?\ |one\ )?(?P<part>{_PART})(?:\ of)?(?:\ (?:an?|the))?(?=\s+[a-z])\b   # half a, three quarters of a
    | \b(?P<ten>{_TEN})(?:[ -](?P<unit>{_ONE}))?\b
    | (?<!the\ )(?<!good\ )(?<!each\ )\b(?P<one>{_ONE})\b(?=[\s-]+\w)(?!\s+(?:at|by|or|is|of)\b)
    """,
    re.VERBOSE | re.IGNORECASE,
)


def in_figures(text: str) -> str:
    """The text with each number in words written in digits; everything else stays as it is."""
    return _WORDS.sub(_figures, text)


def _figures(found: re.Match[str]) -> str:
    low = {name: (words or "").lower() for name, words in found.groupdict().items()}
    if low["dozen"]:
        return "6" if low["dozen"].startswith("half") else "12"
    if low["mixed"]:
        return f"{_whole(low['mixed'])} {PARTS[low['more']]}"
    if low["part"]:
        return PARTS[low["part"]]
    if low["ten"]:
        return str(TENS[low["ten"]] + UNITS.get(low["unit"], 0))
    return str(UNITS[low["one"]])


def _whole(word: str) -> str:
    return word if word.isdigit() else str(UNITS.get(word, 1))
