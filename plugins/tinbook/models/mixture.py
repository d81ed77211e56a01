"""A mixture: what goes into it, for which tins, and how it is made."""

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
    """`250 g butter, soft` as read: how much, of what, and in what state. `at` is where the name starts."""

    quantity: Quantity
    name: str
    wanted: str
    at: int
    written: str


def read_take(text: str, measures: Measures) -> Take:
    """Read one line of a mix as a baker writes it; raises Misread with the span of the mistake."""
    quantity, rest, at = read_line(text, measures)
    name, _, wanted = rest.partition(",")
    if not name.strip():
        raise Misread("an amount of what?", 'write the ingredient after it, such as "250 g butter"', 0, len(text))
    if quantity.dimension not in ("mass", "volume", "count"):
        raise Misread(f"ingredients are not measured in {quantity.unit}", "write a weight, a volume or a number", 0, at)
    return Take(quantity=quantity, name=name.strip(), wanted=wanted.strip(), at=at, written=text)


Amount = Annotated[Take, spelled(read_take, LINE)]
"""How much, and of what."""


class MixLine(WrittenLine):
    """One line of the mix. Usually an amount and an ingredient will do; these keys say more."""

    chief: ClassVar[str] = "take"

    take: Annotated[Amount, such_as("250 g butter", "1 1/2 tsp vanilla extract", "4 eggs")]
    """How much, and of what. The ingredient needs a card in `house/ingredients.yaml`. After a comma you can say how you
    want it, as in `250 g butter, soft`."""
    note: Annotated[Text | None, such_as("the pale one, not muscovado")] = None
    """A short note beside the line, to read when you weigh it out. Left out: nothing is shown."""
    part: Annotated[Text | None, such_as("for the syrup")] = None
    """The part of the mix it belongs to. Lines with the same part are shown together under that name. Left out: it
    belongs to no part."""


class Bake(Written):
    """What you set the oven to, how long it takes in the recipe's own tins, and how you know it is done."""

    oven: Annotated[OvenHeat, such_as("170 °C", "160 °C fan", "gas mark 3", "325 °F")]
    """What you set the oven to. Add `fan` if the figure is for a fan oven."""
    time: Annotated[Minutes, such_as("55-65 min", "1 h 10 min")]
    """How long it takes in the recipe's own tins. Times for other tins are worked out."""
    done: Annotated[Text | None, such_as("The top springs back and a skewer comes out clean.")] = None
    """How you know it is done: what you see, hear and feel. Left out: the page gives only the time."""


def _tins(value: Any, info: ValidationInfo) -> Any:
    """How many of one tin; for a set, a tuple of these, which _flat puts among the others."""
    tins = read_tins(text_of(value), tins_in(info), measures_in(info).tins)
    return tins[0] if len(tins) == 1 else tins


def _flat(lines: tuple[Any, ...]) -> tuple[Any, ...]:
    return tuple(each for line in lines for each in (line if isinstance(line[0], tuple) else (line,)))


Tins = Annotated[tuple[int, Tin], PlainValidator(_tins, json_schema_input_type=str)]


