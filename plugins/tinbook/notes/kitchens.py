"""Which country's kitchen a note comes from: which cups and spoons it means, and what a pint holds."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.units.kitchen import GRAMS_PER_OUNCE, ML_PER_UK_PINT, ML_PER_US_PINT


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """`cup`, `tablespoon` and `fluid_ounce` are the words to write for them, "" if that is unknown.

    `stick_g`: the weight of a stick of butter, 0 if there are none; `pint_ml`: 0 if that is unknown.
    """

    name: str
    cup: str = ""
    tablespoon: str = "tbsp"
    teaspoon: str = "tsp"
    fluid_ounce: str = ""
    pint_ml: float = 0.0
    stick_g: float = 0.0
    fahrenheit: bool = False


UNKNOWN = Kitchen(name="")
KITCHENS: Mapping[str, Kitchen] = {
    "UK": Kitchen(name="UK", fluid_ounce="UK fl oz", pint_ml=ML_PER_UK_PINT),
    "US": Kitchen(
        name="US",
        cup="US cup",
        tablespoon="US tbsp",
        teaspoon="US tsp",
        fluid_ounce="US fl oz",
        pint_ml=ML_PER_US_PINT,
        stick_g=4 * GRAMS_PER_OUNCE,
        fahrenheit=True,
    ),
    "metric": Kitchen(name="metric", cup="metric cup", tablespoon="metric tbsp", teaspoon="metric tsp"),
    "Australian": Kitchen(name="Australian", cup="metric cup", tablespoon="Australian tbsp", teaspoon="Australian tsp"),
}
"""By the option's name for it. A stick of butter is a quarter of a pound: common practice, no source."""
# "fan-forced" is Australia or New Zealand, whose cups agree and whose tablespoons do not
_SOUTHERN = Kitchen(name="southern", cup="metric cup", tablespoon="", teaspoon="metric tsp")

_MARKS: Mapping[str, re.Pattern[str]] = {
    "Australian": re.compile(r"\baustralian\b|\b20 ?ml (?:tbsp|tablespoon)", re.IGNORECASE),
    "southern": re.compile(r"\bfan[- ]forced\b", re.IGNORECASE),
    "metric": re.compile(r"\bmetric cups?\b|\b(?:1 cup|cup) ?(?:=|is|of|\() ?250 ?ml", re.IGNORECASE),
    "US": re.compile(
        r"\b(?:all[- ]purpose|confectioners'?|confectioner’s|powdered sugar|heavy (?:whipping )?cream|cornstarch"
        r"|self-rising|kosher|superfine|cake flour|american cups?|us cups?"
        r"|sticks?[ )]+(?:of )?(?:(?:un)?salted )?butter|half[- ]and[- ]half)\b|\b(?:3[0-9]{2}"
        r"|4[0-9]{2}) ?°? ?F\b|[0-9½¼¾⅓⅔] ?c\. ",
        re.IGNORECASE,
    ),
    "UK": re.compile(
        r"\bgas(?: mark)? ?[0-9¼½]|\b(?:self[- ]raising|caster|castor|icing sugar|cornflour|bicarbonate|bicarb"
        r"|black treacle|golden syrup|double cream|sultanas)\b",
        re.IGNORECASE,
    ),
}
_BRITISH_ALONE = re.compile(r"\bgas(?: mark)? ?[0-9¼½]", re.IGNORECASE)


def kitchen_of(text: str) -> Kitchen:
    """The kitchen a note comes from, as far as its own words tell: UNKNOWN if they do not, or disagree.

    British and Australian notes share most words (caster sugar, self-raising flour), and cups mean two things there.
    """
    marked = {name for name, marks in _MARKS.items() if marks.search(text)}
    if "Australian" in marked:
        return KITCHENS["Australian"] if "US" not in marked else UNKNOWN
    if "metric" in marked:
        return KITCHENS["metric"] if "US" not in marked else UNKNOWN
    if "southern" in marked:
        return _SOUTHERN if "US" not in marked else UNKNOWN
    if "US" in marked:
        return KITCHENS["US"] if "UK" not in marked else UNKNOWN
    return KITCHENS["UK"] if "UK" in marked else UNKNOWN
