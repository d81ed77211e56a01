"""A mixture: what is mixed, for which tins, and how. And a technique: what hands do."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import model_validator

from tinbook.models.house import Grams, Millimetres
from tinbook.models.reading import ONE_OR_MORE, Leaf, Private, Text, Texts, YesNo, one_of, spelled
from tinbook.tins import Tin, read_tin
from tinbook.units import Heat, Measures, Misread, Quantity, Span, read_heat, read_line, read_span


@dataclass(frozen=True, slots=True)
class Take:
    """`340 g butter, soft` read: how much, of what, and how it is wanted. `at` is where the name starts."""

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
        raise Misread("an amount of what?", 'write the ingredient after it, such as "340 g butter"', 0, len(text))
    if quantity.dimension not in ("mass", "volume", "count"):
        raise Misread(
            f"an ingredient is not measured in {quantity.unit}", "write a weight, a volume or a number", 0, at
        )
    return Take(quantity, name.strip(), wanted.strip(), at, text)


class MixLine(Leaf):
    """One line of the mix: bench text, or the long form with `take`, `note`, `part`."""

    take: Annotated[Take, spelled(read_take)]
    note: Text | None = None
    part: Text | None = None

    @model_validator(mode="before")
    @classmethod
    def _short_form(cls, data: Any) -> Any:
        return data if isinstance(data, dict) else {"take": data}


def _minutes(text: str, measures: Measures) -> Span:
    return read_span(text, ("time",), measures)


Minutes = Annotated[Span, spelled(_minutes)]


class Step(Leaf):
    """One step: what to do, hands-on and waiting time, and what done looks like."""

    do: Text
    hands_on: Minutes | None = None
    waiting: Minutes | None = None
    done: Text | None = None

    @model_validator(mode="before")
    @classmethod
    def _short_form(cls, data: Any) -> Any:
        return data if isinstance(data, dict) else {"do": data}


def _oven(text: str, _: Measures) -> Heat:
    return read_heat(text)


class Bake(Leaf):
    """The bake as written: oven, time in the written tins, and the test that it is done."""

    oven: Annotated[Heat, spelled(_oven)]
    time: Minutes
    done: Text | None = None


def _tins(text: str, _: Measures) -> tuple[int, Tin]:
    return read_tin(text)


class Mixture(Leaf):
    """mixtures/NAME.yaml. Written for `tins`, or to make a weight of `makes` grams."""

    name: Text
    kind: Text
    also: Texts = ()
    tags: Texts = ()
    about: Text | None = None
    tins: Annotated[tuple[Annotated[tuple[int, Tin], spelled(_tins)], ...], ONE_OR_MORE] = ()
    makes: Grams | None = None
    batter_depth: Millimetres | None = None
    mix: tuple[MixLine, ...]
    bake: Bake | None = None
    method: tuple[Step, ...] = ()
    techniques: Texts = ()
    raising: Annotated[str, one_of("level", "less in wide tins")] = "level"
    cooked: YesNo = False
    keeps: Text | None = None
    notes: Texts = ()
    off_balance: Text | None = None
    private: Private = False


class Technique(Leaf):
    """techniques/NAME.yaml."""

    name: Text
    purpose: Text
    also: Texts = ()
    tags: Texts = ()
    tools: Texts = ()
    steps: tuple[Step, ...]
    tips: Texts = ()
    related: Texts = ()
    mixtures: Texts = ()
    private: Private = False
