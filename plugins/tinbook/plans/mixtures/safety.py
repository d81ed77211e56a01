"""What must be said wherever the work needs it: allergens and the usual cautions."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from tinbook.facts import Caution, Facts
from tinbook.models import Book, Mixture
from tinbook.plans.base.weighing import Batch


@dataclass(frozen=True, slots=True)
class Contains:
    """One allergen as a label names it, and the ingredients it comes from."""

    allergen: str
    ingredients: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AllergenStrip:
    """What a mixture contains, and the ingredients nobody has said anything about: unknown, never free. `made_with`:
    what else would be in it, from what it may be made with; `known`: whether it says what it is made of at all."""

    contains: tuple[Contains, ...]
    unknown: tuple[str, ...]
    made_with: tuple[tuple[str, tuple[str, ...]], ...] = ()
    known: bool = True


def allergens(batch: Batch, book: Book, facts: Facts) -> AllergenStrip:
    """The allergens of a mixture, in the order of the law's list."""
    names = dict.fromkeys(line.name for line in batch.ingredients)
    return strip_of(((name, book.cards[name].known_allergens) for name in names), facts)


def strip_of(things: Iterable[tuple[str, Iterable[str] | None]], facts: Facts) -> AllergenStrip:
    """A strip of the allergens of each thing, by its name; None if nobody has said."""
    names: dict[str, list[str]] = {}
    unknown = []
    for name, known in things:
        if known is None:
            unknown.append(name)
        for allergen in known or ():
            names.setdefault(allergen, []).append(name)
    order = list(facts.allergens)
    return AllergenStrip(
        tuple(Contains(facts.allergens[key].label, tuple(names[key])) for key in sorted(names, key=order.index)),
        tuple(unknown),
    )


def cautions(batch: Batch, book: Book, facts: Facts) -> tuple[Caution, ...]:
    """The cautions triggered by an ingredient's card, depending on whether the mixture is cooked."""
    names = (line.name for line in batch.ingredients)
    return called(names, batch.mixture, ("always", state(batch.mixture)), book, facts)


def called(
    names: Iterable[str], mixture: Mixture, states: Collection[str], book: Book, facts: Facts
) -> tuple[Caution, ...]:
    """The cautions for a mixture of these ingredients that apply in one of `states`."""
    traits = {trait for name in names for trait in book.cards[name].care}
    return tuple(
        caution
        for caution in facts.cautions.values()
        if caution.when in states and (traits & set(caution.traits) or mixture.kind in caution.kinds)
    )


def state(mixture: Mixture) -> str:
    """How well cooked it is by the time it is eaten."""
    if mixture.bake is not None:
        return "baked"
    return "cooked" if mixture.cooked else "uncooked"


@dataclass(frozen=True, slots=True)
class CardNote:
    """A note that follows an ingredient into each recipe."""

    ingredient: str
    text: str


def card_notes(batch: Batch, book: Book) -> tuple[CardNote, ...]:
    """The notes of a mixture's ingredients, in the order they are mixed."""
    names = dict.fromkeys(line.name for line in batch.ingredients)
    return tuple(CardNote(name, note) for name in names for note in book.cards[name].notes)
