"""What goes into a mixture or a whole cake, by weight at the mixing bowl, and what is left of it when finished."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.weighing import Batch, each_g, g_per_ml, weigh
from tinbook.plans.cakes.figures import Besides, techniques_of
from tinbook.plans.cakes.safety import allergens_of, colours_of
from tinbook.plans.cakes.used import by_weight, everything_used, ingredients_of, versions_used
from tinbook.plans.cakes.whole import WholeCake

WATER = "water"


@dataclass(frozen=True, slots=True, kw_only=True)
class GoesIn:
    """One thing that goes in: its card, grams at the mixing bowl (None: nobody knows), what a list counts it as (for
    added water, what is left after baking), and the mixture it is in; empty for what is put on or in otherwise."""

    card: str
    mass_g: float | None
    counts_g: float | None
    of: str = ""


@dataclass(frozen=True, kw_only=True)
class Makeup:
    """What a product is made of. `finished_g`: what it weighs when it is finished, of what is weighed. `slugs`: the
    mixtures in it. `eaten`: every leaf, with the allergens on its card; None if nobody has said. `pots`: cards that are
    coloured. `additives`: of its colours; `uncertain`: colours nobody has said the additives of. `uncounted`: what its
    techniques use and its sums do not."""

    name: str
    goes: tuple[GoesIn, ...]
    finished_g: float
    slugs: tuple[str, ...]
    eaten: dict[str, tuple[str, ...] | None]
    pots: frozenset[str] = frozenset()
    additives: tuple[str, ...] = ()
    uncertain: tuple[str, ...] = ()
    uncounted: tuple[str, ...] = ()
    cake: bool = False


def is_water(card: str, book: Book) -> bool:
    """Whether it is water, which dries up in the oven."""
    return card == WATER or (card in book.cards and WATER in book.cards[card].also)


def finished_share(batch: Batch) -> float:
    """What is left of a batch when it is finished, as a share of what went in: less what it loses in the oven, or what
    boils away until it weighs what it `makes`."""
    made = 1.0 if batch.bought or not batch.mixture.makes else min(1.0, batch.makes_g / batch.mass_g)
    return made * (1.0 - batch.loss)


def _of_batch(lines: Iterable[tuple[str, float]], batch: Batch, book: Book) -> Iterator[GoesIn]:
    """What goes into one mixture: added water counts as what is left of it."""
    lines = tuple(lines)
    lost_g = sum(mass_g for _, mass_g in lines) * (1.0 - finished_share(batch))
    for name, mass_g in lines:
        counts_g = mass_g
        if is_water(name, book):
            counts_g = max(0.0, mass_g - lost_g)
            lost_g = max(0.0, lost_g - mass_g)
        yield GoesIn(card=name, mass_g=mass_g, counts_g=counts_g, of=batch.mixture.name)


def of_mixture(slug: str, book: Book, facts: Facts) -> Makeup:
    """A mixture by itself, as it is written."""
    mixture = book.mixtures[slug]
    batch = weigh(slug, mixture, book, facts)
    lines = [(line.name, line.mass_g) for line in batch.ingredients]
    eaten = {name: _known(name, book) for name, _ in lines}
    return Makeup(
        name=mixture.name,
        goes=tuple(_of_batch(lines, batch, book)),
        finished_g=batch.mass_g * finished_share(batch),
        slugs=(slug,),
        eaten=eaten,
    )


def of_cake(cake: WholeCake, book: Book, facts: Facts) -> Makeup:
    """A whole cake: sponges, fillings, coats, pastes, colours, and all that is put on with them, glue and glaze too."""
    goes: list[GoesIn] = []
    finished_g = 0.0
    slugs: dict[str, None] = {}
    for batch, version in versions_used(cake, facts):
        lines = [(each.name, each.mass_g) for each in ingredients_of([(batch, version)], book)]
        goes += _of_batch(lines, batch, book)
        finished_g += sum(mass_g for _, mass_g in lines) * finished_share(batch)
        if not batch.bought:
            slugs[batch.slug] = None
    used = everything_used(cake, book, facts)
    for pot in used.pots:
        name = book.house_word(pot.name) or pot.name
        goes.append(GoesIn(card=name, mass_g=pot.mass_g, counts_g=pot.mass_g))
        finished_g += pot.mass_g or 0.0
    for extra in used.besides:
        for each in _beside(extra, book, facts):
            goes.append(each)
            finished_g += each.counts_g or 0.0
    techniques = tuple(techniques_of(cake.design, book).values())
    eaten = dict(allergens_of(cake.every_tier, cake.mixtures, cake.pastes, techniques, book, facts))
    there = {each.card for each in goes}
    uncounted = tuple(name for name in eaten if name not in there)
    goes += [GoesIn(card=name, mass_g=None, counts_g=None) for name in uncounted]
    colours = {each.name: each for tier in cake.every_tier for each in colours_of(tier, book, facts)}
    colours |= {paste.colour.name: paste.colour for paste in cake.pastes if paste.colour}
    return Makeup(
        name=cake.design.name,
        goes=tuple(goes),
        finished_g=finished_g,
        slugs=tuple(slugs),
        eaten={**{each.card: _known(each.card, book) for each in goes}, **eaten},
        pots=frozenset(book.house_word(pot.name) or pot.name for pot in used.pots),
        additives=tuple(dict.fromkeys(key for each in colours.values() for key in each.additives or ())),
        uncertain=tuple(name for name, each in colours.items() if each.additives is None),
        uncounted=uncounted,
        cake=True,
    )


def _known(name: str, book: Book) -> tuple[str, ...] | None:
    card = book.cards.get(name)
    return None if card is None or card.known_allergens is None else tuple(card.known_allergens)


def _beside(extra: Besides, book: Book, facts: Facts) -> Iterator[GoesIn]:
    """A material that the cake's own sums do not count: a card, or a mixture opened into its lines."""
    exact, unit = extra.amount.exact, extra.amount.unit
    name = book.house_word(extra.name)
    if name is not None:
        mass_g = _grams(name, exact, unit, book, facts)
        yield GoesIn(card=name, mass_g=mass_g, counts_g=mass_g)
        return
    slug = next((slug for slug, mixture in book.mixtures.items() if mixture.name == extra.name), None)
    if slug is None:
        yield GoesIn(card=extra.name, mass_g=None, counts_g=None)
        return
    batch = weigh(slug, book.mixtures[slug], book, facts)
    mass_g = exact if unit == "g" else _poured_g(exact, unit, batch.kind.gravity.typical, book)
    if mass_g is None:
        for line in batch.ingredients:
            yield GoesIn(card=line.name, mass_g=None, counts_g=None, of=batch.mixture.name)
        return
    version = by_weight(batch, mass_g / batch.makes_g, facts)
    yield from _of_batch([(each.name, each.mass_g) for each in ingredients_of([(batch, version)], book)], batch, book)


def _grams(name: str, amount: float, unit: str, book: Book, facts: Facts) -> float | None:
    """What an amount of an ingredient weighs; None if its card does not say."""
    card = book.cards[name]
    if unit == "g":
        return amount
    if unit == "":
        one = each_g(card, book, facts)
        return None if one is None else amount * one
    return _poured_g(amount, unit, g_per_ml(card, facts), book)


def _poured_g(amount: float, unit: str, density: float | None, book: Book) -> float | None:
    spoons = book.house.spoons
    ml = {"ml": 1.0, "tsp": spoons.teaspoon_ml, "tbsp": spoons.tablespoon_ml}.get(unit)
    return None if ml is None or density is None else amount * ml * density
