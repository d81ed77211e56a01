"""Reading the heat of an oven and a share in per cent."""

import re
from dataclasses import dataclass

from tinbook.units.kitchen import celsius, gas_mark_celsius
from tinbook.units.misread import Misread
from tinbook.units.numerals import read_number
from tinbook.units.words import UNITS, read_unit

# A fan oven is set this much lower than a conventional one, in °C: common practice.
FAN_DIFFERENCE_C = 20.0
# The dial of a kitchen oven, in °C: common practice.
_COLDEST_C, _HOTTEST_C = 40.0, 300.0
_MARKS = (0.25, 0.5, *map(float, range(1, 11)))
_GAS = re.compile(r"\s*(?:gas(?:\s*mark)?|mark|regulo)(?![^\W\d_])\s*", re.IGNORECASE)
_FAN = re.compile(r"\s*,?\s*\(?(?:fan|convection)(?:\s+oven)?\)?(?![^\W\d_])\s*", re.IGNORECASE)
_PERCENT = re.compile(r"\s*(?:%|per\s*cent\b)\s*", re.IGNORECASE)
_BOTH = re.compile(r"\s*[,/(;]|\s*or\b")
_LARGEST_PERCENT = 1000.0


@dataclass(frozen=True, slots=True)
class Heat:
    """An oven's temperature: `celsius` is always that of a conventional oven, even where `fan` was written."""

    celsius: float
    fan: bool
    written: str


def read_heat(text: str) -> Heat:
    """An oven's temperature: "180 °C", "160 °C fan", "350 °F", "gas mark 4". Raises Misread for anything else.

    >>> read_heat("160 °C fan").celsius
    180.0
    """
    written = " ".join(text.split())
    fan = _FAN.match(text)
    gas = _GAS.match(text, fan.end() if fan else 0)
    if gas:
        mark, end = read_number(text, gas.end(), "gas mark 4")
        if mark not in _MARKS:
            raise Misread(f"there is no gas mark {text[gas.end() : end]}", "write 1/4, 1/2 or 1 to 10", gas.end(), end)
        conventional = gas_mark_celsius(mark)
    else:
        at = fan.end() if fan else len(text) - len(text.lstrip())
        number, end = read_number(text, at, "180 °C")
        conventional, end = _dial(text, at, number, end)
    after = None if fan else _FAN.match(text, end)
    if after:
        end = after.end()
    if (fan or after) and gas:
        raise Misread("a gas mark is for an oven without a fan", "leave out fan, or write °C", 0, len(text))
    _nothing_after(text, end)
    if fan or after:
        conventional += FAN_DIFFERENCE_C
    return Heat(conventional, bool(fan or after), written)


def _dial(text: str, at: int, number: float, end: int) -> tuple[float, int]:
    """The °C that a number and the unit at `end` set a dial to, and where that unit ends."""
    named = read_unit(text, end)
    if named is None:
        raise Misread(f'is "{text[at:end]}" in °C or °F?', f"write {text[at:end]} °C or {text[at:end]} °F", at, end)
    unit, end = named
    if UNITS[unit] != "temperature":
        raise Misread(f'"{text[at:end]}" is not an oven temperature', "write 180 °C, 350 °F or gas mark 4", at, end)
    heat = celsius(number) if unit == "°F" else number
    if heat < _COLDEST_C:
        raise Misread(f'"{text[at:end]}" is too cool for an oven', "check the number and the unit", at, end)
    if heat > _HOTTEST_C:
        hint = f"did you mean {text[at : end - 1].rstrip('° ')} °F?" if unit == "°C" else "check the number"
        raise Misread(f'"{text[at:end]}" is hotter than a kitchen oven', hint, at, end)
    return heat, end


def _nothing_after(text: str, end: int) -> None:
    left = text[end:].strip()
    if not left:
        return
    start = text.index(left, end)
    if _BOTH.match(text, end):
        hint = "write one; the book works out the others"
    else:
        hint = "write 180 °C, 160 °C fan, 350 °F or gas mark 4"
    raise Misread(f'"{left}" is left over after the temperature', hint, start, start + len(left))


def read_temperature(text: str) -> float:
    """How warm something is, in °C, such as the centre of a cake: "97 °C", "206 °F". Raises Misread for anything else.

    >>> read_temperature("212 °F")
    100.0
    """
    at = len(text) - len(text.lstrip())
    number, end = read_number(text, at, "97 °C")
    named = read_unit(text, end)
    if named is None or UNITS[named[0]] != "temperature":
        said = text[at:end]
        raise Misread(f'is "{said}" in °C or °F?', f"write {said} °C or {said} °F", at, len(text.rstrip()))
    unit, end = named
    if left := text[end:].strip():
        raise Misread(
            f'"{left}" is left over after the temperature', "leave it out", text.index(left, end), len(text.rstrip())
        )
    return celsius(number) if unit == "°F" else number


def read_percent(text: str) -> float:
    """A share written as a percentage: "25 %" is 0.25. Raises Misread for anything else."""
    at = len(text) - len(text.lstrip())
    number, end = read_number(text, at, "25 %")
    sign = _PERCENT.match(text, end)
    said = text[at:end]
    if sign is None:
        raise Misread(
            f'no % after "{said}"',
            f"write {said if number > 1 else f'{number * 100:g}'} %",
            at,
            len(text.rstrip()),
        )
    if left := text[sign.end() :].strip():
        raise Misread(f'"{left}" is left over after the %', "leave it out", sign.end(), len(text.rstrip()))
    if number > _LARGEST_PERCENT:
        raise Misread(f'"{text.strip()}" is more than {_LARGEST_PERCENT:g} %', "check the number", at, end)
    return number / 100
