"""What a pack holds, and how much there is of something: `250 g`, `1 l`, `6`, `4 x 250 g`."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from typing import Annotated, Any

from tinbook.models.reading import spelled
from tinbook.units import Measures, Misread, Quantity, patterns, read_quantity

BY_KIND = {"mass": "weight", "volume": "volume", "length": "length", "count": "number"}
"""The kinds of amount, in words."""
NEVER = "none"
MOST_PACKS = 999
_TIMES = re.compile(r"\s*([0-9]{1,3})\s*[x×]\s*(?=\S)")
_METRES = re.compile(r"\s*([0-9]{1,3}(?:\.[0-9]+)?)\s*m(?:et(?:re|er)s?)?\s*")
"""Nothing on a shelf is measured in minutes."""


@dataclass(frozen=True, slots=True)
class Pack:
    """What one pack holds: g, ml, mm or pieces, by its `kind`; and as it was written."""

    amount: float
    kind: str
    written: str


@dataclass(frozen=True, slots=True)
class Stocked:
    """So many times so much: `4 x 250 g`, or once `500 g`. `each` in g, ml, mm or pieces, by its `kind`."""

    times: int
    each: float
    kind: str
    written: str

    @property
    def total(self) -> float:
        """All of it."""
        return self.times * self.each


def _quantity(text: str, measures: Measures, want: Collection[str], zero: bool = False) -> Quantity:
    metres = _METRES.fullmatch(text) if "length" in want else None
    if metres:
        return read_quantity(f"{float(metres[1]) * 100.0:g} cm", measures, want, zero=zero)
    return read_quantity(text, measures, want, zero=zero)


def read_pack(text: str, measures: Measures, want: Collection[str] = ("mass", "volume", "count")) -> Pack:
    """`250 g`, `1 l`, `6` of something that is counted; raises Misread."""
    found = _quantity(text, measures, want)
    if found.dimension == "count" and found.base % 1:
        raise Misread(f'"{text}" is not a whole number', "write how many are in it, such as 6", 0, len(text))
    if found.base < 1.0:
        raise Misread(f'"{text}" is too little for a pack', "packs hold 1 g, 1 ml or one piece at least", 0, len(text))
    return Pack(found.base, found.dimension, text)


def _pack_or_none(text: str, measures: Measures) -> Pack:
    return Pack(0.0, NEVER, text) if text == NEVER else read_pack(text, measures)


def _any_pack(text: str, measures: Measures) -> Pack:
    return read_pack(text, measures, ("count", "length"))


def read_amount(text: str, measures: Measures) -> Stocked:
    """`500 g`, `2 l`, `6`, `3 m`, `4 x 250 g`, and `0` for nothing; raises Misread."""
    times, at = 1, 0
    if found := _TIMES.match(text):
        times, at = int(found[1]), found.end()
    try:
        one = _quantity(text[at:], measures, tuple(BY_KIND), zero=True)
    except Misread as error:
        raise type(error)(error.message, error.hint, error.start + at, error.end + at) from None
    if one.dimension == "count" and one.base % 1:
        hint = "write a whole number, or its weight"
        raise Misread(f'"{text}" is not a whole number', hint, at, len(text))
    return Stocked(times, one.base, one.dimension, text)


def _like(*parts: str) -> dict[str, Any]:
    return {"type": ["string", "number"], "pattern": patterns.whole("|".join(parts))}


_METRE = r"[0-9.]+\s*m(?:et(?:re|er)s?)?"
_EITHER = (patterns.MASS, patterns.VOLUME, patterns.LENGTH, _METRE, "[0-9]+")
PackOfFood = Annotated[Pack, spelled(_pack_or_none, _like(patterns.MASS, patterns.VOLUME, "[0-9]+", NEVER))]
PackOfThings = Annotated[Pack, spelled(_any_pack, _like(patterns.LENGTH, _METRE, "[0-9]+"))]
HowMuch = Annotated[Stocked, spelled(read_amount, _like(rf"(?:[0-9]+\s*[x×]\s*)?(?:{'|'.join(_EITHER)})"))]
