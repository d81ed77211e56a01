"""A mixture: what is mixed, for which tins, and how."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, ClassVar

from pydantic import AfterValidator, PlainValidator, ValidationInfo

from tinbook.models.finish import Finish
from tinbook.models.house import Grams, Millimetres
from tinbook.models.keeping import KeepsFor, Seasons
from tinbook.models.reading import (
    HEAT,
    LINE,
    ONE_OR_MORE,
    Private,
    Text,
    Texts,
    Written,
    WrittenLine,
    YesNo,
    measures_in,
    one_of,
    spelled,
    such_as,
    text_of,
    tins_in,
)
from tinbook.models.steps import Minutes, Step
from tinbook.tins import Tin, read_tins
from tinbook.units import Heat, Measures, Misread, Quantity, read_heat, read_line


@dataclass(frozen=True, slots=True, kw_only=True)
class Take:
    """`250 g butter, soft` read: how much, of what, and how it is wanted. `at` is where the name starts."""

    quantity: Quantity
    name: str
    wanted: str
    at: int
    written: str


def read_take(text: str, measures: Measures) -> Take:
    """Read one line of a mix in bench spelling; raises Misread with the span of what is wrong."""
    quantity, rest, at = read_line(text, measures)
    name, _, wanted = rest.partition(",")
    if not name.strip():
        raise Misread("an amount of what?", 'write the ingredient after it, such as "250 g butter"', 0, len(text))
    if quantity.dimension not in ("mass", "volume", "count"):
        raise Misread(
            f"an ingredient is not measured in {quantity.unit}", "write a weight, a volume or a number", 0, at
        )
    return Take(quantity=quantity, name=name.strip(), wanted=wanted.strip(), at=at, written=text)


class MixLine(WrittenLine):
    """One line of the mix: bench text, or the long form with `take`, `note`, `part`."""

    chief: ClassVar[str] = "take"

    take: Annotated[Take, spelled(read_take, LINE), such_as("250 g butter")]
    note: Text | None = None
    part: Text | None = None


def _oven(text: str, _: Measures) -> Heat:
    return read_heat(text)


class Bake(Written):
    """The bake as written: oven, time in the written tins, and the test that it is done."""

    oven: Annotated[Heat, spelled(_oven, HEAT), such_as("170 °C")]
    time: Annotated[Minutes, such_as("55-65 min")]
    done: Text | None = None


def _tins(value: Any, info: ValidationInfo) -> Any:
    """A number of one tin; of a set a tuple of these, which _flat lays among the others."""
    tins = read_tins(text_of(value), tins_in(info), measures_in(info).tins)
    return tins[0] if len(tins) == 1 else tins


def _flat(lines: tuple[Any, ...]) -> tuple[Any, ...]:
    return tuple(each for line in lines for each in (line if isinstance(line[0], tuple) else (line,)))


Tins = Annotated[tuple[int, Tin], PlainValidator(_tins, json_schema_input_type=str)]


class Mixture(Written):
    """mixtures/NAME.yaml. Written for `tins`, or to make a weight of `makes` grams."""

    needed = frozenset(("tins", "makes", "batter depth", "bake", "raising", "cooked"))

    name: Annotated[Text, such_as("Lemon sponge")]
    kind: Annotated[Text, such_as("creamed")]
    also: Texts = ()
    tags: Texts = ()
    seasons: Annotated[Seasons, such_as("autumn")] = ()
    about: Text | None = None
    tins: Annotated[tuple[Tins, ...], AfterValidator(_flat), ONE_OR_MORE, such_as("2 round 20 cm x 7.5 cm")] = ()
    makes: Grams | None = None
    batter_depth: Millimetres | None = None
    mix: Annotated[tuple[MixLine, ...], such_as("- 250 g butter")]
    bake: Annotated[Bake | None, such_as("{oven: 170 °C, time: 55-65 min}")] = None
    method: tuple[Step, ...] = ()
    techniques: Texts = ()
    raising: Annotated[str, one_of("level", "less in wide tins")] = "level"
    cooked: YesNo = False
    finish: Annotated[Finish | None, such_as("{layers: 4, filling: 5 mm}")] = None
    keeps: Text | None = None
    keeps_for: Annotated[KeepsFor, such_as("3 days")] = ()
    notes: Texts = ()
    off_balance: Text | None = None
    private: Private = False
