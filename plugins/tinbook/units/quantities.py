"""Reading the quantities a baker writes: 250 g, 1 lb 4 oz, 1 1/2 tsp, 60–75 min, 6 eggs."""

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from tinbook.units import kitchen
from tinbook.units.measures import METRIC, Measures
from tinbook.units.misread import Misread, Whose
from tinbook.units.numerals import DIGITS, read_number
from tinbook.units.words import UNITS, read_unit, unit_meant, unit_size

# What a dimension is called, and an example.
_DIMENSIONS = {
    "mass": ("a weight", "250 g"),
    "volume": ("a volume", "30 ml"),
    "count": ("a plain number", "6"),
    "length": ("a length", "20 cm"),
    "time": ("a time", "45 min"),
    "temperature": ("a temperature", "32 °C"),
}
ANY: tuple[str, ...] = tuple(_DIMENSIONS)
INGREDIENT = ("mass", "volume", "count")

# The second unit a quantity may go on with.
_GOES_ON = {"lb": "oz", "kg": "g", "l": "ml", "h": "min"}
_LARGEST = 1e6
# °C: from the coldest freezer to the hottest oven, with a margin.
_TEMPERATURES = (-60.0, 400.0)
_RANGE = re.compile(rf"\s*(?:[-‐‑‒–—−]|to\b)\s*(?=[{DIGITS}])")
_PLUS = re.compile(rf"\s*(?:\+|plus\b|and\b|&)\s*(?=[{DIGITS}])")
_MINUS = re.compile(rf"[-−–]\s*(?=[{DIGITS}])")
_DIGIT = re.compile(rf"[{DIGITS}]")
_SPACES = re.compile(r"\s*")
_OF = re.compile(r"of\s+", re.IGNORECASE)
_HYPHENED = re.compile(r"([0-9]+)\s*-\s*([0-9]+/[0-9]+)")
_REST_WORD = re.compile(r"[^\s,;]+")


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number of some unit.

    `unit` is a key of UNITS ("" for a count); `base` is the same amount in g, ml, mm, min, °C, or the count.
    """

    value: float
    unit: str
    dimension: str
    base: float


@dataclass(frozen=True, slots=True)
class Span:
    """From one quantity to another of the same dimension; the same one twice if no range was written."""

    low: Quantity
    high: Quantity


def read_quantity(
    text: str, measures: Measures = METRIC, want: Collection[str] = ANY, *, zero: bool = False
) -> Quantity:
    """The whole text as a quantity. Raises Misread if it is not one, or not of a wanted dimension.

    `zero` allows an amount of nothing.
    """
    want = _collection(want)
    at = _start(text)
    quantity, end = _quantity(text, at, measures, want, zero)
    if quantity is None:
        raise _no_unit(text, at, end, want)
    _nothing_after(text, end, quantity, want)
    return quantity


def read_mass(text: str, measures: Measures = METRIC, *, zero: bool = False) -> Quantity:
    """A weight; base in g."""
    return read_quantity(text, measures, ("mass",), zero=zero)


def read_volume(text: str, measures: Measures = METRIC, *, zero: bool = False) -> Quantity:
    """A volume; base in ml."""
    return read_quantity(text, measures, ("volume",), zero=zero)


def read_length(text: str, measures: Measures = METRIC, *, zero: bool = False) -> Quantity:
    """A length; base in mm."""
    return read_quantity(text, measures, ("length",), zero=zero)


def read_time(text: str, measures: Measures = METRIC, *, zero: bool = False) -> Quantity:
    """A time; base in min."""
    return read_quantity(text, measures, ("time",), zero=zero)


def read_count(text: str, measures: Measures = METRIC, *, zero: bool = False) -> Quantity:
    """A plain number."""
    return read_quantity(text, measures, ("count",), zero=zero)


def read_span(text: str, want: Collection[str] = ANY, measures: Measures = METRIC, *, zero: bool = False) -> Span:
    """One quantity, or from one to another: "60-75 min", "45 min to 1 h". Raises Misread."""
    want = _collection(want)
    at = _start(text)
    low, end = _quantity(text, at, measures, want, zero, ranged=True)
    to = _RANGE.match(text, end)
    if to is None:
        if low is None:
            raise _no_unit(text, at, end, want)
        _nothing_after(text, end, low, want)
        return Span(low, low)
    high, high_end = _quantity(text, to.end(), measures, want, zero)
    if high is None:
        raise _no_unit(text, to.end(), high_end, want)
    if low is None:
        value, _ = read_number(text, at)
        first = read_unit(text, read_number(text, to.end())[1])
        if first is not None and first[0] != high.unit:
            written = f"{text[at:end].strip()} {first[0]} - {text[to.end() : high_end].strip()}"
            raise Misread(f'no unit after "{text[at:end]}"', f"write {written}", at, end)
        low = _checked(text, at, end, value, high.unit, measures, zero)
    _nothing_after(text, high_end, high, want)
    if low.dimension != high.dimension:
        raise Misread(f'"{text.strip()}" mixes two kinds of measure', "use one unit", at, high_end)
    if low.base > high.base:
        hyphened = _HYPHENED.match(text, at)
        hint = f"write {hyphened[1]} {hyphened[2]}" if hyphened else "write the smaller amount first"
        raise Misread(f'"{text[at:high_end]}" goes down, not up', hint, at, high_end)
    return Span(low, high)


def read_line(text: str, measures: Measures = METRIC, want: Collection[str] = INGREDIENT) -> tuple[Quantity, str, int]:
    """The quantity a line starts with, what follows it, and where in the text that starts.

    A number without a unit is a count: "6 large eggs" is 6 of "large eggs". Raises Misread, also if nothing follows
    the quantity.
    """
    want = _collection(want)
    at = _start(text)
    quantity, end = _quantity(text, at, measures, want, zero=False)
    if quantity is None:
        # Only a count has no unit, and no count is wanted here.
        raise _no_unit(text, at, end, want)
    rest = _start(text, end)
    if of := _OF.match(text, rest):
        rest = of.end()
    second = plus.end() if (plus := _PLUS.match(text, end)) else rest
    if _DIGIT.match(text, second) and read_unit(text, read_number(text, second)[1]):
        raise Misread("two amounts for one ingredient", "write one amount, in one unit", at, len(text.rstrip()))
    if not text[rest:].strip():
        said = text[at:end].strip()
        example = "butter" if quantity.unit else "eggs"
        raise Misread(f'"{said}" of what?', f"write the ingredient after it: {said} {example}", at, end)
    return quantity, text[rest:].rstrip(), rest


def _quantity(
    text: str, at: int, measures: Measures, want: Collection[str], zero: bool, *, ranged: bool = False
) -> tuple[Quantity | None, int]:
    """The quantity at `at` and where it ends; None for a number without a unit if no count is wanted.

    `ranged`: a range may follow, and may hold the unit.
    """
    minus = _MINUS.match(text, at) if "temperature" in want else None
    value, end = read_number(text, minus.end() if minus else at, _such_as(want))
    to = _RANGE.match(text, end)
    if to and not ranged:
        raise _range(text, at, to.end())
    named = None if to else read_unit(text, end)
    if named is None:
        if to is None and "count" in want and minus is None:
            return _checked(text, at, end, value, "", measures, zero), end
        return None, end
    unit, unit_end = named
    _wanted(text, at, unit, unit_end, want, end)
    if minus:
        if UNITS[unit] != "temperature":
            read_number(text, at)
        value = -value
    quantity = _checked(text, at, unit_end, value, unit, measures, zero)
    if unit in _GOES_ON:
        quantity, unit_end = _going_on(text, at, unit_end, quantity)
    to = _RANGE.match(text, unit_end)
    if to and not ranged:
        raise _range(text, at, to.end())
    return quantity, unit_end


def _going_on(text: str, at: int, end: int, first: Quantity) -> tuple[Quantity, int]:
    """The quantity with its second part, if it has one: "1 lb" goes on with "4 oz"."""
    start = _start(text, end)
    if not _DIGIT.match(text, start):
        return first, end
    value, number_end = read_number(text, start)
    named = read_unit(text, number_end)
    small = _GOES_ON[first.unit]
    if named is None or named[0] != small:
        return first, end
    size, small_size = unit_size(first.unit, METRIC), unit_size(small, METRIC)
    if value * small_size >= size:
        message = f'"{text[start : named[1]]}" is 1 {first.unit} or more'
        raise Misread(message, "check it, or write it all in one unit", start, named[1])
    base = first.base + value * small_size
    return Quantity(round(first.value * size / small_size + value, 9), small, first.dimension, base), named[1]


def _checked(text: str, at: int, end: int, value: float, unit: str, measures: Measures, zero: bool) -> Quantity:
    said = text[at:end].strip()
    dimension = UNITS[unit]
    if dimension == "temperature":
        base = kitchen.celsius(value) if unit == "°F" else value
        if not _TEMPERATURES[0] <= base <= _TEMPERATURES[1]:
            raise Misread(f'"{said}" is not a kitchen temperature', "check the number and the unit", at, end)
        return Quantity(value, unit, dimension, base)
    try:
        base = value * unit_size(unit, measures)
    except LookupError:
        raise _whose(text, at, end, unit) from None
    if not base and not zero:
        raise Misread(f'"{said}" is nothing at all', "write how much, or leave it out", at, end)
    if base > _LARGEST:
        raise Misread(f'"{said}" is more than any kitchen holds', "check the number and the unit", at, end)
    return Quantity(value, unit, dimension, base)


def _wanted(text: str, at: int, unit: str, end: int, want: Collection[str], word_at: int) -> None:
    """Raises Misread if the unit's dimension is not one of those wanted."""
    dimension = UNITS[unit]
    bare_c = dimension == "temperature" and text[word_at:end].strip(" .").casefold() == "c"
    if bare_c and "volume" in want:
        raise Misread('does "c" mean a cup or °C?', "write US cup, metric cup, UK cup or °C", end - 1, end)
    if dimension in want:
        return
    names = _either(_DIMENSIONS[wanted][0] for wanted in want)
    message = f'"{text[at:end].strip()}" is {_DIMENSIONS[dimension][0]}; this should be {names}'
    how = "like" if "count" in want else f"as {names}, for example"
    raise Misread(message, f"write it {how} {_such_as(want)}", at, end)


