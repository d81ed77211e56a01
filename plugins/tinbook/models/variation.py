"""A variation: a mixture told by its base and by what differs from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from tinbook.models.mixture import MixLine, Mixture, Take, read_take
from tinbook.models.reading import LINE, Text, Written, spelled, such_as
from tinbook.models.steps import Step
from tinbook.units import Measures, Misread

NOT_TAKEN_OVER = frozenset(("name", "also", "about", "private"))
"""Keys a variation has of its own or not at all; any other that it does not write is its base's."""


@dataclass(frozen=True, slots=True)
class Instead:
    """What goes in instead: `take` where it comes with an amount of its own, else a name that keeps the line's."""

    name: str
    wanted: str
    take: Take | None


def read_instead(text: str, measures: Measures) -> Instead:
    """`buttermilk, at room temperature` or `60 ml buttermilk`; raises Misread."""
    if text[:1].isnumeric():
        take = read_take(text, measures)
        return Instead(take.name, take.wanted, take)
    name, _, wanted = text.partition(",")
    if not name.strip():
        raise Misread("instead it gets what?", 'write the ingredient, such as "buttermilk"', 0, len(text))
    return Instead(name.strip(), wanted.strip(), None)


class Change(Written):
    """One change of the mix: swap a line for another, add one, leave one out, or another amount of the same.

    `part` says in which part of the mix; `after` and `before` where a line is added, else it goes last.
    """

    swap: Text | None = None
    instead: Annotated[Instead | None, spelled(read_instead), Field(alias="for", examples=["buttermilk"])] = None
    add: Annotated[Take | None, spelled(read_take, LINE), such_as("80 g walnuts, chopped")] = None
    leave_out: Text | None = None
    amount: Annotated[Take | None, spelled(read_take, LINE), such_as("300 g butter")] = None
    after: Text | None = None
    before: Text | None = None
    part: Text | None = None
    note: Text | None = None


class StepChange(Step):
    """A step of a variation: one that stands instead of a step of the base, or is added, or leaves one out.

    The steps of the base go by their number there, or by words that only one of them says.
    """

    do: Text = ""
    instead_of: Text | None = None
    add_after: Text | None = None
    add_before: Text | None = None
    leave_out: Text | None = None


class Variation(Mixture):
    """mixtures/NAME.yaml with `from`. A key that is written stands instead of the base's; `change` changes its mix.

    Steps that say where they go change the base's method; where none does, they are a method of its own.
    """

    needed = Mixture.needed | {"kind", "mix", "change"}

    base: Annotated[Text, Field(alias="from", examples=["creamed-butter-sponge"])]
    kind: Text = ""
    mix: tuple[MixLine, ...] = ()
    method: tuple[StepChange, ...] = ()
    change: Annotated[tuple[Change, ...], such_as("- {swap: milk, for: buttermilk}")] = ()


@dataclass(frozen=True, slots=True)
class Varies:
    """How a mixture came from its base: pairs of places in the mix and the method of the two.

    None on the left: added here; None on the right: left out. What is alike is not among them. With `anew` the method
    is another altogether.
    """

    base: str
    lines: tuple[tuple[int | None, int | None], ...] = ()
    steps: tuple[tuple[int | None, int | None], ...] = ()
    anew: bool = False
