"""Temperatures named in a step: what to set the house's own oven to for each."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from tinbook.facts import Facts
from tinbook.models import Bake, Book, Mixture
from tinbook.plans.baking.oven import own_dial
from tinbook.plans.base.saying import Saying
from tinbook.units import Misread, patterns, read_heat

LEAST_C = 100.0
"""Anything cooler is the middle of a cake, a syrup or a cupboard, not an oven for baking."""
HEAT = re.compile(
    rf"(?<![\w.,–-])(?:(?:fan\s)?\d{{2,3}}\s?(?:{patterns.DEGREES}|[CF])\b(?:\s(?:fan|convection)\b)?|"
    r"gas\s(?:mark\s)?(?:[¼½]|1/[24]|\d{1,2})(?![\w/]))",
    re.IGNORECASE,
)
OVEN = re.compile(r"\bovens?\b", re.IGNORECASE)
SENTENCE = re.compile(r".+?(?:[.;!?](?=\s|$)|$)", re.DOTALL)
OTHER_SPELLING = re.compile(r"[\s,/(]*(?:or\s)?")
"""What comes between a temperature and the same one in other units."""


class DialHere(NamedTuple):
    """The dial setting for the temperature from `start` to `end` of a text."""

    start: int
    end: int
    dial: Saying


class HeatHere(NamedTuple):
    """An oven temperature from `start` to `end` of a text, °C without fan."""

    start: int
    end: int
    celsius: float


def heats_in(text: str, bake: Bake | None) -> Iterator[HeatHere]:
    """Each oven temperature in a text: those in a sentence that names the oven, and the bake's own. Of one given twice,
    such as `180 °C (gas 4)`, the first."""
    for sentence in SENTENCE.finditer(text):
        of_oven, last = OVEN.search(sentence[0]), -1
        for found in HEAT.finditer(text, *sentence.span()):
            again = last >= 0 and OTHER_SPELLING.fullmatch(text, last, found.start())
            last = found.end()
            try:
                celsius = read_heat(found[0]).celsius
            except Misread:
                continue
            meant = of_oven or (bake is not None and abs(celsius - bake.oven.celsius) < 0.5)
            if meant and not again and celsius >= LEAST_C:
                yield HeatHere(found.start(), last, celsius)


def dials_in(text: str, bake: Bake | None, book: Book, facts: Facts) -> Iterator[DialHere]:
    """The dial setting for each oven temperature in a text; none where the house's oven is as the text says."""
    for heat in heats_in(text, bake):
        dial = own_dial(heat.celsius, book, facts)
        if dial is not None:
            yield DialHere(heat.start, heat.end, dial)


def heating(mixture: Mixture) -> tuple[int, float] | None:
    """The step that heats the oven, by its place, and to how many °C without fan; None if no step says so."""
    for place, step in enumerate(mixture.method):
        for heat in heats_in(step.do, mixture.bake):
            return place, heat.celsius
    return None
