"""The words for units, from both sides of the Atlantic, and the words that are refused."""

import re
from collections.abc import Mapping

from tinbook.units import kitchen
from tinbook.units.measures import Measures
from tinbook.units.misread import Misread, nearest_of

_SIZES: dict[str, dict[str, float]] = {
    "mass": {
        "g": 1.0,
        "kg": kitchen.GRAMS_PER_KILOGRAM,
        "oz": kitchen.GRAMS_PER_OUNCE,
        "lb": kitchen.GRAMS_PER_POUND,
    },
    "volume": {
        "ml": 1.0,
        "l": kitchen.ML_PER_LITRE,
        "US fl oz": kitchen.ML_PER_US_FLUID_OUNCE,
        "UK fl oz": kitchen.ML_PER_UK_FLUID_OUNCE,
        **kitchen.CUPS_ML,
        **{f"{whose} tbsp": spoons[0] for whose, spoons in kitchen.SPOONS_ML.items()},
        **{f"{whose} tsp": spoons[1] for whose, spoons in kitchen.SPOONS_ML.items()},
    },
    "length": {"mm": 1.0, "cm": kitchen.MM_PER_CM, "in": kitchen.MM_PER_INCH},
    "time": {"min": 1.0, "h": kitchen.MINUTES_PER_HOUR},
    "count": {"": 1.0},
}
_SIZE = {unit: size for units in _SIZES.values() for unit, size in units.items()}
_HOUSE = ("cup", "tbsp", "tsp", "pinch", "fl oz")

# Every unit a quantity can be in, and its dimension.
UNITS: Mapping[str, str] = {
    **{unit: dimension for dimension, units in _SIZES.items() for unit in units},
    **dict.fromkeys(_HOUSE, "volume"),
    "°C": "temperature",
    "°F": "temperature",
}

_SPELLINGS = {
    "g": "g gr gm gms gram grams gramme grammes",
    "kg": "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
    "oz": "oz ozs ounce ounces",
    "lb": "lb lbs pound pounds",
    "ml": "ml mls millilitre millilitres milliliter milliliters",
    "l": "l litre litres liter liters ltr",
    "tsp": "tsp tsps teaspoon teaspoons teaspoonful teaspoonfuls",
    "tbsp": "tbsp tbsps tbs tablespoon tablespoons tablespoonful tablespoonfuls",
    "cup": "cup cups cupful cupfuls",
    "pinch": "pinch pinches",
    "fl oz": "floz",
    "mm": "mm millimetre millimetres millimeter millimeters",
    "cm": "cm cms centimetre centimetres centimeter centimeters",
    "in": "in ins inch inches \" ″ ” ''",
    "min": "min mins minute minutes",
    "h": "h hr hrs hour hours",
    "°C": "c °c degc celsius centigrade",
    "°F": "f °f degf fahrenheit",
}
WORDS: Mapping[str, str] = {word: unit for unit, words in _SPELLINGS.items() for word in words.split()}
_WHOSE = {"us": "US", "american": "US", "uk": "UK", "imperial": "UK", "british": "UK", "metric": "metric"} | {
    "australian": "Australian"
}

_WORD = re.compile(
    r"""
    \s* (?:level\s+)?
    (?: (?P<whose>us|american|uk|imperial|british|metric|australian) \s+ )?
    (?P<word> fl(?:uid)?\.? \s* (?:oz|ounces?) (?![^\W\d_])
      | (?:°|º|˚|deg(?:rees?)?) \s* (?:celsius|centigrade|fahrenheit|[cf]) (?![^\W\d_])
      | '' | ["″”]
      | [^\W\d_]+ )
    \.?
    """,
    re.VERBOSE | re.IGNORECASE,
)

