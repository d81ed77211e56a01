"""The oven temperature as notes give it: one temperature in several units, each checked against the others."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.units import FAN_DIFFERENCE_C, celsius, gas_mark_celsius

APART_C = 12.0
"""Books round a temperature to 5 or 10 °C, a gas mark or 25 °F: figures further apart are two temperatures."""
COOLEST_C, HOTTEST_C = 100.0, 260.0
FAHRENHEIT_FROM = 250.0

_FAN = r"(?:\s*\(?\s*(?P<fan>fan(?:[- ](?:forced|assisted|bake|oven))?|convection)\b(?!\s*:?\s*[0-9]{3}(?!\s*min))\)?)?"
_HEAT = re.compile(
    rf"(?P<before>\b(?:fan|convection)(?:\s+oven)?:?\s+)?"
    rf"(?:\bgas(?:\s*mark)?\.?\s*(?:no\.?\s*)?(?P<gas>1/4|1/2|[¼½]|10|[1-9])(?:\s*[-–]\s*[0-9])?(?![0-9])"
    rf"|\b(?P<mark>(?:mark|regulo)\s*[0-9])\b"
    rf"|(?<![\w.,])(?P<number>[0-9]{{2,3}})(?:\s*[-–]\s*[0-9]{{2,3}})?\s*(?P<degree>°"
    rf"|º|˚|deg(?:rees)?\b\.?)?\s*(?:(?P<unit>c|f|celsius|centigrade|fahrenheit)(?![^\W\d_])\.?)?{_FAN})",
    re.IGNORECASE,
)
_RANGE = re.compile(r"[0-9]\s*[-–]\s*[0-9]")
WORDS = re.compile(
    r"\b(?:a\s+|an\s+|in\s+a\s+)?(?:very\s+|rather\s+|fairly\s+)?(?:cool|slow"
    r"|warm|moderate|moderately hot|steady|hot|quick|brisk|gentle|low)\s+oven\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class OvenHeat:
    """One temperature as written: `text` in the book's spelling, "" if its unit is missing; `celsius`: without a
    fan."""

    text: str
    celsius: float
    written: str
    rank: int


def heats(text: str, fahrenheit: bool) -> Iterator[OvenHeat]:
    """Each temperature in a text. `fahrenheit`: bare degrees are °F, as in the note's kitchen."""
    for found in _HEAT.finditer(text):
        if found["gas"] or found["mark"]:
            mark = {"¼": "1/4", "½": "1/2"}.get(found["gas"] or "", found["gas"] or (found["mark"] or "")[-1])
            value = {"1/4": 0.25, "1/2": 0.5}.get(mark) or float(mark)
            if not value:
                continue  # no oven has a mark 0
            spelled = "" if _RANGE.search(found[0]) else f"gas mark {mark}"
            yield OvenHeat(spelled, gas_mark_celsius(value), found[0].strip(), 3)
            continue
        heat = _degrees(found, fahrenheit)
        if heat is not None and (not heat.text or COOLEST_C <= heat.celsius <= HOTTEST_C + FAN_DIFFERENCE_C):
            yield heat


def _degrees(found: re.Match[str], fahrenheit: bool) -> OvenHeat | None:
    number, unit = float(found["number"]), (found["unit"] or "")[:1].upper()
    fan = bool(found["fan"] or found["before"])
    if not (unit or found["degree"] or fan) or number < COOLEST_C:
        return None
    if not unit and found["degree"] and fahrenheit and number >= FAHRENHEIT_FROM:
        unit = "F"
    written = found[0].strip()
    if not unit or _RANGE.search(found[0]):
        return OvenHeat("", number, written, 9)
    plain_c = celsius(number) if unit == "F" else number
    rank = (1 if fan else 0) + (2 if unit == "F" else 0)
    spelled = f"{number:g} °{unit}" + (" fan" if fan else "")
    return OvenHeat(spelled, plain_c + (FAN_DIFFERENCE_C if fan else 0.0), written, rank)


def agreed(found: list[OvenHeat]) -> tuple[str, str]:
    """One temperature for everything a note says, in the book's spelling, and why not: "" for the other."""
    sure = sorted((heat for heat in found if heat.text), key=lambda heat: heat.rank)
    if not sure:
        return "", f'in °C or °F: "{found[0].written}"' if found else "no oven temperature is given"
    low, high = min(heat.celsius for heat in sure), max(heat.celsius for heat in sure)
    if high - low > APART_C:
        return "", "it gives more than one temperature: " + ", ".join(dict.fromkeys(heat.written for heat in sure))
    return sure[0].text, ""