class Mixture(Written):
    """Each file in `recipes/mixtures` is one recipe, for certain `tins` or for the weight it `makes`. Name the file in
    lower case with hyphens: that becomes its address.
    """

    needed = frozenset(("tins", "makes", "batter depth", "bake", "raising", "cooked"))

    name: Annotated[Text, such_as("Harbour sponge")]
    """What it is called, at the top of its page and in every list."""
    kind: Annotated[Text, such_as("creamed", "mud", "buttercream")]
    """What sort of mixture it is. This decides how far it rises, what it loses in the oven and how heavy it is."""
    also: Annotated[Texts, such_as("[harbour cake, everyday sponge]")] = ()
    """Other names people may look for it by. Left out: only its own name is found."""
    tags: Annotated[Texts, such_as("[everyday, carves well]")] = ()
    """Words that group it with others like it on the tags page. Left out: it has no tags."""
    seasons: Annotated[Seasons, such_as("autumn", "[spring, October to December]")] = ()
    """What time of year you make it, so that lists can be narrowed to a season. Left out: it is for all seasons."""
    about: Annotated[Text | None, such_as("A light crumb that keeps three days.")] = None
    """A line or two about it. Left out: nothing is shown."""
    tins: Annotated[
        tuple[Tins, ...],
        AfterValidator(_flat),
        ONE_OR_MORE,
        such_as("2 round 20 cm x 7.5 cm", "[square 20 cm x 7.5 cm, 12 standard cups]"),
    ] = ()
    """The tins these amounts fill. The amounts for every other tin are worked out from these. Left out: write `makes`
    instead."""
    makes: Annotated[Grams | None, such_as("900 g")] = None
    """What the finished mix weighs, for fillings, icings and pastes. Left out: write `tins` instead."""
    batter_depth: Annotated[Millimetres | None, such_as("38 mm")] = None
    """How deep the batter is in the tins before it bakes. Left out: it is worked out from the weight, the tins and the
    kind."""
    mix: Annotated[tuple[MixLine, ...], such_as("- 250 g butter", "- 250 g butter, soft\n- 250 g caster sugar")]
    """What goes into it, one ingredient to a line, in the order you weigh them out."""
    bake: Annotated[Bake | None, such_as("{oven: 170 °C, time: 55-65 min}")] = None
    """The oven, the time, and how you know it is done. A recipe with `tins` must have this. Left out: it is not
    baked."""
    method: Annotated[
        tuple[Step, ...],
        such_as(
            "- Beat <butter> with <caster sugar> until pale.",
            "- {do: Fold in <1/2 plain flour>., hands on: 4 min}",
        ),
    ] = ()
    """What you do, step by step. Put an ingredient in angle brackets and the step shows its amount; `<tins>` shows the
    tins. Left out: the page has no method."""
    named_for: Annotated[Texts, such_as("[walnuts]", "[carrots, walnuts]")] = ()
    """What its name or its picture promises, by the words its lines use. A label gives its percentage. Left out: no
    percentage is given."""
    techniques: Annotated[Texts, such_as("[line-a-tin, level-and-cut]")] = ()
    """Techniques that go with it, by file name, without `.yaml`. Left out: none is linked."""
    raising: Annotated[str, one_of("level", "less in wide tins"), such_as("less in wide tins")] = "level"
    """Whether tins 30 cm wide and over get a little less raising agent, so that the middle does not rise and then
    sink."""
    cooked: Annotated[YesNo, such_as("yes")] = False
    """Whether it is heated enough to make the flour and egg in it safe, though it is never baked. If not, its page
    shows the caution about raw flour or egg."""
    finish: Annotated[Finish | None, such_as("{layers: 4, filling: 5 mm}")] = None
    """How this cake is finished, if that differs from your other cakes. Left out: like your other cakes."""
    keeps: Annotated[Text | None, such_as("Four days wrapped, somewhere cool.")] = None
    """How it keeps, in your own words. Left out: the page does not say."""
    keeps_for: Annotated[KeepsFor, such_as("3 days", "[3 days, 2 months in the freezer]")] = ()
    """The same, as plain lengths of time, so that lists can be narrowed by it. Left out: lists do not know how
    long it keeps."""
    notes: Annotated[Texts, such_as("[Freezes well, unfilled.]")] = ()
    """What you have learned about it. Left out: nothing is shown."""
    off_balance: Annotated[Text | None, such_as("The syrup goes in after baking.")] = None
    """Why its formula is right even though it is outside the usual range. Your reason is shown beside the figures. Left
    out: no reason is shown."""
    private: Annotated[Private, such_as("yes", "[notes, keeps]")] = False
    """What to leave out of a public site: `yes` for the whole recipe, or the names of keys."""
