"""What the house has and how it measures: house.yaml and tins.yaml."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Annotated, Any
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
from tinbook.tins import SHAPES, SOLD_IN, Tin, read_tin, read_tins, true_mm
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
        hint = f'write "book: {FORMAT}", or use the Tinbook this book was written for'
        raise Misread(f'this Tinbook reads books of format {FORMAT}, not "{text}"', hint, 0, len(text))
    return FORMAT


def _dial(text: str, _: Measures) -> Heat:
    return read_heat(text)


def _sold(text: str, _: Measures) -> Sold:
    words: dict[str, Sold] = {word: word for word in SOLD_IN}
    if text in words:
        return words[text]
    hint = "write cm where an 8 in tin is 200 mm wide, inches where it is 203 mm: measure one inside the rim"
    raise Misread(f'tins are not sold in "{text}" here', hint, 0, len(text))


def _address(text: str, _: Measures) -> str:
    try:
        parts = urlsplit(text)
        sound = parts.scheme in ("http", "https") and parts.hostname and parts.port != 0
    except ValueError:
        sound = None
    # A name with a password in it must not travel with every sheet.
    if not sound or re.search(r"[\s@?#\\\"<>]", text):
        raise Misread(
            f'"{text}" is not the address of a site', 'write it whole, such as "https://book.example.org"', 0, len(text)
        )
    return text.rstrip("/")


def _two_lengths(text: str, measures: Measures) -> tuple[float, float]:
    width, by, depth = text.replace("×", "x").partition(" x ")
    if not by or " x " in depth:
        raise Misread(f'"{text}" is not two lengths', 'write "44 cm x 36 cm"', 0, len(text))
    return _mm(width, measures), read_at(_mm, depth, len(width + by), measures)


def read_at(read: Callable[[str, Measures], float], part: str, at: int, measures: Measures, before: str = "") -> float:
    """Read the `part` of a text that starts at `at`; what is wrong with it has its place in the whole text.

    `before` is read before the part, and is not in the text.
    """
    try:
        return read(before + part, measures)
    except Misread as error:
        start, end = (at + max(0, edge - len(before)) for edge in (error.start, error.end))
        raise type(error)(error.message, error.hint, start, end) from None


Grams = Annotated[float, spelled(read_grams, like(patterns.MASS, "weight"))]
Millimetres = Annotated[float, spelled(_mm, like(patterns.LENGTH, "length"))]
Millilitres = Annotated[float, spelled(read_ml, like(patterns.VOLUME, "volume"))]


class Scales(Written):
    """What the kitchen scales are read to: `step_g`, or `fine_step_g` below `fine_below_g`."""

    step: Grams = 5.0
    fine_step: Grams = 1.0
    fine_below: Grams = 50.0


def _temperature(text: str, _: Measures) -> float:
    return read_temperature(text)


DEGREES: Mapping[str, Any] = like(rf"{patterns.NUMBER}\s*{patterns.DEGREES}", "temperature")
Celsius = Annotated[float, spelled(_temperature, DEGREES)]
"""How warm something is, °C."""


class Oven(Written):
    """The oven of the house. With its dial at `dial` a `thermometer` in the middle of the shelf says what it does."""

    kind: Annotated[str, one_of("conventional", "fan", "gas")] = "conventional"
    dial: Annotated[Heat, spelled(_dial, HEAT), such_as("180 °C")] | None = None
    thermometer: Annotated[Celsius, such_as("172 °C")] | None = None

    @property
    def fan(self) -> bool:
        """Whether it is set as a fan oven is."""
        return self.kind == "fan"

    @property
    def off_c(self) -> float:
        """How much hotter than its dial it is, °C; 0 where nobody has measured."""
        if self.dial is None or self.thermometer is None:
            return 0.0
        return self.thermometer - (self.dial.celsius - (FAN_DIFFERENCE_C if self.dial.fan else 0.0))


class House(Written):
    """house.yaml: the measures and the limits of this kitchen. Lengths in mm, weights in g.

    `also_show` names shapes of which every size stands in the recipes' tables, beside the everyday ones.
    `cross_contact` is what else the kitchen handles, in the house's own words, shown where allergens are.
    `tins_sold_in`: cm or inches, in which a tin with both names, 20 cm and 8 in, is true; cm where nothing is said.
    `address` is where the built book is found on the web, without a slash at its end.
    """

    needed = frozenset(("measures", "cup", "spoon", "eggs", "scales", "usual depth", "tins sold in"))

    book: Annotated[int, spelled(_book_format, {"enum": [FORMAT, str(FORMAT)]}), such_as(str(FORMAT))]
    name: Annotated[Text, such_as("Harbour house book")]
    measures: Annotated[str, one_of("grams", "ounces", "cups")] = "grams"
    cup: Annotated[str, one_of("US cup", "metric cup", "UK cup")] | None = None
    spoon: Annotated[str, one_of("metric", "US", "Australian")] = "metric"
    eggs: Text = "UK large"
    scales: Annotated[Scales, such_as("{step: 5 g, fine step: 1 g, fine below: 50 g}")] = Scales()
    mixer_bowl: Grams | None = None
    oven_shelf: (
        Annotated[tuple[float, float], spelled(_two_lengths, like(rf"{patterns.LENGTH}\s+[x×]\s+{patterns.LENGTH}"))]
        | None
    ) = None
    shelves: Annotated[int, whole_number(1, 10)] = 1
    oven: Annotated[Oven, such_as("{kind: fan, dial: 180 °C, thermometer: 172 °C}")] = Oven()
    usual_depth: Millimetres = 75.0
    tins_sold_in: Annotated[Sold, spelled(_sold, {"enum": list(SOLD_IN)}), such_as("inches")] = "cm"
    also_show: Annotated[tuple[Annotated[str, one_of(*SHAPES)], ...], ONE_OR_MORE, such_as("[heart, petal]")] = ()
    cross_contact: Annotated[Text | None, such_as("We bake with nuts and sesame in this kitchen.")] = None
    address: (
        Annotated[str, spelled(_address, like("[hH][tT][tT][pP][sS]?:[^\\s]+")), such_as("https://book.example.org")]
        | None
    ) = None
    private: Annotated[Private, such_as("[mixer bowl]")] = False

    @property
    def spoons(self) -> Measures:
        """Whose cup and spoons the house's sources mean, and what its tins are sold in."""
        return measures_of(self.cup, self.spoon, self.tins_sold_in)

    @property
    def usual_deep_mm(self) -> float:
        """How deep its usual tin truly is: `usual depth`, by what tins are sold in."""
        return true_mm(round(self.usual_depth, 2), self.tins_sold_in)


