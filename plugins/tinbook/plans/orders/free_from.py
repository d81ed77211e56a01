"""What a guest must not have, held against everything eaten in an order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Mixture
from tinbook.plans.cakes.figures import techniques_of
from tinbook.plans.cakes.safety import allergens_of
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.orders.asked import OrderWorked

Eaten = Mapping[str, tuple[str, ...] | None]
"""Everything eaten, with the allergens on its card; None if nobody has said."""
ALSO = {
    "gluten": 1, "eggs": 3, "peanuts": 5, "soy": 6, "soybean": 6, "dairy": 7, "nut": 8, "tree nuts": 8,
    "sesame seed": 11, "sulfites": 12, "sulphur dioxide": 12,
}  # fmt: skip
"""How people ask for one of the fourteen, besides its own names, and its number in the law's list (common practice, no
source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeFrom:
    """One thing a guest must not have. `sources`: what it comes from, each with the allergen found in it; `unknown`:
    what nobody has said anything about. `instead`: for each recipe it is in, by name, the house's own recipes of the
    same family without it."""

    word: str
    sources: tuple[tuple[str, str], ...]
    unknown: tuple[str, ...]
    instead: tuple[tuple[str, tuple[str, ...]], ...]

    @property
    def clear(self) -> bool:
        """Whether the cards name it nowhere, and every card says. No promise: the house says what else it handles."""
        return not self.sources and not self.unknown


def meant(word: str, book: Book, facts: Facts) -> frozenset[str] | str | None:
    """The allergens a word means, an ingredient by the name on its card, or None if it is neither."""
    asked = " ".join(word.lower().split())
    forms = {asked, asked.removesuffix("s")}
    by_name = {key for key, each in facts.allergens.items() if {key.lower(), each.label.lower()} & forms}
    if by_name and asked not in ALSO:
        group = {facts.allergens[key].group for key in by_name}
        # "nuts" is all of them, "almond" is one
        return frozenset(by_name) if len(group) == 1 else None
    number = ALSO.get(asked) or next(
        (each.group for each in facts.allergens.values() if each.group_name.lower() == asked), None
    )
    if number:
        return frozenset(key for key, each in facts.allergens.items() if each.group == number)
    return book.house_word(word)


def held_against(worked: OrderWorked, book: Book, facts: Facts) -> tuple[FreeFrom, ...]:
    """Each thing an order must be free from, held against every mixture, filling, glue, glaze, colour and loose piece
    in it."""
    eaten: dict[str, tuple[str, ...] | None] = {}
    for cake in worked.cakes:
        eaten |= eaten_of(cake, book, facts)
    for tub in worked.tubs:
        eaten |= _of_mixture(tub.mixture, book)
    if worked.order.class_:
        for slug in worked.order.class_.techniques:
            if slug in book.techniques:
                eaten |= dict(allergens_of((), (), (), (book.techniques[slug],), book, facts))
    return tuple(_free_from(word, eaten, worked, book, facts) for word in worked.order.must_be_free_from)


def eaten_of(cake: WholeCake, book: Book, facts: Facts) -> Eaten:
    """Everything eaten in a cake and on it."""
    techniques = techniques_of(cake.design, book).values()
    return dict(allergens_of(cake.every_tier, cake.mixtures, cake.pastes, techniques, book, facts))


def _of_mixture(mixture: Mixture, book: Book) -> Eaten:
    found: dict[str, tuple[str, ...] | None] = {}
    for line in mixture.mix:
        name = book.house_word(line.take.name) or line.take.name
        card = book.cards.get(name)
        found[name] = None if card is None or card.known_allergens is None else tuple(card.known_allergens)
    return found


def _free_from(word: str, eaten: Eaten, worked: OrderWorked, book: Book, facts: Facts) -> FreeFrom:
    sought = meant(word, book, facts)
    if sought is None:
        return FreeFrom(word=word, sources=(), unknown=(word,), instead=())
    if isinstance(sought, str):
        sources = tuple((name, name) for name in eaten if name == sought)
        return FreeFrom(word=word, sources=sources, unknown=(), instead=tuple(_instead(sought, worked, book)))
    sources = tuple((name, key) for name, known in eaten.items() for key in known or () if key in sought)
    unknown = tuple(name for name, known in eaten.items() if known is None)
    return FreeFrom(word=word, sources=sources, unknown=unknown, instead=tuple(_instead(sought, worked, book)))


def _instead(sought: frozenset[str] | str, worked: OrderWorked, book: Book) -> Iterator[tuple[str, tuple[str, ...]]]:
    """For each recipe in the order that has it: those of its family that have not, and of which every card says."""
    slugs = dict.fromkeys(
        [tier.baked.batch.slug for cake in worked.cakes for tier in cake.every_tier if tier.baked]
        + [total.batch.slug for cake in worked.cakes for total in cake.mixtures]
        + [tub.slug for tub in worked.tubs]
    )
    for slug in slugs:
        if slug in book.mixtures and not _without(book.mixtures[slug], sought, book):
            base = book.varies[slug].base if slug in book.varies else slug
            family = (base, *book.variations.get(base, ()), *book.variations.get(slug, ()))
            # one cake can stand in for another, though it does not start from it; buttercream only for buttercream
            asked = book.mixtures[slug]
            alike = (
                each
                for each, mixture in book.mixtures.items()
                if (mixture.tins and asked.tins) or mixture.kind == asked.kind
            )
            found = dict.fromkeys(each for each in (*family, *alike) if _without(book.mixtures[each], sought, book))
            yield book.mixtures[slug].name, tuple(found)


def _without(mixture: Mixture, sought: frozenset[str] | str, book: Book) -> bool:
    known = _of_mixture(mixture, book)
    if isinstance(sought, str):
        return sought not in known
    return all(keys is not None and not sought & set(keys) for keys in known.values())
