"""What the house knows of its ingredients: ingredients.yaml, a card for each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import model_validator

from tinbook.models.house import Grams, read_at, read_grams, read_ml
from tinbook.models.reading import ONE_OR_MORE, Private, Text, Texts, Written, YesNo, spelled, such_as, text_of
from tinbook.problems import nearest
from tinbook.units import Measures, Misread, read_mass


@dataclass(frozen=True, slots=True)
class Weight:
    """What a card says of an ingredient's weight by volume. `g_per_ml` None: it has no volume measure."""

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
        raise Misread(f'"{text}" is not a weight for a volume', hint, 0, len(text))
    one = "" if volume[:1].isdigit() else "1 "
    return Weight(read_grams(mass, measures) / read_at(read_ml, volume, len(mass + per), measures, one), text)


@dataclass(frozen=True, slots=True)
class Each:
    """The weight of one: a part of an egg of the house's class, or grams."""

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
        raise Misread(f'"{text}" is not the weight of one', hint, error.start, error.end) from None


Weighs = Annotated[Weight, spelled(_weighs)]
WeightOfOne = Annotated[Each, spelled(_each)]


class Card(Written):
    """The card of one ingredient: its other names, what it weighs, what has to be known of it."""

    needed = frozenset(("weighs as", "weighs", "each", "allergens", "care", "raises", "counts as", "used as"))

    about: Annotated[Text | None, such_as("White sugar ground fine enough to cream.")] = None
    """What it is and does. Left out: its page begins without."""
    also: Annotated[Texts, such_as("[superfine sugar, bar sugar]")] = ()
    """Other names recipes may call it by. Left out: its own name alone."""
    weighs_as: Annotated[Text | None, such_as("caster sugar", '"plain flour, spooned"')] = None
    """The published weight it goes by, so that cups and spoons can be weighed. Left out: what `weighs` says; with
    neither, only weights and pieces of it can be written."""
    weighs: Annotated[Weighs | None, such_as("140 g per US cup", "0.85 g/ml", "no volume measure")] = None
    """Your own weight of it, in place of a published one. Left out: what `weighs as` says."""
    each: Annotated[WeightOfOne | None, such_as("whole egg", "18 g")] = None
    """What one weighs, so that it can be counted: a part of the house's egg, or a weight. Left out: it is not counted
    by the piece."""
    allergens: Annotated[Texts | None, such_as("[milk]", "none")] = None
    """The allergens in it, or `none` when you know that there are none. Left out: unknown. It is shown as unknown,
    never as free."""
    care: Annotated[Texts, such_as("[raw egg]")] = ()
    """What calls for a caution, by the book's own words. Left out: nothing."""
    raises: Annotated[YesNo, such_as("yes")] = False
    """Whether it is a raising agent. A recipe may use less of it in wide tins."""
    counts_as: Annotated[Text | None, such_as("flour")] = None
    """What it counts as in the balance of a cake. Left out: what its published weight says."""
    plain: Annotated[Text | None, such_as("plain flour")] = None
    """Of a self-raising flour: the card of the flour without raising agent. Left out: it is not one."""
    used_as: Annotated[Text | None, such_as("sugarpaste")] = None
    """Of a bought paste or filling: the kind of mixture it stands for on a cake. Left out: what its name says, if it is
    that of a kind."""
    packs: Annotated[tuple[Grams, ...], ONE_OR_MORE, such_as("[250 g, 1 kg]")] = ()
    """What the packs weigh that it is sold in. Left out: the book does not say how many packs it takes."""
    swaps: Annotated[Texts, such_as("[caster from granulated]")] = ()
    """What may stand in for it, by the book's own swaps. Left out: nothing is named."""
    notes: Annotated[Texts, such_as("[Press it into the cup. Rub out the lumps.]")] = ()
    """What is worth knowing when you buy or use it. Left out: nothing stands there."""
    private: Annotated[Private, such_as("yes", "[notes]")] = False
    """What a public site leaves out: `yes` for all of it, or the names of keys. What safety and sums need stays,
    without its name."""

    @property
    def known_allergens(self) -> tuple[str, ...] | None:
        """The allergens named, empty for a card that says `none`, None where nobody has said: `[]` says nothing."""
        return () if self.allergens == ("none",) else self.allergens or None


class Larder(Written):
    """A card for each ingredient that a recipe names."""

    ingredients: Annotated[
        Mapping[str, Card],
        such_as("{butter: {allergens: [milk]}}", "caster sugar: {weighs as: caster sugar}\nsalt: {allergens: none}"),
    ]
    """Every ingredient by its name. Behind a name of which you know nothing yet, nothing need stand."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether a public site leaves all of it out."""

    @model_validator(mode="before")
    @classmethod
    def _empty_cards(cls, data: Any) -> Any:
        """A name with nothing after its colon is a card of which nothing is known yet."""
        cards = data.get("ingredients") if isinstance(data, Mapping) else None
        if not isinstance(cards, Mapping):
            return data
        return {**data, "ingredients": {text_of(name): card or {} for name, card in cards.items()}}