def _one_tin(text: str, measures: Measures) -> Tin:
    count, tin = read_tin(text, sold=measures.tins)
    if count != 1:
        raise Misread("one tin belongs here, without a number before it", 'say how many with "have: 2"', 0, len(text))
    return tin


def _one_or_set(text: str, measures: Measures) -> tuple[Tin, ...]:
    tins = read_tins(text, sold=measures.tins)
    return tuple(tin for _, tin in tins) if len(tins) > 1 else (_one_tin(text, measures),)


class OwnedTin(Written):
    """One tin on the shelf, how many of it (0: known, not owned), and what it holds to the brim if measured with water.

    `of_set` is the set it came in, as written.
    """

    tin: Annotated[Tin, spelled(_one_tin), such_as("round 20 cm x 7.5 cm")]
    have: Annotated[int, whole_number(0, 999)] = 1
    measured: Millilitres | None = None
    note: Text | None = None
    of_set: str = ""

    @property
    def measured_tin(self) -> Tin:
        """The tin with its measured volume, which wins over geometry."""
        return replace(self.tin, measured_ml=self.measured) if self.measured else self.tin


class ShelfLine(Written):
    """A line of tins.yaml: a tin, or a set of them; `name` is what an outline of one's own goes by."""

    tin: Annotated[tuple[Tin, ...], spelled(_one_or_set), such_as("round 20 cm x 7.5 cm")]
    have: Annotated[int, whole_number(0, 999)] = 1
    name: Annotated[Text, such_as("number 4")] | None = None
    measured: Millilitres | None = None
    note: Text | None = None

    @property
    def owned(self) -> tuple[OwnedTin, ...]:
        """Its tins, one by one."""
        of_set = " ".join(["set of", self.tin[0].shape, ", ".join(tin.size_label for tin in self.tin)])
        same: dict[str, Any] = {"have": self.have, "measured": self.measured, "note": self.note}
        same["of set"] = of_set if len(self.tin) > 1 else ""
        return tuple(OwnedTin.model_construct(tin=replace(tin, called=self.name or ""), **same) for tin in self.tin)


class TinShelf(Written):
    """tins.yaml."""

    tins: Annotated[tuple[ShelfLine, ...], such_as("- {tin: round 20 cm x 7.5 cm, have: 2}")]
    private: Private = False
