"""The list of ingredients of a product in the order the law wants, what it leaves open, and what must stand beside
it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.labels import BRACKETS, Labelling
from tinbook.plans.base.saying import Saying
from tinbook.plans.labels.gaps import Gap, banned_colours, card_gaps, colour_gap, uncounted_gap
from tinbook.plans.labels.makeup import GoesIn, Makeup, is_water
from tinbook.plans.labels.opened import Listed, keys_in, opened
from tinbook.plans.labels.warnings import warnings_of


@dataclass(frozen=True, kw_only=True)
class IngredientsList:
    """A list in order. `contains`: every allergen in it, in the order of the law's list; `unknown`: what nobody has
    said the allergens of. `left_out`: water too little to list. `gaps`: what has to be filled in before it is
    complete. `warnings`: what the law wants said beside it."""

    name: str
    listed: tuple[Listed, ...]
    finished_g: float
    contains: tuple[str, ...]
    unknown: tuple[str, ...]
    left_out: tuple[str, ...]
    gaps: tuple[Gap, ...]
    warnings: tuple[Saying, ...]
    nation: str | None
    sold: str
    on: date

    @property
    def complete(self) -> bool:
        """Whether nothing is missing."""
        return not self.gaps


def labelling_of(book: Book) -> Labelling:
    """What the house says about its labels."""
    said: Labelling | None = book.others.get("labels")
    return said or Labelling()


def list_of(made: Makeup, book: Book, facts: Facts, on: date, own: str | None = None) -> IngredientsList:
    """The list of a product made on a day; `own`: whether own mixtures are merged or in brackets, if not as the house
    does it."""
    house = labelling_of(book)
    nation = house.sold_in
    entries = dict[str, Listed]()
    gaps: list[Gap] = []
    for name in dict.fromkeys(each.card for each in made.goes):
        card = book.cards.get(name)
        additives = made.additives if name in made.pots else ()
        entries[name] = opened(name, card, facts, on, additives)
        weighed = all(each.mass_g is not None for each in made.goes if each.card == name)
        gaps += card_gaps(name, card, weighed or name in made.uncounted, facts, nation)
    gaps += map(uncounted_gap, made.uncounted)
    gaps += [*(colour_gap(name) for name in made.uncertain), *banned_colours(made.additives, facts, nation)]
    promised = _promised(made, book)
    bracketed = (own or house.own_mixtures) == BRACKETS and made.cake
    least_g = facts.numbers["water left out up to"].value * made.finished_g
    left_out = _little_water(made.goes, least_g, book)
    goes = [each for each in made.goes if each.card not in left_out]
    listed = _bracketed(goes, entries) if bracketed else _merged(goes, entries)
    if made.finished_g > 0.0:
        listed = tuple(_with_quid(each, promised, made, facts) for each in listed)
    named: dict[str, None] = {}
    for each in entries.values():
        named |= keys_in(each, facts)
    named |= dict.fromkeys(key for known in made.eaten.values() for key in known or ())
    return IngredientsList(
        name=made.name,
        listed=listed,
        finished_g=made.finished_g,
        contains=tuple(key for key in facts.allergens if key in named),
        unknown=tuple(name for name, known in made.eaten.items() if known is None),
        left_out=left_out,
        gaps=tuple(dict.fromkeys(gaps)),
        warnings=warnings_of(entries.values(), made, book, facts, nation),
        nation=nation,
        sold=house.sold,
        on=on,
    )


def _little_water(goes: Iterable[GoesIn], least_g: float, book: Book) -> tuple[str, ...]:
    left: dict[str, float] = {}
    for each in goes:
        if is_water(each.card, book) and each.counts_g is not None:
            left[each.card] = left.get(each.card, 0.0) + each.counts_g
    return tuple(name for name, mass_g in left.items() if mass_g <= least_g)


def in_order(listed: Iterable[Listed]) -> tuple[Listed, ...]:
    """Descending by weight; equals as they come; what has no weight last."""
    return tuple(sorted(listed, key=lambda each: (each.mass_g is None, -(each.mass_g or 0.0))))


def _merged(goes: Iterable[GoesIn], entries: Mapping[str, Listed]) -> tuple[Listed, ...]:
    """Each thing once, the same words together, whichever card they come from."""
    found: dict[Listed, Listed] = {}
    for each in goes:
        entry = entries[each.card]
        same = replace(entry, cards=())
        before = found.get(same)
        mass_g = each.counts_g
        cards: tuple[str, ...] = (each.card,)
        if before is not None:
            mass_g = None if mass_g is None or before.mass_g is None else before.mass_g + mass_g
            cards = tuple(dict.fromkeys((*before.cards, each.card)))
        found[same] = replace(entry, mass_g=mass_g, cards=cards)
    return in_order(found.values())


def _bracketed(goes: Iterable[GoesIn], entries: Mapping[str, Listed]) -> tuple[Listed, ...]:
    """Each mixture with its own list; what is in none, by itself."""
    by_mixture: dict[str, list[GoesIn]] = {}
    for each in goes:
        by_mixture.setdefault(each.of, []).append(each)
    found: list[Listed] = []
    for name, inside in by_mixture.items():
        own = _merged(inside, entries)
        if not name or len(own) == 1:
            found += own
            continue
        weights = [each.mass_g for each in own]
        mass_g = None if None in weights else sum(weight or 0.0 for weight in weights)
        cards = tuple(dict.fromkeys(card for each in own for card in each.cards))
        found.append(Listed(name=name, parts=own, mass_g=mass_g, cards=cards))
    return in_order(found)


def _promised(made: Makeup, book: Book) -> frozenset[str]:
    """The cards that the names of its mixtures promise."""
    words = (word for slug in made.slugs for word in book.mixtures[slug].named_for)
    return frozenset(book.house_word(word) or word for word in words)


def _with_quid(entry: Listed, promised: frozenset[str], made: Makeup, facts: Facts) -> Listed:
    """An entry with its share of the finished product, as it went in, where it is promised."""
    parts = tuple(_with_quid(each, promised, made, facts) for each in entry.parts) if entry.cards else entry.parts
    if not (promised & set(entry.cards)) or any(part.cards for part in entry.parts):
        return replace(entry, parts=parts)
    weights = [each.mass_g for each in made.goes if each.card in entry.cards]
    if None in weights:
        return replace(entry, parts=parts)
    return replace(entry, parts=parts, quid=sum(weight or 0.0 for weight in weights) / made.finished_g)


def leaves(listed: Iterable[Listed]) -> Iterator[Listed]:
    """Everything in a list, at any depth."""
    for each in listed:
        yield from each.every()
