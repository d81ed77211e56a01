"""What the house knows about its ingredients: ingredients.yaml, with a card for each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import model_validator

from tinbook.models.house import read_at, read_grams, read_ml
from tinbook.models.made_of import MadeOfText
from tinbook.models.packs import NEVER, PackOfFood
from tinbook.models.reading import ONE_OR_MORE, Private, Text, Texts, Written, YesNo, spelled, such_as, text_of
from tinbook.models.steps import Standing
from tinbook.problems import nearest
from tinbook.units import Measures, Misread, read_mass


@dataclass(frozen=True, slots=True)
class Weight:
    """What a card says about an ingredient's weight by volume. `g_per_ml` None: it has no volume measure."""

    g_per_ml: float | None
    written: str


def _weighs(text: str, measures: Measures) -> Weight:
    if text == "no volume measure":
        return Weight(None, text)
    if text.endswith("g/ml"):
        return Weight(read_mass(text.removesuffix("/ml"), measures).base, text)
    mass, per, volume = text.partition(" per ")
    if not per:
        hint = 'write "0.85 g/ml", "200 g per US cup" or "no volume measure"'
        raise Misread(f'"{text}" does not say how much a given volume weighs', hint, 0, len(text))
    one = "" if volume[:1].isdigit() else "1 "
    return Weight(read_grams(mass, measures) / read_at(read_ml, volume, len(mass + per), measures, one), text)


@dataclass(frozen=True, slots=True)
class Each:
    """What one weighs: part of an egg of the house's size, or grams."""

    part: str
    grams: float | None


EGG_PARTS = ("whole egg", "egg white", "egg yolk")


def _each(text: str, measures: Measures) -> Each:
    if text in EGG_PARTS:
        return Each(text, None)
    try:
        return Each("", read_mass(text, measures).base)
    except Misread as error:
        near = nearest(text, EGG_PARTS)
        hint = f'did you mean "{near}"?' if near else f"write {', '.join(EGG_PARTS)}, or a weight such as 58 g"
        raise Misread(f'"{text}" is not a weight or a part of an egg', hint, error.start, error.end) from None


Weighs = Annotated[Weight, spelled(_weighs)]
WeightOfOne = Annotated[Each, spelled(_each)]


class Card(Written):
    """The card for one ingredient: what else it is called, what it weighs and what you need to know about it."""

    needed = frozenset(("weighs as", "weighs", "each", "allergens", "care", "raises", "counts as", "used as"))

    about: Annotated[Text | None, such_as("White sugar ground fine enough to cream.")] = None
    """What it is and what it does. Left out: nothing is shown."""
    also: Annotated[Texts, such_as("[superfine sugar, bar sugar]")] = ()
    """Other names recipes may use for it. Left out: it has only its own name."""
    weighs_as: Annotated[Text | None, such_as("caster sugar", '"plain flour, spooned"')] = None
    """Which published weight to use for it, so that cups and spoons of it can be weighed. Left out: what `weighs` says.
    Without either, recipes cannot measure it by volume."""
    weighs: Annotated[Weighs | None, such_as("140 g per US cup", "0.85 g/ml", "no volume measure")] = None
    """Your own figure for what a measure of it weighs. Left out: what `weighs as` says."""
    each: Annotated[WeightOfOne | None, such_as("whole egg", "18 g")] = None
    """What one of them weighs, so that recipes can count them: part of an egg of your size, or a weight. Left out: it
    cannot be counted."""
    allergens: Annotated[Texts | None, such_as("[milk]", "none")] = None
    """The allergens in it, or `none` if you know there are none. Left out: unknown. The book then says "unknown", never
    "free from"."""
    made_of: Annotated[
        MadeOfText | None,
        such_as('"sugar, fat (palm, rapeseed), emulsifier: lecithin (soya)"', "fortified wheat flour", "itself"),
    ] = None
    """What the packet says it is made of, in its words and its order, for labels; `itself` for what is one thing, such
    as salt. UK white flour is `fortified wheat flour`: the book adds what the law has put in it. Left out: lists of
    ingredients with it are not complete, and no label is printed."""
    care: Annotated[Texts, such_as("[raw egg]")] = ()
    """Anything about it that needs a caution, in the book's words for cautions. Left out: nothing."""
    raises: Annotated[YesNo, such_as("yes")] = False
    """Whether it is a raising agent. A recipe can use less of it in wide tins."""
    counts_as: Annotated[Text | None, such_as("flour")] = None
    """What it counts as in the balance of a cake. Left out: whatever kind of ingredient its published weight is for."""
    plain: Annotated[Text | None, such_as("plain flour")] = None
    """For a self-raising flour: the card for the plain flour to match. Left out: it is not a self-raising flour."""
    used_as: Annotated[Text | None, such_as("sugarpaste")] = None
    """For a paste or filling you buy: the kind of mixture it is used as on a cake. Left out: the kind with the same
    name, if there is one."""
    packs: Annotated[tuple[PackOfFood, ...], ONE_OR_MORE, such_as("[250 g, 1 kg]", "1 l", "[6, 12]", "none")] = ()
    """The packs it is sold in, by weight, by volume, or by number if one is counted; `none` for what you never buy,
    such as water. Left out: the book says how much to buy, not how many packs."""
    found_in: Annotated[Text | None, such_as("the grocer's fridge")] = None
    """Where you buy it: the shopping list is in these groups. Left out: it comes at the end of the list."""
    kept_in: Annotated[Text | None, such_as("the tin by the door")] = None
    """Where it is kept at home. Left out: nothing is shown."""
    keeps_opened: Annotated[Standing | None, such_as("3 days", "6 weeks")] = None
    """How long a pack of it keeps once it is opened. What is left of it is then not counted on for a later order. Left
    out: it keeps."""
    swaps: Annotated[Texts, such_as("[caster from granulated]")] = ()
    """What you can use instead, from the swaps the book knows. Left out: none is offered."""
    notes: Annotated[Texts, such_as("[Press it into the cup. Rub out any lumps.]")] = ()
    """Anything worth knowing when you buy it or use it. Left out: nothing is shown."""
    private: Annotated[Private, such_as("yes", "[notes]")] = False
    """What to leave out of a public site: `yes` for the whole card, or the names of keys. Anything needed for safety
    or calculations stays, without its name."""

    @property
    def known_allergens(self) -> tuple[str, ...] | None:
        """The allergens named; empty for a card that says `none`, None if nobody has said (`[]` says nothing)."""
        return () if self.allergens == ("none",) else self.allergens or None

    @property
    def never_bought(self) -> bool:
        """Whether it comes from the tap, or from the garden."""
        return any(pack.kind == NEVER for pack in self.packs)


class Larder(Written):
    """A card for every ingredient your recipes name."""

    ingredients: Annotated[
        Mapping[str, Card],
        such_as("{butter: {allergens: [milk]}}", "caster sugar: {weighs as: caster sugar}\nsalt: {allergens: none}"),
    ]
    """A card for every ingredient, under its name. If you know nothing about one yet, its name and a colon will
    do."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave the whole of it out of a public site."""

    @model_validator(mode="before")
    @classmethod
    def _empty_cards(cls, data: Any) -> Any:
        """A name with nothing after its colon is a card about which nothing is known yet."""
        cards = data.get("ingredients") if isinstance(data, Mapping) else None
        if not isinstance(cards, Mapping):
            return data
        return {**data, "ingredients": {text_of(name): card or {} for name, card in cards.items()}}
