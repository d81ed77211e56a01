"""The page of ingredients: a card each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.models import Card
from tinbook.pages.page import Desk, Page
from tinbook.pages.shared import Linked, card_anchor
from tinbook.plans.conversions import CupRow, cup_rows


@dataclass(frozen=True, slots=True)
class CardView:
    """An ingredient's card: its weights by volume, if it has any, and the mixtures it is in."""

    name: str
    anchor: str
    card: Card
    allergens: str
    weights: CupRow | None
    cup: str
    no_volume: bool
    used_in: tuple[Linked, ...]


@dataclass(frozen=True)
class IngredientsView:
    """All cards, by name."""

    items: tuple[CardView, ...]


def _allergens(card: Card, desk: Desk) -> str:
    named = card.known_allergens
    if named is None:
        return "Allergens unknown: read the label."
    if not named:
        return "No allergen named on its card."
    return "Contains " + ", ".join(desk.facts.allergens[key].label for key in named) + "."


def ingredients_pages(desk: Desk) -> Iterator[Page]:
    """The one page of ingredients."""
    weights = {row.ingredient: row for row in cup_rows(desk.book, desk.facts)}
    cup = desk.book.house.cup or "US cup"
    users: dict[str, list[Linked]] = {}
    for slug, mixture in desk.book.mixtures.items():
        names = dict.fromkeys(desk.book.house_word(line.take.name) or "" for line in mixture.mix)
        for name in names:
            users.setdefault(name, []).append(Linked(f"mixtures/{slug}", mixture.name))
    cards = tuple(
        CardView(
            name,
            card_anchor(name),
            card,
            _allergens(card, desk),
            weights.get(name),
            cup,
            card.weighs is not None and card.weighs.g_per_ml is None,
            tuple(users.get(name, ())),
        )
        for name, card in sorted(desk.book.cards.items(), key=lambda item: item[0].lower())
        if card.private is not True
    )
    yield Page("ingredients", "Ingredients", "ingredients", IngredientsView(cards), ("Ingredients",))
