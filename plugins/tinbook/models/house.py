"""How the house measures, and what it has: house.yaml."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Annotated, Any, TypeVar
from urllib.parse import urlsplit

from tinbook.models.reading import (
    HEAT,
    ONE_OR_MORE,
    Private,
    Text,
    Written,
    like,
    one_of,
    spelled,
    such_as,
    whole_number,
)
from tinbook.tins import SHAPES, SOLD_IN, true_mm
from tinbook.units import (
    FAN_DIFFERENCE_C,
    Heat,
    Measures,
    Misread,
    Sold,
    measures_of,
    patterns,
    read_heat,
    read_length,
    read_mass,
    read_temperature,
    read_volume,
)

T = TypeVar("T")

FORMAT = 1
"""The version of the book's format that this program reads."""


def read_grams(text: str, measures: Measures) -> float:
    """A weight in g. Raises Misread."""
    return read_mass(text, measures).base


def _mm(text: str, measures: Measures) -> float:
    return read_length(text, measures).base


def read_ml(text: str, measures: Measures) -> float:
    """A volume in ml. Raises Misread."""
    return read_volume(text, measures).base


def _book_format(text: str, _: Measures) -> int:
    if text != str(FORMAT):
        hint = f'write "book: {FORMAT}", or use the version of Tinbook this book was written for'
        raise Misread(f'this version of Tinbook reads books in format {FORMAT}, not "{text}"', hint, 0, len(text))
    return FORMAT


def _dial(text: str, _: Measures) -> Heat:
    return read_heat(text)


def _sold(text: str, _: Measures) -> Sold:
    words: dict[str, Sold] = {word: word for word in SOLD_IN}
    if text in words:
        return words[text]
    hint = "write cm where an 8 in tin is 200 mm wide, inches where it is 203 mm: measure one inside the rim"
    raise Misread(f'tins cannot be sold in "{text}"', hint, 0, len(text))


def _address(text: str, _: Measures) -> str:
    try:
        parts = urlsplit(text)
        sound = parts.scheme in ("http", "https") and parts.hostname and parts.port != 0
    except ValueError:
        sound = None
    # A name with a password in it must not travel with every sheet.
    if not sound or re.search(r"[\s@?#\\\"<>]", text):
        raise Misread(
            f'"{text}" is not a web address', 'write it in full, such as "https://book.example.org"', 0, len(text)
        )
    return text.rstrip("/")


def _two_lengths(text: str, measures: Measures) -> tuple[float, float]:
    width, by, depth = text.replace("×", "x").partition(" x ")
    if not by or " x " in depth:
        raise Misread(f'"{text}" is not two lengths', 'write "44 cm x 36 cm"', 0, len(text))
    return _mm(width, measures), read_at(_mm, depth, len(width + by), measures)


def read_at(read: Callable[[str, Measures], T], part: str, at: int, measures: Measures, before: str = "") -> T:
    """Read the `part` of a text that starts at `at`; a mistake is placed in the whole text.

    `before` is read before the part, and is not in the text.
    """
    try:
        return read(before + part, measures)
    except Misread as error:
        start, end = (at + max(0, edge - len(before)) for edge in (error.start, error.end))
        raise type(error)(error.message, error.hint, start, end) from None


Grams = Annotated[float, spelled(read_grams, like(patterns.MASS, "weight"), "g")]
Millimetres = Annotated[float, spelled(_mm, like(patterns.LENGTH, "length"), "mm")]
Millilitres = Annotated[float, spelled(read_ml, like(patterns.VOLUME, "volume"), "ml")]


class Scales(Written):
    """How finely your scales weigh."""

    step: Annotated[Grams, such_as("5 g")] = 5.0
    """What weights are rounded to."""
    fine_step: Annotated[Grams, such_as("1 g", "0.5 g")] = 1.0
    """What small weights are rounded to."""
    fine_below: Annotated[Grams, such_as("50 g")] = 50.0
    """How much counts as a small weight: anything below this."""


def _temperature(text: str, _: Measures) -> float:
    return read_temperature(text)


DEGREES: Mapping[str, Any] = like(rf"{patterns.NUMBER}\s*{patterns.DEGREES}", "temperature")
Celsius = Annotated[float, spelled(_temperature, DEGREES)]
"""How warm something is, in °C."""


OvenHeat = Annotated[Heat, spelled(_dial, HEAT)]
"""What an oven is set to."""


class Oven(Written):
    """Your oven, and how far out its dial is. To find out, set the dial and read a thermometer in the middle of the
    shelf.
    """

    kind: Annotated[str, one_of("conventional", "fan", "gas"), such_as("fan")] = "conventional"
    """What sort of oven it is."""
    dial: Annotated[OvenHeat | None, such_as("180 °C", "160 °C fan")] = None
    """What the dial was set to when you measured it. Left out: the dial is assumed to be right."""
    thermometer: Annotated[Celsius | None, such_as("172 °C")] = None
    """What a thermometer in the middle of the shelf read. Every dial setting in the book allows for the difference.
    Left out: the dial is assumed to be right."""

    @property
    def fan(self) -> bool:
        """Whether it is set as a fan oven is."""
        return self.kind == "fan"

    @property
    def off_c(self) -> float:
        """How much hotter than its dial it is, in °C; 0 if nobody has measured it."""
        if self.dial is None or self.thermometer is None:
            return 0.0
        return self.thermometer - (self.dial.celsius - (FAN_DIFFERENCE_C if self.dial.fan else 0.0))