def _whose(text: str, at: int, end: int, unit: str) -> Misread:
    if unit == "cup":
        return Whose(
            "which cup?",
            "write US cup (237 ml), metric cup (250 ml) or UK cup (284 ml), or say in house.yaml which you use",
            at,
            end,
        )
    return Whose("which fluid ounce?", "write US fl oz (29.6 ml), UK fl oz (28.4 ml) or ml", at, end)


def _range(text: str, at: int, end: int) -> Misread:
    word = _REST_WORD.match(text, end)
    stop = word.end() if word else end
    hyphened = _HYPHENED.match(text, at)
    hint = f"write {hyphened[1]} {hyphened[2]}, or one amount" if hyphened else "write a single amount"
    return Misread(f'"{text[at:stop]}" is a range; this takes one amount', hint, at, stop)


def _no_unit(text: str, at: int, end: int, want: Collection[str]) -> Misread:
    """The error for a number that no known unit follows."""
    like = f"write it {'like' if 'count' in want else 'with its unit, for example'} {_such_as(want)}"
    if word := _REST_WORD.match(text, _start(text, end)):
        return Misread(f'there is no unit called "{word[0]}"', unit_meant(word[0]) or like, *word.span())
    return Misread(f'no unit after "{text[at:end].strip()}"', like, at, end)


def _nothing_after(text: str, end: int, quantity: Quantity, want: Collection[str]) -> None:
    """Raises Misread if anything follows the quantity."""
    rest = _start(text, end)
    if rest == len(text):
        return
    left = text[rest:].strip()
    if not quantity.unit:
        raise _no_unit(text, _start(text), end, want)
    small = _GOES_ON.get(quantity.unit)
    hint = "write one amount, in one unit" if _DIGIT.match(left) else "leave it out"
    if small and left.isdecimal():
        hint = f"write {left} {small}"
    raise Misread(f'"{left}" is left over after the amount', hint, rest, rest + len(left))


def _such_as(want: Collection[str]) -> str:
    """Examples of the dimensions wanted, three at most."""
    return _either([_DIMENSIONS[wanted][1] for wanted in want][:3])


def _either(words: Iterable[str]) -> str:
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last


def _start(text: str, at: int = 0) -> int:
    spaces = _SPACES.match(text, at)
    return spaces.end() if spaces else at


def _collection(want: Collection[str]) -> Collection[str]:
    """A single dimension is a collection of one."""
    return (want,) if isinstance(want, str) else want
