"""Quantities as a baker writes them."""

from collections.abc import Callable, Collection

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.units import (
    METRIC,
    UNITS,
    Measures,
    Misread,
    Quantity,
    Span,
    measures_of,
    read_count,
    read_length,
    read_line,
    read_mass,
    read_quantity,
    read_span,
    read_time,
    read_volume,
    to_unit,
)

US = measures_of("US cup", "US")


@every(
    ("text", "value", "unit", "dimension", "base"),
    [
        ("250 g", 250, "g", "mass", 250),
        ("250g", 250, "g", "mass", 250),
        ("  250   g ", 250, "g", "mass", 250),
        ("1,250 g", 1250, "g", "mass", 1250),
        ("2.5 kg", 2.5, "kg", "mass", 2500),
        ("8 oz", 8, "oz", "mass", 226.796185),
        ("1 lb", 1, "lb", "mass", 453.59237),
        ("1 lb 4 oz", 20, "oz", "mass", 566.9904625),
        ("2lb 3½oz", 35.5, "oz", "mass", 1006.4080719),
        ("1 kg 200 g", 1200, "g", "mass", 1200),
        ("250 ml", 250, "ml", "volume", 250),
        ("1 l 500 ml", 1500, "ml", "volume", 1500),
        ("1 1/2 tsp", 1.5, "tsp", "volume", 7.5),
        ("½ tbsp", 0.5, "tbsp", "volume", 7.5),
        ("1 pinch", 1, "pinch", "volume", 0.3125),
        ("2 US cups", 2, "US cup", "volume", 473.176473),
        ("3 level tsp", 3, "tsp", "volume", 15),
        ("20 cm", 20, "cm", "length", 200),
        ("8 in", 8, "in", "length", 203.2),
        ('8 1/2"', 8.5, "in", "length", 215.9),
        ("7.5cm", 7.5, "cm", "length", 75),
        ("203 mm", 203, "mm", "length", 203),
        ("45 min", 45, "min", "time", 45),
        ("1½ h", 1.5, "h", "time", 90),
        ("1 h 15 min", 75, "min", "time", 75),
        ("2 hrs 5 mins", 125, "min", "time", 125),
        ("6", 6, "", "count", 6),
        ("½", 0.5, "", "count", 0.5),
        ("32 °C", 32, "°C", "temperature", 32),
        ("90 °F", 90, "°F", "temperature", 32.2222222),
        ("-18 °C", -18, "°C", "temperature", -18),
        ("0 °C", 0, "°C", "temperature", 0),
    ],
)
def test_the_forms_of_a_quantity(text: str, value: float, unit: str, dimension: str, base: float) -> None:
    quantity = read_quantity(text)
    assert quantity == Quantity(pytest.approx(value), unit, dimension, pytest.approx(base))  # type: ignore[arg-type]
    assert quantity.unit in UNITS
    assert to_unit(quantity.base, unit, METRIC) == pytest.approx(value)


def test_the_house_says_whose_cup_and_whose_fluid_ounce() -> None:
    assert read_volume("1 cup", US) == Quantity(1.0, "cup", "volume", 236.5882365)
    assert read_volume("1 cup", measures_of("UK cup", "metric")).base == pytest.approx(284.130625)
    assert read_volume("8 fl oz", US).base == pytest.approx(236.5882365)
    assert read_volume("1 metric cup", US) == Quantity(1.0, "metric cup", "volume", 250.0)


READERS: dict[str, Callable[[str], Quantity]] = {
    "mass": read_mass,
    "volume": read_volume,
    "length": read_length,
    "time": read_time,
    "count": read_count,
}
EXAMPLES = {"mass": "250 g", "volume": "30 ml", "length": "20 cm", "time": "45 min", "count": "6"}
CALLED = {"mass": "a weight", "volume": "a volume", "length": "a length", "time": "a time"}


@every("wanted", READERS)
@every("written", EXAMPLES)
def test_each_reader_takes_its_own_dimension_only(wanted: str, written: str) -> None:
    text = EXAMPLES[written]
    if wanted == written:
        assert READERS[wanted](text).dimension == wanted
        return
    with pytest.raises(Misread) as told:
        READERS[wanted](text)
    belongs = CALLED.get(wanted, "a plain number")
    message = f'"{text}" is {CALLED.get(written)}; this should be {belongs}'
    how = f"as {belongs}, for example"
    if written == "count":
        message, how = 'no unit after "6"', "with its unit, for example"
    assert told.value.message == message
    assert told.value.hint == f"write it {'like' if wanted == 'count' else how} {EXAMPLES[wanted]}"
    assert text[told.value.start : told.value.end] == text


