"""A variation: a mixture told by its base and by what differs from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from tinbook.models.mixture import Amount, MixLine, Mixture, Take, read_take
from tinbook.models.reading import Text, Written, spelled, such_as
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
    """`buttermilk, at room heat` or `60 ml buttermilk`; raises Misread."""
    if text[:1].isnumeric():
        take = read_take(text, measures)
        return Instead(take.name, take.wanted, take)
    name, _, wanted = text.partition(",")
    if not name.strip():
        raise Misread("instead it gets what?", 'write the ingredient, such as "buttermilk"', 0, len(text))
    return Instead(name.strip(), wanted.strip(), None)


class Change(Written):
    """One change of the mix. It swaps a line for another, adds one, leaves one out, or takes another amount: one of the
    four.
    """

    swap: Annotated[Text | None, such_as("milk")] = None
    """The ingredient of the base that something else goes in for. Say with `for` what. Left out: nothing is swapped."""
    instead: Annotated[
        Instead | None,
        spelled(read_instead),
        Field(alias="for", examples=["buttermilk", "60 ml buttermilk, at room temperature"]),
    ] = None
    """What goes in instead. By its name alone it takes the amount of the line it stands for. Left out: there is nothing
    to swap for."""
    add: Annotated[Amount | None, such_as("80 g walnuts, chopped")] = None
    """A line the base has not. Left out: nothing is added."""
    leave_out: Annotated[Text | None, such_as("vanilla extract")] = None
    """The ingredient of the base that is not in this one. Left out: nothing is taken away."""
    amount: Annotated[Amount | None, such_as("300 g butter")] = None
    """Another amount of an ingredient of the base. Left out: amounts stay as they are."""
    after: Annotated[Text | None, such_as("caster sugar")] = None
    """The ingredient behind which a line is added. Left out: it goes last."""
    before: Annotated[Text | None, such_as("plain flour")] = None
    """The ingredient in front of which a line is added. Left out: it goes last."""
    part: Annotated[Text | None, such_as("for the syrup")] = None
    """The part of the mix that is meant; to be said where an ingredient stands in several. Left out: the only one there
    is, or for a line that is added the one it is put beside."""
    note: Annotated[Text | None, such_as("toasted and cold")] = None
    """A word beside the changed line. Left out: where only the amount is changed, the line keeps the note it had."""


class StepChange(Step):
    """A step of a variation stands instead of a step of its base, is added to them, or leaves one out. It has the keys
    of every step, and these.
    """

    do: Annotated[Text, such_as("Fold in the walnuts with the last of the flour.")] = ""
    """What to do. Left out: only where the step says `leave out`."""
    instead_of: Annotated[Text | None, such_as("3", "Start slowly under a cloth")] = None
    """The step of the base in whose place this one stands: by its number there, or by words that it alone says. Left
    out: it takes no step's place."""
    add_after: Annotated[Text | None, such_as("4")] = None
    """The step of the base behind which this one comes. Left out: it is not added there."""
    add_before: Annotated[Text | None, such_as("1")] = None
    """The step of the base before which this one comes. Left out: it is not added there."""
    leave_out: Annotated[Text | None, such_as("5")] = None
    """The step of the base that is not done. Nothing else is written beside it. Left out: none is dropped."""


class Variation(Mixture):
    """A recipe that starts `from` another and says what differs. Of the keys of a recipe, what it writes stands in
    place of its base's, and what it does not write is as there.

    Steps that say where they go change the base's method; where none does, they are a method of its own.
    """

    needed = Mixture.needed | {"kind", "mix", "change"}

    base: Annotated[Text, Field(alias="from", examples=["creamed-butter-sponge"])]
    """The mixture it starts from, by the name of its file without `.yaml`."""
    kind: Annotated[Text, such_as("creamed")] = ""
    """What sort of mixture it is, where it is not its base's. Left out: as its base."""
    mix: Annotated[tuple[MixLine, ...], such_as("- 250 g butter")] = ()
    """A mix of its own, in place of the base's. Left out: the base's mix, with what `change` does to it."""
    method: Annotated[
        tuple[StepChange, ...],
        such_as("- {instead of: 3, do: Beat in <eggs> with the coffee.}", "- {leave out: 5}"),
    ] = ()
    """Steps that differ. Where none says which step of the base it is about, they are a method of its own. Left out:
    the base's method."""
    change: Annotated[
        tuple[Change, ...],
        such_as(
            "- {swap: milk, for: buttermilk}",
            "- {add: 80 g walnuts, after: plain flour}\n- {leave out: vanilla extract}",
        ),
    ] = ()
    """What differs in the mix, change by change. Left out: the mix is the base's."""


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
