"""The allergens of everything in the book: what is in each product, what is not, and what nobody knows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.labels.makeup import of_cake, of_mixture

YES, NO, UNKNOWN = "yes", "no", "unknown"
Eaten = Mapping[str, tuple[str, ...] | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProductAllergens:
    """A product: its page, its name, the allergens in it by key, each with what it comes from, and the ingredients
    nobody has said the allergens of."""

    address: str
    name: str
    contains: tuple[tuple[str, tuple[str, ...]], ...]
    unknown: tuple[str, ...]

    def says(self, key: str) -> str:
        """Whether an allergen is in it; nobody knows, if there is anything in it nobody has said."""
        if any(key == each for each, _ in self.contains):
            return YES
        return UNKNOWN if self.unknown else NO


@dataclass(frozen=True, kw_only=True)
class BookAllergens:
    """Every product of the book, and the allergens that are in any of them, in the order of the law's list."""

    products: tuple[ProductAllergens, ...]
    keys: tuple[str, ...]


def product_allergens(address: str, name: str, eaten: Eaten, facts: Facts) -> ProductAllergens:
    """The allergens of what is eaten in one product."""
    found: dict[str, list[str]] = {}
    for ingredient, known in eaten.items():
        for key in known or ():
            found.setdefault(key, []).append(ingredient)
    return ProductAllergens(
        address=address,
        name=name,
        contains=tuple((key, tuple(found[key])) for key in facts.allergens if key in found),
        unknown=tuple(ingredient for ingredient, known in eaten.items() if known is None),
    )


def book_allergens(book: Book, facts: Facts, cakes: Iterable[tuple[str, str, Eaten]] | None = None) -> BookAllergens:
    """All mixtures, then all cakes; `cakes`: their addresses, names and what is eaten in them, where that is known
    already."""
    every = list(_mixtures(book, facts))
    for address, name, eaten in _cakes(book, facts) if cakes is None else cakes:
        every.append(product_allergens(address, name, eaten, facts))
    there = {key for each in every for key, _ in each.contains}
    return BookAllergens(products=tuple(every), keys=tuple(key for key in facts.allergens if key in there))


def _mixtures(book: Book, facts: Facts) -> Iterator[ProductAllergens]:
    for slug, mixture in book.mixtures.items():
        yield product_allergens(f"mixtures/{slug}", mixture.name, of_mixture(slug, book, facts).eaten, facts)


def _cakes(book: Book, facts: Facts) -> Iterator[tuple[str, str, Eaten]]:
    for slug, design in book.cakes.items():
        made = of_cake(whole_cake(slug, design, book, facts), book, facts)
        yield f"cakes/{slug}", design.name, made.eaten


@dataclass(frozen=True, slots=True)
class AllergenChange:
    """One answer that has changed for a product: what it was and what it is now; empty for a product that was or is
    not there."""

    product: str
    allergen: str
    was: str
    now: str


def changes(before: Iterable[Mapping[str, object]], after: Iterable[Mapping[str, object]]) -> Iterator[AllergenChange]:
    """What differs between two tables of the book's allergens, row by row."""
    old = {str(row.get("product")): row for row in before}
    new = {str(row.get("product")): row for row in after}
    for product in dict.fromkeys((*new, *old)):
        was, now = old.get(product, {}), new.get(product, {})
        for key in dict.fromkeys((*now, *was)):
            if key in ("product", "name"):
                continue
            # a column is only there if something has it
            said = [str(row.get(key) or (NO if row else "")) for row in (was, now)]
            if said[0] != said[1]:
                yield AllergenChange(product, key, *said)
