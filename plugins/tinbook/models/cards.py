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


class Card(Written):
    """An ingredient: what it is, its other names, its weight by volume or by the piece, what must be known of it.

    `allergens` None means nobody has said: it is shown as unknown, never as free. `counts as`: flour, sugar, fat and so
    on in a formula, where its published weight does not tell. `swaps`: what may stand in for it. `used as`: the kind
    of mixture a bought paste or filling stands for on a cake; `packs`: what its packs weigh, g.
    """

    needed = frozenset(("weighs as", "weighs", "each", "allergens", "care", "raises", "counts as", "used as"))

    about: Text | None = None
    also: Texts = ()
    weighs_as: Annotated[Text | None, such_as("butter")] = None
    weighs: Annotated[Weight, spelled(_weighs)] | None = None
    each: Annotated[Each, spelled(_each)] | None = None
    allergens: Texts | None = None
    care: Texts = ()
    raises: YesNo = False
    counts_as: Annotated[Text | None, such_as("flour")] = None
    plain: Text | None = None
    used_as: Annotated[Text | None, such_as("sugarpaste")] = None
    packs: Annotated[tuple[Grams, ...], ONE_OR_MORE, such_as("[250 g, 1 kg]")] = ()
    swaps: Texts = ()
    notes: Texts = ()
    private: Private = False

    @property
    def known_allergens(self) -> tuple[str, ...] | None:
        """The allergens named, empty for a card that says `none`, None where nobody has said: `[]` says nothing."""
        return () if self.allergens == ("none",) else self.allergens or None


class Larder(Written):
    """ingredients.yaml: a card for each ingredient, by its name."""

    ingredients: Annotated[Mapping[str, Card], such_as("{butter: {allergens: [milk]}}")]
    private: Private = False

    @model_validator(mode="before")
    @classmethod
    def _empty_cards(cls, data: Any) -> Any:
        """A name with nothing after its colon is a card of which nothing is known yet."""
        cards = data.get("ingredients") if isinstance(data, Mapping) else None
        if not isinstance(cards, Mapping):
            return data
        return {**data, "ingredients": {text_of(name): card or {} for name, card in cards.items()}}
