"""Rules between fields and between files. Each returns flaws; none raises."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from difflib import get_close_matches

from tinbook.facts import Facts
from tinbook.models import Book, Card, Flaw, House, Mixture
from tinbook.plans.weighing import Unweighable, mass_of, volume_at, weigh
from tinbook.problems import nearest


def _choice(path: tuple[str | int, ...], word: str, known: Collection[str], what: str, cure: str = "") -> Flaw:
    """`word` is none of the `known`: name the nearest, or all while they are few."""
    close = nearest(word, known)
    hint = f'did you mean "{close}"?' if close else cure or "known here: " + ", ".join(sorted(known))
    return Flaw("unknown word", path, f'{what} "{word}" is not known', hint)


def house_flaws(house: House, facts: Facts) -> Iterator[Flaw]:
    """The egg class must be one the facts know."""
    if house.eggs not in facts.eggs:
        yield _choice(("eggs",), house.eggs, facts.eggs, "the egg class")
    if house.private is True:
        hint = 'list the keys to hold back, such as "private: [mixer bowl]"'
        yield Flaw("private", ("private",), "the house cannot be private as a whole", hint)


def card_flaws(name: str, card: Card, larder: Collection[str], facts: Facts) -> Iterator[Flaw]:
    """Words on a card that the facts must know, and two answers to one question."""
    if card.weighs_as and card.weighs:
        hint = 'keep "weighs as" for a published weight, or "weighs" for your own'
        yield Flaw("twice", ("weighs",), f'the card of "{name}" says twice what it weighs', hint)
    if card.weighs_as and card.weighs_as not in facts.densities:
        cure = 'give your own, such as "weighs: 125 g per US cup"'
        yield _choice(("weighs as",), card.weighs_as, facts.densities, "the published weight", cure)
    for word in card.known_allergens or ():
        if word not in facts.allergens:
            yield _choice(("allergens",), word, facts.allergens, "the allergen")
    for word in card.care:
        if word not in facts.traits:
            yield _choice(("care",), word, facts.traits, "the care word")
    if card.plain and card.plain not in larder:
        yield _choice(("plain",), card.plain, larder, "the ingredient", "write a card for it first")


def alias_flaws(cards: Mapping[str, Card]) -> Iterator[Flaw]:
    """One name may lead to one card only."""
    owner = {name.lower(): name for name in cards}
    for name, card in cards.items():
        for other in card.also:
            first = owner.setdefault(other.lower(), name)
            if first != name:
                message = f'"{other}" already leads to the card of "{first}"'
                yield Flaw("twice", ("ingredients", name, "also"), message, "keep it on one of the two")


def link_flaws(key: str, slugs: Iterable[str], known: Collection[str]) -> Iterator[Flaw]:
    """Names of other files that do not exist."""
    for slug in slugs:
        if slug not in known:
            close = nearest(slug, known)
            hint = f'did you mean "{close}"?' if close else "write a file's name without .yaml, in small letters"
            yield Flaw("no such file", (key,), f'the book has no "{slug}"', hint)


def mixture_flaws(mixture: Mixture, book: Book, facts: Facts, broken_cards: Collection[str] = ()) -> tuple[Flaw, ...]:
    """Everything that keeps a mixture from being weighed and scaled."""
    flaws = [*_line_flaws(mixture, book, facts, broken_cards), *_shape_flaws(mixture, facts)]
    return tuple(flaws) if flaws else tuple(_fit_flaws(mixture, book, facts))


def _line_flaws(mixture: Mixture, book: Book, facts: Facts, broken_cards: Collection[str]) -> Iterator[Flaw]:
    if not mixture.mix:
        yield Flaw("empty", ("mix",), "the mix is empty", 'write its lines, such as "- 340 g butter"')
    for index, line in enumerate(mixture.mix):
        take = line.take
        name = book.house_word(take.name)
        # the short form of a line is the text itself
        path = ("mix", index, "take") if line.note or line.part else ("mix", index)
        span = {"start": take.at, "end": take.at + len(take.name)}
        if name is None:
            if take.name.lower() in broken_cards:
                message, hint = f'the card of "{take.name}" is broken', "mend it in house/ingredients.yaml"
            else:
                message, hint = f'no card for the ingredient "{take.name}"', _card_hint(take.name, book)
            yield Flaw("unknown ingredient", path, message, hint, False, **span)
            continue
        try:
            mass_of(take, name, book, facts)
        except Unweighable as error:
            yield Flaw("no weight", path, error.message, error.hint, False, **span)


def _card_hint(word: str, book: Book) -> str:
    close = nearest(word, book.names)
    if close is None:
        # a word of it may be enough: "fine caster sugar" is near "caster sugar"
        inside = [name for name in book.names if name in word.lower()]
        close = (
            max(inside, key=len) if inside else next(iter(get_close_matches(word.lower(), book.names, 1, 0.5)), None)
        )
    other = f'did you mean "{close}"? if not, ' if close else ""
    return f'{other}add a card "{word}:" to house/ingredients.yaml'


def _shape_flaws(mixture: Mixture, facts: Facts) -> Iterator[Flaw]:
    if mixture.kind not in facts.kinds:
        yield _choice(("kind",), mixture.kind, facts.kinds, "the kind")
        return
    if bool(mixture.tins) == bool(mixture.makes):
        message = "is both for tins and made by weight" if mixture.tins else "says neither tins nor weight"
        hint = 'write "tins: 2 round 20 cm x 7.5 cm" for a cake, or "makes: 900 g" for what is made by weight'
        yield Flaw("tins or makes", ("makes",) if mixture.tins else (), f"the mixture {message}", hint)
    if mixture.tins and mixture.bake is None:
        hint = 'add "bake: {oven: 170 °C, time: 55-65 min}"'
        yield Flaw("missing", (), "a mixture for tins says how it is baked", hint)
    if mixture.batter_depth and not mixture.tins:
        yield Flaw("no tins", ("batter depth",), "a batter depth needs tins", 'add "tins:", or leave it out')


def _fit_flaws(mixture: Mixture, book: Book, facts: Facts) -> Iterator[Flaw]:
    if not mixture.tins:
        return
    brim_mm = min(tin.brim_mm for _, tin in mixture.tins)
    if mixture.batter_depth and mixture.batter_depth > brim_mm:
        hint = f"the tin is {brim_mm:g} mm deep: measure again, from the base to the top of the raw batter"
        yield Flaw("too deep", ("batter depth",), "the batter stands above the brim", hint)
        return
    try:
        batch = weigh("", mixture, book, facts)
    except ValueError:
        holds = volume_at(mixture.tins, max(tin.brim_mm for _, tin in mixture.tins))
        hint = f"the tins hold {holds:.0f} ml to the brim: more tins, or less mixture"
        yield Flaw("too much", ("tins",), "the mixture is more than its tins hold", hint)
        return
    limit = facts.numbers["rim limit"].value
    by_share = any(tin.kind.kept == "share" for _, tin in mixture.tins)
    if not by_share and batch.baked_mm > limit * brim_mm:
        message = f"baked, it would stand {batch.baked_mm:.0f} mm high in a tin {brim_mm:g} mm deep"
        yield Flaw("too much", ("tins",), message, "more or deeper tins, or less mixture")
