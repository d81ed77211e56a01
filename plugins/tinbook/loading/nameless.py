"""Private ingredients and colours in a public book: gone if nothing public uses them, otherwise without their names.

Safety depends on what a card weighs, what is in it, and what the law says about a colour; nobody needs to know what
the house calls it. A card takes the name that public files use for it, and a colour a number.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import count
from typing import Any

from tinbook.models import Book, CakeDesign, Card, Colour, Finish, Mixture, Part, Repeat, Technique, word_in
from tinbook.plans.mixtures.inline import MARK, share_of


def nameless_cards(shown: Mapping[str, Any], book: Book) -> dict[str, Card]:
    """The cards of a public book; `shown` is what the rest of it holds, by field, `book` the whole one.

    A private card keeps the words that public files use for it, the first as its name.
    """
    cards: Mapping[str, Card] = shown["cards"]
    words: dict[str, list[str]] = {}
    for word in _called(shown):
        name = book.house_word(word)
        if name is not None:
            words.setdefault(name, []).append(word)
    found: dict[str, Card] = {}
    for name, card in cards.items():
        if card.private is not True:
            found[name] = card
        elif name in words:
            public = next((name for word in words[name] if word_in({name.lower(): name}, word)), words[name][0])
            also = tuple(dict.fromkeys(word for word in words[name] if word.lower() != public.lower()))
            found[public] = card.model_copy(update={"also": also})
    known = {name.lower() for name in found}
    return {
        name: card.model_copy(update={"plain": None})
        if card.private is True and (card.plain or "").lower() not in known
        else card
        for name, card in found.items()
    }


def by_cards(mixture: Mixture, book: Book, cards: Mapping[str, Card]) -> Mixture:
    """The mixture with its ingredients under the names on the public cards, as other names may be private."""
    names = {word.lower(): name for name, card in cards.items() for word in (name, *card.also)}
    lines = tuple(
        line.model_copy(update={"take": replace(line.take, name=_name(line.take.name, book, names))})
        for line in mixture.mix
    )
    return mixture.model_copy(update={"mix": lines})


def _name(word: str, book: Book, names: Mapping[str, str]) -> str:
    """The name an ingredient, as written, has on its public card."""
    card = book.house_word(word)
    return (names.get(card.lower()) if card else None) or word_in(names, word) or word


def shown_cakes(shown: Mapping[str, Any], book: Book) -> dict[str, CakeDesign]:
    """The cakes of a public book: none that is baked from, filled, coated or decorated with anything that is not shown.
    Its amounts would give that away, and its allergens would be incomplete."""
    mixtures, techniques = shown["mixtures"], shown["techniques"]
    hidden = {*book.mixtures} - {*mixtures}
    found: dict[str, CakeDesign] = {}
    for slug, cake in shown["cakes"].items():
        baked = (cake.of(tier, "mixture") for tier in cake.every_tier)
        if hidden.isdisjoint((*baked, *cake.made_of)) and all(
            each.technique in techniques for each in cake.decorations
        ):
            linked = tuple(each for each in cake.techniques if each in techniques)
            found[slug] = cake.model_copy(update={"techniques": linked})
    return found


def nameless_colours(
    colours: Mapping[str, Colour], techniques: Mapping[str, Technique], cakes: Mapping[str, CakeDesign]
) -> tuple[dict[str, Colour], dict[str, Technique], dict[str, CakeDesign]]:
    """The colours, techniques and cakes of a public book, in which a private colour is `colour 1`."""
    used = {each.colour: None for technique in techniques.values() for each in _coloured(technique) if each.colour}
    used |= {each.colour: None for cake in cakes.values() for each in cake.coloured if each.colour}
    used |= {
        each.batter_colour: None for cake in cakes.values() for each in (cake, *cake.every_tier) if each.batter_colour
    }
    numbers = (name for number in count(1) if (name := f"colour {number}") not in colours)
    names = {name: next(numbers) for name in used if name in colours and colours[name].private is True}
    found = {names.get(name, name): each for name, each in colours.items() if each.private is not True or name in names}
    return (
        found,
        {slug: _recoloured(technique, names) for slug, technique in techniques.items()},
        {slug: _repainted(cake, names) for slug, cake in cakes.items()},
    )


def _coloured(technique: Technique) -> tuple[Part | Repeat, ...]:
    return (*technique.parts, *technique.repeats)


def _recoloured(technique: Technique, names: Mapping[str, str]) -> Technique:
    if not names:
        return technique
    parts = tuple(_renamed(part, names) for part in technique.parts)
    return technique.model_copy(
        update={"parts": parts, "repeats": tuple(_renamed(each, names) for each in technique.repeats)}
    )


def _repainted(cake: CakeDesign, names: Mapping[str, str]) -> CakeDesign:
    if not names:
        return cake
    tiers, beside = (tuple(_renamed(tier, names) for tier in each) for each in (cake.tiers, cake.beside))
    board = _renamed(cake.board, names)
    found: CakeDesign = _renamed(cake.model_copy(update={"tiers": tiers, "beside": beside, "board": board}), names)
    return found


def _renamed(each: Any, names: Mapping[str, str]) -> Any:
    """Something coloured, with its colours under their new names."""
    told: dict[str, str] = {key: getattr(each, key, None) or "" for key in ("colour", "batter_colour")}
    changed = {key: names[word] for key, word in told.items() if word in names}
    return each.model_copy(update=changed) if changed else each


def _called(shown: Mapping[str, Any]) -> Iterator[str]:
    """Every word in public files that may mean an ingredient; names of lines before marks in steps."""
    finish: Finish = shown["finish"]
    mixtures: Iterable[Mixture] = shown["mixtures"].values()
    techniques: Iterable[Technique] = shown["techniques"].values()
    for mixture in mixtures:
        yield from (line.take.name for line in mixture.mix)
        yield from _made_with(mixture.finish)
    for technique in techniques:
        yield from (material.take.name for material in technique.materials)
        yield from (each.paste for each in _coloured(technique) if each.paste)
    for cake in shown["cakes"].values():
        yield from (form for word in cake.made_of for form in dict.fromkeys((word, word.replace("-", " "))))
    yield from _made_with(finish)
    yield from (take.name for colour in shown["colours"].values() for take in colour.every_pot)
    yield from (card.plain for card in shown["cards"].values() if card.plain and card.private is not True)
    for mixture in mixtures:
        yield from (share_of(mark[1])[1] for step in mixture.method for mark in MARK.finditer(step.do))
    for technique in techniques:
        yield from (share_of(mark[1])[1] for step in technique.steps for mark in MARK.finditer(step.do))


def _made_with(finish: Finish | None) -> Iterator[str]:
    if finish is not None and finish.made_with is not None:
        for word in finish.made_with.model_dump(exclude_none=True).values():
            yield from dict.fromkeys((word, word.replace("-", " ")))
