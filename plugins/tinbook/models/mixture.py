"""A mixture: what is mixed, for which tins, and how."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, ClassVar

from pydantic import AfterValidator, PlainValidator, ValidationInfo

from tinbook.models.finish import Finish
from tinbook.models.house import Grams, Millimetres, OvenHeat
from tinbook.models.keeping import KeepsFor, Seasons
from tinbook.models.reading import (
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
from tinbook.units import Measures, Misread, Quantity, read_line


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


Amount = Annotated[Take, spelled(read_take, LINE)]
"""How much, and of what."""


class MixLine(WrittenLine):
    """One line of the mix: an amount and what of, or the long form with these keys."""

    chief: ClassVar[str] = "take"

    take: Annotated[Amount, such_as("250 g butter", "1 1/2 tsp vanilla extract", "4 eggs")]
    """How much, and of what. The name has to be on a card in `house/ingredients.yaml`; what follows a comma says how it
    is wanted, as in `250 g butter, soft`."""
    note: Annotated[Text | None, such_as("the pale one, not muscovado")] = None
    """A word beside the line, for whoever weighs it out. Left out: nothing stands there."""
    part: Annotated[Text | None, such_as("for the syrup")] = None
    """Which part of the mix the line belongs to. Lines of one part stand together under its name. Left out: the line
    belongs to the mix as a whole."""


class Bake(Written):
    """The bake: what the oven is set to, how long it takes in the tins of the recipe, how you know it is done."""

    oven: Annotated[OvenHeat, such_as("170 °C", "160 °C fan", "gas mark 3", "325 °F")]
    """What the oven is set to. Without the word `fan` it is an oven with no fan."""
    time: Annotated[Minutes, such_as("55-65 min", "1 h 10 min")]
    """How long it bakes in the tins of the recipe. For other tins the book works it out."""
    done: Annotated[Text | None, such_as("The top springs back and a skewer comes out clean.")] = None
    """How you know that it is done: what you see, hear and feel. Left out: the page gives the time alone."""


def _tins(value: Any, info: ValidationInfo) -> Any:
    """A number of one tin; of a set a tuple of these, which _flat lays among the others."""
    tins = read_tins(text_of(value), tins_in(info), measures_in(info).tins)
    return tins[0] if len(tins) == 1 else tins


def _flat(lines: tuple[Any, ...]) -> tuple[Any, ...]:
    return tuple(each for line in lines for each in (line if isinstance(line[0], tuple) else (line,)))


Tins = Annotated[tuple[int, Tin], PlainValidator(_tins, json_schema_input_type=str)]


class Mixture(Written):
    """A file in `recipes/mixtures` is one recipe, written for `tins`, or for the weight that it `makes`. Its name, in
    small letters and with hyphens, is the recipe's address.
    """

    needed = frozenset(("tins", "makes", "batter depth", "bake", "raising", "cooked"))

    name: Annotated[Text, such_as("Lemon sponge")]
    """What it is called, at the head of its page and in every list."""
    kind: Annotated[Text, such_as("creamed", "mud", "buttercream")]
    """What sort of mixture it is. How far it rises, what it loses in the oven and how heavy it is go by this."""
    also: Annotated[Texts, such_as("[lemon cake, lemon layer cake]")] = ()
    """Other names people ask for it by. Find knows them. Left out: it goes by its name alone."""
    tags: Annotated[Texts, such_as("[citrus, carves well]")] = ()
    """Words that bring it together with others on the page of tags. Left out: it has none."""
    seasons: Annotated[Seasons, such_as("autumn", "[spring, October to December]")] = ()
    """When you make it. Lists can be narrowed to the season. Left out: it belongs to no season."""
    about: Annotated[Text | None, such_as("A light crumb that keeps three days.")] = None
    """A line or two at the top of its page. Left out: the page begins without."""
    tins: Annotated[
        tuple[Tins, ...],
        AfterValidator(_flat),
        ONE_OR_MORE,
        such_as("2 round 20 cm x 7.5 cm", "[square 20 cm x 7.5 cm, 12 standard cups]"),
    ] = ()
    """The tins these amounts fill. Every other tin is worked out from them. Left out: the recipe says `makes`."""
    makes: Annotated[Grams | None, such_as("900 g")] = None
    """What the mix weighs when it is made, for fillings, icings and pastes. Left out: the recipe says `tins`."""
    batter_depth: Annotated[Millimetres | None, such_as("38 mm")] = None
    """How deep the batter lies in the tins before it bakes. Left out: it follows from the weight, the tins and the
    kind."""
    mix: Annotated[tuple[MixLine, ...], such_as("- 250 g butter", "- 250 g butter, soft\n- 250 g caster sugar")]
    """What goes into it, a line each, in the order you weigh it out."""
    bake: Annotated[Bake | None, such_as("{oven: 170 °C, time: 55-65 min}")] = None
    """The oven, the time and how you know it is done. Left out: it is not baked. With `tins` it has to be there."""
    method: Annotated[
        tuple[Step, ...],
        such_as(
            "- Beat <butter> with <caster sugar> until pale.",
            "- {do: Fold in <1/2 plain flour>., hands on: 4 min}",
        ),
    ] = ()
    """What you do, step by step. A name in angle brackets is a line of the mix and is shown with its amount; `<tins>`
    are the tins. Left out: the page has no method."""
    techniques: Annotated[Texts, such_as("[line-a-tin, level-and-cut]")] = ()
    """Techniques that go with it, by the names of their files without `.yaml`. Left out: none is named."""
    raising: Annotated[str, one_of("level", "less in wide tins"), such_as("less in wide tins")] = "level"
    """Whether tins of 30 cm and wider get less raising agent for their size, so that the middle does not climb and
    sink."""
    cooked: Annotated[YesNo, such_as("yes")] = False
    """Whether flour and egg in it are heated until they are safe, though it is not baked. With `no`, the caution on raw
    egg or flour stands on its page."""
    finish: Annotated[Finish | None, such_as("{layers: 4, filling: 5 mm}")] = None
    """How this cake is finished, where it differs from the house. Left out: as `house/finish.yaml` says."""
    keeps: Annotated[Text | None, such_as("Four days wrapped, somewhere cool.")] = None
    """How it keeps, in your own words. Left out: nothing is said."""
    keeps_for: Annotated[KeepsFor, such_as("3 days", "[3 days, 2 months in the freezer]")] = ()
    """The same as times, so that lists can be narrowed by them. Left out: lists do not know how long it keeps."""
    notes: Annotated[Texts, such_as("[Freezes well, unfilled.]")] = ()
    """What you have learned of it. Left out: there are none."""
    off_balance: Annotated[Text | None, such_as("The syrup goes in after baking.")] = None
    """Why its formula may lie outside what is usual for its kind. Your reason stands beside the figures. Left out: no
    reason is given."""
    private: Annotated[Private, such_as("yes", "[notes, keeps]")] = False
    """What a public site leaves out: `yes` for all of it, or the names of keys."""