@pytest.mark.parametrize("reader", READERS.values())
def test_zero_only_where_it_is_asked_for(reader: Callable[..., Quantity]) -> None:
    for text in ("0", "0 g", "0.0 ml", "0 min", "0 cm"):
        with pytest.raises(Misread):
            reader(text)
    assert read_time("0 min", zero=True).base == 0
    assert read_count("0", zero=True).base == 0


@every(
    ("text", "message", "hint", "piece"),
    [
        ("", "nothing is written here", "write an amount, such as 250 g, 30 ml or 6", ""),
        ("butter", 'no number before "butter"', "write the amount first, such as 250 g, 30 ml or 6", "butter"),
        ("250 gramms", 'there is no unit called "gramms"', 'did you mean "grammes"?', "gramms"),
        ("2 tblsp", 'there is no unit called "tblsp"', 'did you mean "tbsp"?', "tblsp"),
        ("2 millilitters", 'there is no unit called "millilitters"', 'did you mean "milliliters"?', "millilitters"),
        ("2 blobs", 'there is no unit called "blobs"', "write it like 250 g, 30 ml or 6", "blobs"),
        ("1e5 g", 'there is no unit called "e5"', "write it like 250 g, 30 ml or 6", "e5"),
        ("-5 g", '"-5" has a sign in front of it', "write 5", "-5"),
        ("NaN g", '"NaN" is not an amount', "write a number, such as 250 g, 30 ml or 6", "NaN"),
        ("0 g", '"0 g" is nothing at all', "write how much, or leave it out", "0 g"),
        ("1,001 kg", '"1,001 kg" is more than any kitchen holds', "check the number and the unit", "1,001 kg"),
        ("9999999", '"9999999" is more than any kitchen holds', "check the number and the unit", "9999999"),
        ("900 °C", '"900 °C" is not a kitchen temperature', "check the number and the unit", "900 °C"),
        ("-300 °C", '"-300 °C" is not a kitchen temperature', "check the number and the unit", "-300 °C"),
        (
            "1 cup",
            "which cup?",
            "write US cup (237 ml), metric cup (250 ml) or UK cup (284 ml), or say in house.yaml which you use",
            "1 cup",
        ),
        ("6 fl oz", "which fluid ounce?", "write US fl oz (29.6 ml), UK fl oz (28.4 ml) or ml", "6 fl oz"),
        ("1 T", 'does "T" mean a tablespoon or a teaspoon?', "write tbsp or tsp", "T"),
        ("1 c", 'does "c" mean a cup or °C?', "write US cup, metric cup, UK cup or °C", "c"),
        ("1-2 kg", '"1-2" is a range; this takes one amount', "write a single amount", "1-2"),
        ("1 kg – 2 kg", '"1 kg – 2" is a range; this takes one amount', "write a single amount", "1 kg – 2"),
        ("1 to 2 kg", '"1 to 2" is a range; this takes one amount', "write a single amount", "1 to 2"),
        ("1-1/2 kg", '"1-1/2" is a range; this takes one amount', "write 1 1/2, or one amount", "1-1/2"),
        ("1 lb 20 oz", '"20 oz" is 1 lb or more', "check it, or write it all in one unit", "20 oz"),
        ("1 h 60 min", '"60 min" is 1 h or more', "check it, or write it all in one unit", "60 min"),
        ("1 lb 4", '"4" is left over after the amount', "write 4 oz", "4"),
        ("4 oz 1 lb", '"1 lb" is left over after the amount', "write one amount, in one unit", "1 lb"),
        ("250 g butter", '"butter" is left over after the amount', "leave it out", "butter"),
        ("5 g/ml", '"/ml" is left over after the amount', "leave it out", "/ml"),
    ],
)
def test_what_is_no_quantity(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_quantity(text)
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


def test_what_is_wanted_is_said_with_examples() -> None:
    with pytest.raises(Misread) as told:
        read_quantity("20 cm", want=("mass", "volume", "count"))
    assert told.value.message == '"20 cm" is a length; this should be a weight, a volume or a plain number'
    assert told.value.hint == "write it like 250 g, 30 ml or 6"


@every(
    ("text", "low", "high", "units"),
    [
        ("60-75 min", 60, 75, ("min", "min")),
        ("60–75 min", 60, 75, ("min", "min")),
        ("60 — 75 min", 60, 75, ("min", "min")),
        ("60 to 75 min", 60, 75, ("min", "min")),
        ("60 min - 75 min", 60, 75, ("min", "min")),
        ("45 min - 1 h", 45, 60, ("min", "h")),
        ("45 min to 1 h 15 min", 45, 75, ("min", "min")),
        ("1 h - 1 h 15 min", 60, 75, ("h", "min")),
        ("1½–2 h", 90, 120, ("h", "h")),
        ("1-1 1/2 h", 60, 90, ("h", "h")),
        ("55 min", 55, 55, ("min", "min")),
        ("30-30 min", 30, 30, ("min", "min")),
    ],
)
def test_the_forms_of_a_span(text: str, low: float, high: float, units: tuple[str, str]) -> None:
    span = read_span(text, ("time",))
    assert (span.low.base, span.high.base) == (low, high)
    assert (span.low.unit, span.high.unit) == units
    assert span.low.dimension == span.high.dimension == "time"


def test_spans_of_other_things() -> None:
    assert read_span("6-8", ("count",)) == Span(Quantity(6.0, "", "count", 6.0), Quantity(8.0, "", "count", 8.0))
    assert read_span("1-2 cups", ("volume",), US).high.base == pytest.approx(473.176473)
    assert read_span("31-32 °C", "temperature").low.base == 31
    assert read_span("0-5 min", "time", zero=True).low.base == 0


@every(
    ("text", "message", "hint", "piece"),
    [
        ("75-60 min", '"75-60 min" goes down, not up', "write the smaller amount first", "75-60 min"),
        ("1-1/2 h", '"1-1/2 h" goes down, not up', "write 1 1/2", "1-1/2 h"),
        ("60-75", 'no unit after "75"', "write it with its unit, for example 45 min", "75"),
        ("60", 'no unit after "60"', "write it with its unit, for example 45 min", "60"),
        ("60-75 g", '"75 g" is a weight; this should be a time', "write it as a time, for example 45 min", "75 g"),
        ("1-1 h 15 min", 'no unit after "1"', "write 1 h - 1 h 15 min", "1"),
        ("60-75-90 min", '"75-90" is a range; this takes one amount', "write a single amount", "75-90"),
        ("60- min", 'there is no unit called "-"', "write it with its unit, for example 45 min", "-"),
        ("0-5 min", '"0" is nothing at all', "write how much, or leave it out", "0"),
        ("45 min or so", '"or so" is left over after the amount', "leave it out", "or so"),
        ("about 45 min", 'no number before "about"', "write the amount first, such as 45 min", "about"),
        ("45-60 minuets", 'there is no unit called "minuets"', 'did you mean "minutes"?', "minuets"),
    ],
)
def test_what_is_no_span(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_span(text, ("time",))
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


def test_a_span_is_of_one_dimension() -> None:
    with pytest.raises(Misread, match="mixes two kinds of measure"):
        read_span("100 g - 200 ml", ("mass", "volume"))


@every(
    ("text", "base", "unit", "rest"),
    [
        ("1 1/2 tbsp vanilla extract, good", 22.18014717, "tbsp", "vanilla extract, good"),
        ("250 g butter, soft", 250, "g", "butter, soft"),
        ("6 eggs", 6, "", "eggs"),
        ("6 large eggs", 6, "", "large eggs"),
        ("½ lemon", 0.5, "", "lemon"),
        ("1 lb 4 oz butter", 566.9904625, "oz", "butter"),
        ("1 cup milk", 236.5882365, "cup", "milk"),
        ("6 fl oz milk", 177.4411774, "fl oz", "milk"),
        ("2 tbsp of honey", 29.57352956, "tbsp", "honey"),
        ("1 pinch salt", 0.3080575996, "pinch", "salt"),
        ("1 kg 00 flour", 1000, "kg", "00 flour"),
        ("1 kg 4-grain flour", 1000, "kg", "4-grain flour"),
        ("100 g 70 % chocolate", 100, "g", "70 % chocolate"),
        ("200g ground almonds  ", 200, "g", "ground almonds"),
        ("2 offcuts of sponge", 2, "", "offcuts of sponge"),
        ("3 orange zests", 3, "", "orange zests"),
        ("2 tomatoes", 2, "", "tomatoes"),
    ],
)
def test_the_forms_of_a_line(text: str, base: float, unit: str, rest: str) -> None:
    quantity, what, start = read_line(text, US)
    assert quantity.base == pytest.approx(base)
    assert quantity.unit == unit
    assert what == rest
    assert text[start:].rstrip() == rest


@every(
    ("text", "message", "hint", "piece"),
    [
        ("250 g", '"250 g" of what?', "write the ingredient after it: 250 g butter", "250 g"),
        ("6", '"6" of what?', "write the ingredient after it: 6 eggs", "6"),
        (
            "butter, soft",
            'no number before "butter"',
            "write the amount first, such as 250 g, 30 ml or 6",
            "butter",
        ),
        ("a pinch of salt", 'the number is written as a word, "a"', "write 1", "a"),
        (
            "1 tbsp 1 tsp vanilla",
            "two amounts for one ingredient",
            "write one amount, in one unit",
            "1 tbsp 1 tsp vanilla",
        ),
        (
            "1 cup + 2 tbsp flour",
            "two amounts for one ingredient",
            "write one amount, in one unit",
            "1 cup + 2 tbsp flour",
        ),
        (
            "1 cup plus 2 tbsp flour",
            "two amounts for one ingredient",
            "write one amount, in one unit",
            "1 cup plus 2 tbsp flour",
        ),
        ("2-3 tbsp water", '"2-3" is a range; this takes one amount', "write a single amount", "2-3"),
        (
            "1-1/2 cups flour",
            '"1-1/2" is a range; this takes one amount',
            "write 1 1/2, or one amount",
            "1-1/2",
        ),
        (
            "5 cm vanilla pod",
            '"5 cm" is a length; this should be a weight, a volume or a plain number',
            "write it like 250 g, 30 ml or 6",
            "5 cm",
        ),
        ("3 c flour", 'does "c" mean a cup or °C?', "write US cup, metric cup, UK cup or °C", "c"),
        (
            "2 sticks butter",
            "a stick is not a measure here",
            "write 4 oz or 113 g for each stick of butter",
            "sticks",
        ),
        ("0 g salt", '"0 g" is nothing at all', "write how much, or leave it out", "0 g"),
    ],
)
def test_what_is_no_line(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_line(text, US)
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


def test_a_line_that_wants_a_length() -> None:
    assert read_line("20 cm ribbon", METRIC, ("length",))[1:] == ("ribbon", 6)
    with pytest.raises(Misread) as told:
        read_line("6 ribbons", METRIC, ("length",))
    assert told.value.message == 'there is no unit called "ribbons"'


SPELLED = {unit: unit or "" for unit in UNITS if unit not in ("cup", "fl oz") and UNITS[unit] != "temperature"}


@given(st.sampled_from(sorted(SPELLED)), st.integers(1, 9999))
def test_twice_as_many_are_twice_as_much(unit: str, number: int) -> None:
    one = read_quantity(f"{number / 100:g} {unit}")
    two = read_quantity(f"{number / 50:g} {unit}")
    assert one.unit == unit
    assert two.base == pytest.approx(2 * one.base)


@given(
    st.integers(1, 999), st.integers(0, 15), st.sampled_from([("lb", "oz", 16), ("h", "min", 60), ("kg", "g", 1000)])
)
def test_two_parts_are_the_sum_of_both(big: int, small: int, units: tuple[str, str, int]) -> None:
    first, second, ratio = units
    both = read_quantity(f"{big} {first} {small} {second}")
    assert (both.value, both.unit) == (big * ratio + small, second)
    assert both.base == pytest.approx(read_quantity(f"{big * ratio + small} {second}").base)


PIECES = [
    *UNITS,
    "1",
    "2.5",
    "1/2",
    "½",
    "1,250",
    "2,5",
    "-",
    "–",
    "to",
    "T",
    "pints",
    "of",
    "butter",
    "+",
    "plus",
    "/",
]
PIECES += ["US", "fl", "oz", "0", "9999999", "é", "\u00a0", ".", '"', "00", "level", "heaped", "٣", "NaN", "deg"]
ANYTHING = st.text(max_size=30) | st.lists(st.sampled_from(PIECES), max_size=10).map(" ".join)
ANYTHING |= st.lists(st.sampled_from(PIECES), max_size=10).map("".join)


def read_whole(text: str, measures: Measures, want: Collection[str]) -> list[Quantity]:
    return [read_quantity(text, measures, want)]


def read_both(text: str, measures: Measures, want: Collection[str]) -> list[Quantity]:
    span = read_span(text, want, measures)
    assert span.low.base <= span.high.base
    return [span.low, span.high]


def read_first(text: str, measures: Measures, want: Collection[str]) -> list[Quantity]:
    quantity, rest, start = read_line(text, measures, want)
    assert rest and text[start:].rstrip() == rest
    return [quantity]


@many(2000)
@given(ANYTHING, st.sampled_from([METRIC, US]))
def test_any_text_is_read_or_misread(text: str, measures: Measures) -> None:
    """Nothing but Misread is raised; what it points at is in the text; what is read is a sane amount."""
    wants: list[Collection[str]] = [tuple(READERS), ("mass", "volume", "count"), ("time",), ("temperature",)]
    for want in wants:
        for reader in (read_whole, read_both, read_first):
            try:
                found = reader(text, measures, want)
            except Misread as misread:
                assert misread.message and misread.hint
                assert 0 <= misread.start <= misread.end <= len(text)
            else:
                for quantity in found:
                    assert quantity.dimension in want
                    assert quantity.dimension == "temperature" or 0 < quantity.base <= 1e6