# The start of the word, then what is wrong and what to write instead.
_TWO_MEANINGS = {
    "t": ("does {} mean a tablespoon or a teaspoon?", "write tbsp or tsp"),
    "tb": ("{} is not clear", "write tbsp for a tablespoon, tsp for a teaspoon"),
    "m": ("does {} mean metres or minutes?", "write cm for a length, min for a time"),
    **{
        word: (
            f"a {word} is {pints * kitchen.ML_PER_UK_PINT:.0f} ml in Britain"
            f" and {pints * kitchen.ML_PER_US_PINT:.0f} ml in America",
            "write ml",
        )
        for word, pints in (("pint", 1), ("quart", 2), ("gallon", 8))
    },
}
_NO_MEASURE = {
    "stick": ("a stick is not a measure here", "write 4 oz or 113 g for each stick of butter"),
    "dozen": ("a dozen is not a measure here", "write 12"),
    "dessertspoon": ("a dessertspoon is not a measure here", "write 2 tsp for each"),
    "cl": ("centilitres are not used here", "write it in ml: 1 cl is 10 ml"),
    "dl": ("decilitres are not used here", "write it in ml: 1 dl is 100 ml"),
    "mg": ("milligrams are not used here", "write it in g: 100 mg is 0.1 g"),
    "ft": ("feet are not used here", "write it in inches or cm: 1 ft is 12 in"),
    "foot": ("feet are not used here", "write it in inches or cm: 1 ft is 12 in"),
    "feet": ("feet are not used here", "write it in inches or cm: 1 ft is 12 in"),
    "day": ("days are not used here", "for a time, write hours: 2 days is 48 h"),
    "week": ("weeks are not used here", "for a time, write hours: 1 week is 168 h"),
    "sec": ("seconds are not used here", "for a time, write minutes: 30 seconds is 1/2 min"),
    "second": ("seconds are not used here", "for a time, write minutes: 30 seconds is 1/2 min"),
    **dict.fromkeys(
        ("knob", "dash", "splash", "handful", "glug", "drop", "drizzle"),
        ("{} is not an amount anyone else could weigh", "write g, ml or tsp"),
    ),
    **dict.fromkeys(
        ("heaped", "heaping", "rounded", "scant", "generous"),
        ("a {} measure means a different amount to everyone", "write level spoons or cups, or g"),
    ),
}
_REFUSED = _TWO_MEANINGS | _NO_MEASURE | {f"{word}s": said for word, said in _NO_MEASURE.items()}
_REFUSED |= {f"{word}s": _TWO_MEANINGS[word] for word in ("pint", "quart", "gallon")}


def read_unit(text: str, at: int) -> tuple[str, int] | None:
    """The unit written at `at`, after any spaces, and where its word ends; None if there is none.

    Raises Misread for a word with two meanings, or one that measures nothing.
    """
    written = _WORD.match(text, at)
    if written is None:
        return None
    word = "".join(written["word"].casefold().split())
    start, end = written.span("word")
    if word in _REFUSED:
        message, hint = _REFUSED[word]
        raise Misread(message.format(f'"{written["word"]}"'), hint, start, end)
    if word.startswith("fl") and word.endswith(("oz", "ounce", "ounces")):
        unit = "fl oz"
    elif word[0] in "°º˚" or (word.startswith("deg") and word not in ("deg", "degree", "degrees")):
        unit = "°F" if "f" in word else "°C"
    elif word in WORDS:
        unit = WORDS[word]
    else:
        return None
    if whose := written["whose"]:
        unit = f"{_WHOSE[whose.casefold()]} {unit}"
        if unit not in UNITS:
            raise Misread(f'there is no measure called "{unit}"', "leave out the country", written.start("whose"), end)
    return unit, written.end()


def unit_meant(word: str) -> str:
    """A hint with the unit nearest to a word that is not one; empty if none is near.

    A short form is answered with the form used here: somebody who wrote "grs" did not mean "gr".
    """
    short = {spelling: unit if len(spelling) <= len(unit) + 2 else spelling for spelling, unit in WORDS.items()}
    near = nearest_of(word, WORDS)
    return f'did you mean "{short[near]}"?' if near else ""


def unit_size(unit: str, measures: Measures) -> float:
    """The size of a unit in g, ml, mm or min. Raises LookupError if the house has not said whose.

    By definition (Weights and Measures Act 1985, Schedule 1) a pound is 0.45359237 kg:

    >>> from tinbook.units import METRIC
    >>> unit_size("lb", METRIC)
    453.59237
    """
    size = _SIZE.get(unit)
    if size is not None:
        return size
    if unit == "tbsp":
        return measures.tablespoon_ml
    if unit == "tsp":
        return measures.teaspoon_ml
    if unit == "pinch":
        return measures.teaspoon_ml * kitchen.TEASPOONS_PER_PINCH
    house = {"cup": measures.cup_ml, "fl oz": measures.fluid_ounce_ml}[unit]
    if house is None:
        raise LookupError(unit)
    return house


def to_unit(quantity_base: float, unit: str, measures: Measures) -> float:
    """A quantity in its base unit (g, ml, mm, min, °C, or a count), converted to another unit.

    `unit` is a key of UNITS of the same dimension. Raises LookupError for an unknown unit, and for a cup or fluid ounce
    when the house has not said whose.
    """
    if unit == "°C":
        return quantity_base
    if unit == "°F":
        return kitchen.fahrenheit(quantity_base)
    return quantity_base / unit_size(unit, measures)
