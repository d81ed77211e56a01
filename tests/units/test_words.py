"""The words for units."""

import pytest
from tests.every import every

from tinbook.units import METRIC, UNITS, Misread, measures_of, read_unit, to_unit

SPELLINGS = {
    "g": ["g", "G", "gr", "gm", "gram", "grams", "gramme", "grammes", "g."],
    "kg": ["kg", "Kg", "KG", "kilo", "kilos", "kilogram", "kilograms"],
    "oz": ["oz", "Oz", "oz.", "ounce", "ounces"],
    "lb": ["lb", "lbs", "lb.", "pound", "pounds"],
    "ml": ["ml", "mL", "mls", "millilitre", "millilitres", "milliliter", "milliliters"],
    "l": ["l", "L", "litre", "litres", "liter", "liters"],
    "fl oz": ["fl oz", "fl. oz.", "floz", "Fl Oz", "fluid ounce", "fluid ounces", "fluid oz"],
    "tsp": ["tsp", "tsps", "tsp.", "teaspoon", "teaspoons", "level tsp", "level teaspoons"],
    "tbsp": ["tbsp", "Tbsp", "tbsps", "tbs", "tablespoon", "tablespoons", "level tablespoon"],
    "cup": ["cup", "cups", "Cup", "level cup"],
    "pinch": ["pinch", "pinches"],
    "US cup": ["US cup", "US cups", "us cup", "American cup"],
    "metric cup": ["metric cup", "metric cups"],
    "UK cup": ["UK cup", "imperial cup", "British cups"],
    "US fl oz": ["US fl oz", "US fluid ounces"],
    "UK fl oz": ["UK fl oz", "imperial fl. oz."],
    "US tbsp": ["US tbsp", "US tablespoons"],
    "Australian tbsp": ["Australian tbsp", "Australian tablespoon"],
    "metric tsp": ["metric tsp", "metric teaspoons"],
    "mm": ["mm", "millimetre", "millimetres", "millimeters"],
    "cm": ["cm", "cms", "centimetre", "centimeters"],
    "in": ["in", "in.", "inch", "inches", '"', "″", "”", "''"],
    "min": ["min", "mins", "min.", "minute", "minutes"],
    "h": ["h", "hr", "hrs", "hour", "hours"],
    "°C": ["°C", "° C", "ºC", "deg C", "degrees C", "degrees Celsius", "celsius", "C"],
    "°F": ["°F", "°f", "degrees F", "fahrenheit", "F"],
}


@every(("word", "unit"), [(word, unit) for unit, words in SPELLINGS.items() for word in words])
def test_spellings(word: str, unit: str) -> None:
    assert unit in UNITS
    for before in ("", " ", "\u00a0"):
        for after in ("", " sugar", ", soft", "-", "/"):
            text = f"4{before}{word}{after}"
            assert read_unit(text, 1) == (unit, len(text) - len(after))


@every(
    "text",
    [
        "",
        " ",
        "eggs",
        "grape",
        "large eggs",
        "millimetric",
        "€",
        "%",
        "US eggs",
        "inchworm",
        "° ",
        "(g)",
        "4 g",
    ],
)
def test_what_is_no_unit(text: str) -> None:
    assert read_unit(text, 0) is None


@every(
    ("text", "message", "hint", "piece"),
    [
        (" T sugar", 'does "T" mean a tablespoon or a teaspoon?', "write tbsp or tsp", "T"),
        (" t sugar", 'does "t" mean a tablespoon or a teaspoon?', "write tbsp or tsp", "t"),
        (" Tb.", '"Tb" is not clear', "write tbsp for a tablespoon, tsp for a teaspoon", "Tb"),
        (" m", 'does "m" mean metres or minutes?', "write cm for a length, min for a time", "m"),
        (" pint milk", "a pint is 568 ml in Britain and 473 ml in America", "write ml", "pint"),
        (" pints milk", "a pint is 568 ml in Britain and 473 ml in America", "write ml", "pints"),
        (" quart milk", "a quart is 1137 ml in Britain and 946 ml in America", "write ml", "quart"),
        (" gallon milk", "a gallon is 4546 ml in Britain and 3785 ml in America", "write ml", "gallon"),
        (
            " sticks butter",
            "a stick is not a measure here",
            "write 4 oz or 113 g for each stick of butter",
            "sticks",
        ),
        (" dozen eggs", "a dozen is not a measure here", "write 12", "dozen"),
        (" dessertspoon", "a dessertspoon is not a measure here", "write 2 tsp for each", "dessertspoon"),
        (" cl", "centilitres are not used here", "write it in ml: 1 cl is 10 ml", "cl"),
        (" ft", "feet are not used here", "write it in inches or cm: 1 ft is 12 in", "ft"),
        (" days", "days are not used here", "for a time, write hours: 2 days is 48 h", "days"),
        (" seconds", "seconds are not used here", "for a time, write minutes: 30 seconds is 1/2 min", "seconds"),
        (" knob butter", '"knob" is not an amount anyone else could weigh', "write g, ml or tsp", "knob"),
        (
            " heaped tsp",
            'a "heaped" measure means a different amount to everyone',
            "write level spoons or cups, or g",
            "heaped",
        ),
        (" metric fl oz", 'there is no measure called "metric fl oz"', "leave out the country", "metric fl oz"),
        (" US g", 'there is no measure called "US g"', "leave out the country", "US g"),
    ],
)
def test_words_that_are_refused(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_unit(text, 0)
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


def test_every_unit_turns_into_its_base_and_back() -> None:
    measures = measures_of("US cup", "Australian")
    for unit, dimension in UNITS.items():
        assert dimension in {"mass", "volume", "count", "length", "time", "temperature"}
        one = to_unit(1000, unit, measures)
        two = to_unit(2000, unit, measures)
        if dimension != "temperature":
            assert two == pytest.approx(2 * one)


def test_base_units_are_their_own() -> None:
    for unit in ("g", "ml", "mm", "min", "°C", ""):
        assert to_unit(12.5, unit, METRIC) == 12.5