TwoSides = Annotated[
    tuple[float, float], spelled(_two_lengths, like(rf"{patterns.LENGTH}\s+[x×]\s+{patterns.LENGTH}", "two lengths"))
]
"""Width and depth, mm."""


class House(Written):
    """How your kitchen measures things, and what equipment it has.

    Lengths in mm, weights in g.
    """

    needed = frozenset(("measures", "cup", "spoon", "eggs", "scales", "usual depth", "tins sold in"))

    book: Annotated[int, spelled(_book_format, {"enum": [FORMAT, str(FORMAT)]}), such_as(str(FORMAT))]
    """The format the book is written in. It is `1` for now, and will only change if Tinbook ever reads files
    differently."""
    name: Annotated[Text, such_as("Harbour house book")]
    """What the book is called: this goes at the top and on every sheet."""
    measures: Annotated[str, one_of("grams", "ounces", "cups"), such_as("ounces")] = "grams"
    """Which amounts you see first. The others are a tap away."""
    cup: Annotated[str | None, one_of("US cup", "metric cup", "UK cup"), such_as("US cup")] = None
    """Which country's cup a recipe means when it just says `cup`. Left out: every cup has to say which it is."""
    spoon: Annotated[str, one_of("metric", "US", "Australian"), such_as("metric")] = "metric"
    """Which country's spoons your recipes mean."""
    eggs: Annotated[Text, such_as("UK large", "US large")] = "UK large"
    """The size of egg you buy. `4 eggs` in a recipe means four of these."""
    scales: Annotated[Scales, such_as("{step: 5 g, fine step: 1 g, fine below: 50 g}")] = Scales()
    """How finely your scales weigh. Amounts are rounded to match."""
    mixer_bowl: Annotated[Grams | None, such_as("2.5 kg")] = None
    """The most batter your mixer can beat at once. Anything more is split into batches. Left out: nothing is split."""
    oven_shelf: Annotated[TwoSides | None, such_as("44 cm x 36 cm")] = None
    """How wide and how deep an oven shelf is, so that the book can say how many tins fit in at once. Left out: the book
    does not say."""
    shelves: Annotated[int, whole_number(1, 10), such_as("2")] = 1
    """How many shelves you bake on at once."""
    oven: Annotated[Oven, such_as("{kind: fan, dial: 160 °C fan, thermometer: 172 °C}")] = Oven()
    """What sort of oven you have, and how far out its dial is."""
    usual_depth: Annotated[Millimetres, such_as("7.5 cm")] = 75.0
    """How deep a tin is if you do not give a depth."""
    tins_sold_in: Annotated[Sold, spelled(_sold, {"enum": list(SOLD_IN)}), such_as("inches")] = "cm"
    """A tin sold as both 20 cm and 8 in is really one or the other. Measure an 8 in tin inside the rim: if it is 200 mm
    write `cm`, if it is 203 mm, write `inches`."""
    also_show: Annotated[tuple[Annotated[str, one_of(*SHAPES)], ...], ONE_OR_MORE, such_as("[heart, petal]")] = ()
    """Tin shapes you want listed in the tables in every size. Left out: only the everyday shapes, and the tins you
    own."""
    tallest_box: Annotated[Millimetres | None, such_as("40 cm")] = None
    """The inside height of your tallest cake box. Left out: the book never says a cake is too tall for its box."""
    fridge_shelf: Annotated[Millimetres | None, such_as("35 cm")] = None
    """The height above a shelf in your fridge. Left out: the book never says a cake is too tall for it."""
    cross_contact: Annotated[Text | None, such_as("We bake with nuts and sesame in this kitchen.")] = None
    """What else your kitchen handles, in your own words. It is shown wherever allergens are listed. Left out: nothing
    is shown."""
    address: Annotated[
        str | None, spelled(_address, like("[hH][tT][tT][pP][sS]?:[^\\s]+")), such_as("https://book.example.org")
    ] = None
    """Where the book is on the web. Printed sheets then have a code to scan. Left out: they have no code."""
    private: Annotated[Private, such_as("[mixer bowl]")] = False
    """Keys to leave out of a public site. The file as a whole cannot be private."""

    @property
    def spoons(self) -> Measures:
        """Which country's cup and spoons the house uses, and the units its tins are sold in."""
        return measures_of(self.cup, self.spoon, self.tins_sold_in)

    @property
    def usual_deep_mm(self) -> float:
        """How deep its usual tin really is: `usual depth`, allowing for the units tins are sold in."""
        return true_mm(round(self.usual_depth, 2), self.tins_sold_in)
