"""Ingredients: a page for each card, and the list of them all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.facts import Caution
from tinbook.models import Card
from tinbook.pages.base.grids import Grid
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked
from tinbook.pages.lists.card_grids import egg_grid, swap_grid, weight_grid
from tinbook.pages.lists.card_uses import Goes, card_uses
from tinbook.pages.lists.lists import Group, ListView, in_sheets, mixture_entry
from tinbook.pages.mixture.every_cake import FinishView
from tinbook.pages.spelling import formats
from tinbook.plans.base.bought import bought
from tinbook.plans.base.scaling import TinTable
from tinbook.plans.measures.ingredients import IngredientWeights, weights
from tinbook.plans.measures.swaps import swap_table


def _no_tins() -> TinTable:
    raise ValueError("what is bought is not baked in tins")


UNKNOWN, NONE = "unknown", "none named"


@dataclass(frozen=True)
class CardView:
    """An ingredient's page."""

    name: str
    desk: Desk
    goes: tuple[Goes, ...]
    """The pages it leads to."""

    @property
    def card(self) -> Card:
        """What the baker wrote."""
        return self.desk.book.cards[self.name]

    @property
    def contains(self) -> tuple[str, ...]:
        """The allergens on its card, as a label names them."""
        return tuple(_labels(self.card.known_allergens or (), self.desk))

    @property
    def no_allergens(self) -> str:
        """What is said if none is named: unknown is not free."""
        if self.card.known_allergens is None:
            return "Allergens unknown. Unknown does not mean “free from”: read the label."
        return (
            "None of the fourteen allergens is listed on its card, but that does not make it “free from”: "
            "check the packet."
        )

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """The usual cautions that its care words call up, whatever is done with it."""
        care = set(self.card.care)
        return tuple(caution for caution in self.desk.facts.cautions.values() if care & set(caution.traits))

    @cached_property
    def finish(self) -> FinishView | None:
        """How much of it fills or covers a cake, if it is bought for that."""
        batch = bought(self.name, self.desk.book, self.desk.facts)
        return FinishView(batch, self.desk, _no_tins) if batch else None

    @cached_property
    def weight(self) -> IngredientWeights:
        """What it weighs."""
        return weights(self.card, self.desk.book, self.desk.facts)

    @property
    def weighs(self) -> Grid | None:
        """By every cup and spoon, if it has a volume measure."""
        return weight_grid(self.name, self.weight, self.desk.facts)

    @property
    def piece(self) -> str:
        """The weight of one, in words; empty for what is not counted."""
        if self.weight.piece_g is None or self.card.each is None:
            return ""
        what = f"{self.desk.book.house.eggs} {self.card.each.part}" if self.card.each.part else self.name
        return f"One {what} weighs about {formats.grams(self.weight.piece_g)}."

    @property
    def no_volume(self) -> str:
        """Why there is no table of weights."""
        if self.card.weighs is not None:
            return "It cannot be measured by volume: weigh it."
        return "Count it, or weigh it." if self.piece else "We do not know its weight by volume: weigh it."

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """What can replace it."""
        tables = (swap_table(key, self.desk.book, self.desk.facts) for key in self.card.swaps)
        swaps = tuple(swap_grid(table, self.desk.facts) for table in tables)
        part = self.card.each.part if self.card.each else ""
        return (egg_grid(part, self.desk), *swaps) if part else swaps


def _labels(allergens: tuple[str, ...], desk: Desk) -> list[str]:
    return [desk.facts.allergens[key].label for key in allergens]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardLine:
    """A card as a line of the list. `tags` and `also` are what it can be found by, `left` the weight of its cup."""

    address: str
    name: str
    left: str
    second: str
    tags: str
    also: str


@dataclass(frozen=True)
class IngredientsView:
    """All cards that are shown, by name."""

    entries: tuple[CardLine, ...]


def _line(name: str, address: str, desk: Desk) -> CardLine:
    card, spoons = desk.book.cards[name], desk.book.house.spoons
    weight = weights(card, desk.book, desk.facts)
    cup = next((row for row in weight.measures if row.volume_ml == (spoons.cup_ml or row.volume_ml)), None)
    if cup:
        left = f"{formats.grams(cup.shown_g)} a cup"
    else:
        left = f"{formats.grams(weight.piece_g)} each" if weight.piece_g else "by weight"
    named = card.known_allergens
    tags = [UNKNOWN] if named is None else _labels(named, desk) or [NONE]
    contains = "allergens unknown" if named is None else formats.sentence(tags) if named else ""
    second = "; ".join(words for words in (contains, ", ".join(card.also)) if words)
    return CardLine(
        address=address,
        name=name,
        left=left,
        second=second,
        tags="|".join(tags),
        also=" ".join((card.about or "", *card.also)),
    )


def ingredients_pages(desk: Desk) -> Iterator[Page]:
    """The list, and a page for each card that is shown."""
    pages = desk.card_pages
    lines = tuple(_line(name, address, desk) for name, address in pages.items())
    yield Page(
        address="ingredients",
        title="Ingredients",
        template="ingredients",
        view=IngredientsView(lines),
        section=("Ingredients",),
    )
    uses = card_uses(desk)
    for name, address in pages.items():
        goes = uses.goes(name, address)
        yield Page(
            address=address,
            title=formats.title(name),
            template="ingredient",
            view=CardView(name, desk, goes),
            listed=False,
        )
        for many in (each.all for each in goes if each.all):
            yield from _mixtures_with(name, address, many, uses.mixtures[name], desk)


def _mixtures_with(name: str, address: str, many: Linked, mixtures: Iterable[Linked], desk: Desk) -> Iterator[Page]:
    """The mixtures an ingredient is in, where they are too many for its own page."""
    entries = tuple(mixture_entry(desk, each.address.removeprefix("mixtures/")) for each in mixtures)
    title = f"Mixtures with {name}"
    back = (Linked(address, formats.title(name)),)
    view = ListView(title=title, lead=f"{many.name}, by name.", items=(Group("", "", entries),), asides=back)
    yield from in_sheets(Page(address=many.address, title=title, template="list", view=view, listed=False))
