"""A variation: a mixture given by its base and by what differs from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from tinbook.models.mixture import Amount, MixLine, Mixture, Take, read_take
from tinbook.models.reading import Text, Written, spelled, such_as
from tinbook.models.steps import Step
from tinbook.units import Measures, Misread

NOT_TAKEN_OVER = frozenset(("name", "also", "about", "named_for", "private"))
"""Keys a variation has only if it writes them; any others it does not write come from its base."""


@dataclass(frozen=True, slots=True)
class Instead:
    """What goes in instead: `take` if it has an amount of its own, or else a name that keeps the line's amount."""

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
        raise Misread("what goes in instead?", 'write the ingredient, such as "buttermilk"', 0, len(text))
    return Instead(name.strip(), wanted.strip(), None)


class Change(Written):
    """One change to the mix: swap an ingredient, add one, leave one out, or change an amount. Each change is one
    of these four."""

    swap: Annotated[Text | None, such_as("milk")] = None
    """The ingredient to swap. Use `for` to say what goes in instead. Left out: nothing is swapped."""
    instead: Annotated[
        Instead | None,
        spelled(read_instead),
        Field(alias="for", examples=["buttermilk", "60 ml buttermilk, at room temperature"]),
    ] = None
    """What goes in instead. If you give only a name, the amount stays as it was. Left out: nothing is swapped."""
    add: Annotated[Amount | None, such_as("80 g walnuts, chopped")] = None
    """An ingredient to add. Left out: nothing is added."""
    leave_out: Annotated[Text | None, such_as("vanilla extract")] = None
    """An ingredient to leave out. Left out: nothing is left out."""
    amount: Annotated[Amount | None, such_as("300 g butter")] = None
    """A new amount of an ingredient that is there already. Left out: amounts stay as they are."""
    after: Annotated[Text | None, such_as("caster sugar")] = None
    """The ingredient to add it after. Left out: it goes at the end."""
    before: Annotated[Text | None, such_as("plain flour")] = None
    """The ingredient to add it before. Left out: it goes at the end."""
    part: Annotated[Text | None, such_as("for the syrup")] = None
    """Which part of the mix you mean. You have to say this if the ingredient is in more than one. Left out: the only
    part it is in; for something you add, the same part as the line next to it."""
    note: Annotated[Text | None, such_as("toasted and cold")] = None
    """A short note beside the line. Left out: if you change only the amount, the old note stays."""


class StepChange(Step):
    """A step to replace, add or leave out. It can have all the keys of a step, as well as these."""

    do: Annotated[Text, such_as("Fold in the walnuts with the last of the flour.")] = ""
    """What to do. Left out: you can only do without it in a step that says `leave out`."""
    instead_of: Annotated[Text | None, such_as("3", "Start slowly, with a cloth over the bowl")] = None
    """The step to replace, by its number in the other recipe, or by a few words that only that step has. Left out: it
    replaces none."""
    add_after: Annotated[Text | None, such_as("4")] = None
    """The step to put this one after. Left out: it replaces a step, or goes before one."""
    add_before: Annotated[Text | None, such_as("1")] = None
    """The step to put this one before. Left out: it replaces a step, or goes after one."""
    leave_out: Annotated[Text | None, such_as("5")] = None
    """The step to skip. Write nothing else beside it. Left out: no step is skipped."""


class Variation(Mixture):
    """A recipe that starts `from` another, and says only what differs. Any key of a recipe that you write here replaces
    the one it started with; everything else stays.

    Steps that say where they go change the base's method; if none does, together they are a new method.
    """

    needed = Mixture.needed | {"kind", "mix", "change"}

    base: Annotated[Text, Field(alias="from", examples=["creamed-butter-sponge"])]
    """The recipe it starts from, by file name, without `.yaml`."""
    kind: Annotated[Text, such_as("creamed")] = ""
    """What sort of mixture it is, if that changes. Left out: the same kind as the recipe it starts from."""
    mix: Annotated[tuple[MixLine, ...], such_as("- 250 g butter")] = ()
    """A whole new mix. Left out: the mix of the recipe it starts from, with the changes in `change`."""
    method: Annotated[
        tuple[StepChange, ...],
        such_as("- {instead of: 3, do: Beat in <eggs> with the coffee.}", "- {leave out: 5}"),
    ] = ()
    """The steps that differ. If none of them says which step it replaces or follows, together they make a whole new
    method. Left out: the method of the recipe it starts from."""
    change: Annotated[
        tuple[Change, ...],
        such_as(
            "- {swap: milk, for: buttermilk}",
            "- {add: 80 g walnuts, after: plain flour}\n- {leave out: vanilla extract}",
        ),
    ] = ()
    """What differs in the mix. Left out: nothing does."""


@dataclass(frozen=True, slots=True)
class Varies:
    """How a mixture came from its base: pairs of positions in the mixes, and in the methods, of the two.

    None on the left: added here; None on the right: left out. What is the same is not listed. With `anew` the method
    is entirely different.
    """

    base: str
    lines: tuple[tuple[int | None, int | None], ...] = ()
    steps: tuple[tuple[int | None, int | None], ...] = ()
    anew: bool = False
