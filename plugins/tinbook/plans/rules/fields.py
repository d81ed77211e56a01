"""Rules between fields and between files. Each returns flaws; none raises."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from tinbook.facts import Facts
from tinbook.models import Book, Card, Flaw, House, MixLine, Mixture, ShelfLine, word_in
from tinbook.plans.base.weighing import Unweighable, as_owned, each_g, mass_of, volume_at, weigh
from tinbook.problems import nearest
from tinbook.tins import read_tins
from tinbook.units import WORDS, Misread

FOLLOWS = "follows"
"""The code of a flaw that is there only because of another one, told elsewhere."""

# A tin that holds less than half, or more than twice, what its sizes say was not measured: house judgement.
_MOST_OFF = 2.0
_COOLEST_C = 100.0
"""No cake gets done in an oven as cool as that or cooler."""


@dataclass(frozen=True, slots=True)
class Spoilt:
    """Cards that are written and cannot be used: lower-case `names` that lead to them. `more`: there may be others."""

    names: Mapping[str, str] = field(default_factory=dict)
    more: bool = False


def _choice(path: tuple[str | int, ...], word: str, known: Collection[str], what: str, cure: str = "") -> Flaw:
    """`word` is none of the `known`: name the nearest, or all while they are few."""
    close = nearest(word, known)
    hint = f'did you mean "{close}"?' if close else cure or "known here: " + ", ".join(sorted(known))
    return Flaw(code="unknown word", path=path, message=f'{what} "{word}" is not known', hint=hint)


def house_flaws(house: House, facts: Facts) -> Iterator[Flaw]:
    """The egg class must be one the facts know, and there is no book without its house."""
    if house.eggs not in facts.eggs:
        yield _choice(("eggs",), house.eggs, facts.eggs, "the egg class")
    if house.private is True:
        hint = 'list the keys to hold back, such as "private: [mixer bowl]"'
        yield Flaw(code="private", path=("private",), message="the house cannot be private as a whole", hint=hint)


def tin_flaws(line: ShelfLine, named: Collection[str]) -> Iterator[Flaw]:
    """An outline goes by a name of its own, not among the `named` (in small letters); a measure is that of the tin."""
    (tin, *others), measured, name = line.tin, line.measured, line.name
    if tin.kind.free and name is None:
        yield Flaw(
            code="missing", path=("tin",), message="an outline needs a name to go by", hint='add "name: number 4"'
        )
    elif name is not None and not tin.kind.free:
        hint = 'leave "name" out: it goes by its shape and size'
        yield Flaw(
            code="name",
            path=("name",),
            message=f"only an outline of your own has a name, not a {tin.kind.noun}",
            hint=hint,
            on_key=True,
        )
    elif name is not None and (fault := _name_fault(name, named)):
        message, hint = fault
        yield Flaw(code="name", path=("name",), message=message, hint=hint)
    if measured is None:
        return
    if others:
        hint = "write each tin of the set on a line of its own, with its measure"
        yield Flaw(code="measure", path=("measured",), message="a set is not measured as one", hint=hint, on_key=True)
        return
    if tin.depth_mm is None:
        hint = f'write how deep it is, such as "{tin.kind.example}"'
        yield Flaw(code="missing", path=("tin",), message="a tin that was measured needs its depth", hint=hint)
        return
    holds = tin.brim_ml()
    if not holds / _MOST_OFF <= measured <= holds * _MOST_OFF:
        message = f"by its sizes the tin holds about {holds:.0f} ml"
        yield Flaw(
            code="measure", path=("measured",), message=message, hint="measure it again, in ml, full to the brim"
        )


def _name_fault(name: str, named: Collection[str]) -> tuple[str, str] | None:
    """What is wrong with the name of an outline, and what to do."""
    if name.casefold() in named:
        return f'another tin is called "{name}"', "give each outline a name of its own"
    if not name[0].isalpha() or any(not (sign.isalnum() or sign in " '’-") for sign in name):
        return f'a tin cannot be called "{name}"', "begin with a letter, and write letters, digits and blanks"
    try:
        read_tins(name)
    except Misread:
        return None
    return f'"{name}" is what another tin is called', 'write a name such as "number 4"'


def card_flaws(name: str, card: Card, larder: Collection[str], facts: Facts) -> Iterator[Flaw]:
    """Words on a card that the facts must know, and two answers to one question."""
    if card.weighs_as and card.weighs:
        hint = 'keep "weighs as" for a published weight, or "weighs" for your own'
        yield Flaw(code="twice", path=("weighs",), message=f'the card of "{name}" says twice what it weighs', hint=hint)
    if card.weighs_as and card.weighs_as not in facts.densities:
        cure = 'give your own, such as "weighs: 125 g per US cup"'
        yield _choice(("weighs as",), card.weighs_as, facts.densities, "the published weight", cure)
    if card.allergens == ():
        hint = 'write "allergens: none" if there are none; leave it out if nobody knows'
        yield Flaw(code="empty", path=("allergens",), message="the list of allergens is empty", hint=hint)
    for index, word in enumerate(card.known_allergens or ()):
        if word not in facts.allergens:
            yield _allergen(("allergens", index), word, facts, alone=card.allergens == (word,))
    if card.counts_as and card.counts_as not in facts.parts:
        yield _choice(("counts as",), card.counts_as, facts.parts, "the part of a formula")
    for index, word in enumerate(card.care):
        if word not in facts.traits:
            yield _choice(("care", index), word, facts.traits, "the care word")
    for index, word in enumerate(card.swaps):
        if word not in facts.swaps:
            yield _choice(("swaps", index), word, facts.swaps, "the swap")
    if card.plain and card.plain not in larder:
        others = [other for other in larder if other != name]
        yield _no_card(("plain",), card.plain, others)


def _allergen(path: tuple[str | int, ...], word: str, facts: Facts, alone: bool) -> Flaw:
    """`word` is no allergen: it may be no allergen at all, or a whole group of them."""
    said = word.lower()
    if said in ("no", "none", "nothing", "free", "nil"):
        hint = 'write "allergens: none"' if alone else 'take it out: "none" stands alone'
        return Flaw(code="unknown word", path=path, message=f'"{word}" is no allergen', hint=hint)
    group = [key for key, row in facts.allergens.items() if said in row.group_name.lower().split()]
    if len(group) > 1:
        return Flaw(
            code="unknown word",
            path=path,
            message=f'"{word}" is a group of allergens',
            hint=f"name which: {', '.join(group)}",
        )
    return _choice(path, word, facts.allergens, "the allergen")


def alias_flaws(cards: Mapping[str, Card]) -> Iterator[Flaw]:
    """One name may lead to one card only."""
    owner: dict[str, str] = {}
    for name in cards:
        first = owner.setdefault(name.lower(), name)
        if first != name:
            message = f'"{name}" and "{first}" are one ingredient to the book'
            yield Flaw(
                code="twice", path=("ingredients", name), message=message, hint="make them one card", on_key=True
            )
    for name, card in cards.items():
        for index, other in enumerate(card.also):
            first = owner.setdefault(other.lower(), name)
            if first != name:
                own = first.lower() == other.lower()
                leads = "has a card of its own" if own else f'already leads to the card of "{first}"'
                path = ("ingredients", name, "also", index)
                yield Flaw(code="twice", path=path, message=f'"{other}" {leads}', hint="keep it on one of the two")


def link_flaws(key: str, slugs: Iterable[str], known: Collection[str]) -> Iterator[Flaw]:
    """Names of other files that do not exist."""
    for index, slug in enumerate(slugs):
        if slug not in known:
            close = nearest(slug, known) or next((other for other in known if slug in other), None)
            hint = f'did you mean "{close}"?' if close else "write a file's name without .yaml, in small letters"
            yield Flaw(code="no such file", path=(key, index), message=f'the book has no "{slug}"', hint=hint)


def mixture_flaws(mixture: Mixture, book: Book, facts: Facts, spoilt: Spoilt | None = None) -> tuple[Flaw, ...]:
    """Everything that keeps a mixture from being weighed and scaled."""
    flaws = [*line_flaws(mixture, book, facts, spoilt or Spoilt()), *_shape_flaws(mixture, facts)]
    return tuple(flaws) if flaws else tuple(_fit_flaws(mixture, book, facts))


def line_flaws(mixture: Mixture, book: Book, facts: Facts, spoilt: Spoilt) -> Iterator[Flaw]:
    """What keeps lines of the mix from being weighed."""
    if not mixture.mix:
        yield Flaw(
            code="empty", path=("mix",), message="the mix is empty", hint='write its lines, such as "- 340 g butter"'
        )
    for index, line in enumerate(mixture.mix):
        flaw = _line_flaw(("mix", index, "take"), line, book, facts, spoilt)
        if flaw is not None:
            yield flaw


def _line_flaw(path: tuple[str | int, ...], line: MixLine, book: Book, facts: Facts, spoilt: Spoilt) -> Flaw | None:
    """What keeps one line from being weighed. The short form of a line is its `take`."""
    take = line.take
    end = take.at + len(take.name)
    name, bad = book.house_word(take.name), word_in(spoilt.names, take.name)
    if bad is not None and (name is None or take.name.lower() in spoilt.names):
        message = f'the card of "{bad}" is broken'
        return Flaw(
            code=FOLLOWS,
            path=path,
            message=message,
            hint="mend it in house/ingredients.yaml",
            on_key=False,
            start=take.at,
            end=end,
        )
    if name is None:
        first, _, rest = take.name.partition(" ")
        other = book.house_word(rest) if take.quantity.unit == "" else None
        if other and each_g(book.cards[other], book, facts) is None:
            close = nearest(first, WORDS)
            alike = close is not None and close[0] == first[0].lower()
            hint = f'did you mean "{close}"?' if alike else "write g, ml, tsp or another unit"
            return Flaw(
                code="value",
                path=path,
                message=f'no unit called "{first}"',
                hint=hint,
                on_key=False,
                start=take.at,
                end=take.at + len(first),
            )
        if spoilt.more:
            message = "the cards of the ingredients cannot be read"
            return Flaw(
                code=FOLLOWS,
                path=path,
                message=message,
                hint="mend house/ingredients.yaml",
                on_key=False,
                start=take.at,
                end=end,
            )
        return _no_card(path, take.name, book.names, take.at, end)
    try:
        mass_of(take, name, book, facts)
    except Unweighable as error:
        start = 0 if take.quantity.unit == "" else take.at
        return Flaw(
            code="no weight", path=path, message=error.message, hint=error.hint, on_key=False, start=start, end=end
        )
    return None


def _no_card(
    path: tuple[str | int, ...], word: str, names: Collection[str], start: int | None = None, end: int | None = None
) -> Flaw:
    """An ingredient without a card."""
    said = word.lower()
    # a word of it may be enough: "fine caster sugar" is near "caster sugar"
    inside = max((name for name in names if name in said), key=len, default=None)
    close = nearest(word, names) or inside or next(iter(get_close_matches(said, names, 1, 0.5)), None)
    other = f'did you mean "{close}"? if not, ' if close else ""
    hint = f'{other}add a card "{word}:" to house/ingredients.yaml'
    return Flaw(
        code="unknown ingredient",
        path=path,
        message=f'no card for the ingredient "{word}"',
        hint=hint,
        on_key=False,
        start=start,
        end=end,
    )


def _shape_flaws(mixture: Mixture, facts: Facts) -> Iterator[Flaw]:
    if mixture.kind not in facts.kinds:
        yield _choice(("kind",), mixture.kind, facts.kinds, "the kind")
        return
    if mixture.tins and mixture.makes:
        hint = 'keep one: "tins" for a cake, "makes" for what is made by weight'
        yield Flaw(
            code="tins or makes",
            path=("makes",),
            message='the mixture has both "tins" and "makes"',
            hint=hint,
            on_key=True,
        )
    if not mixture.tins and not mixture.makes:
        hint = 'add "tins: 2 round 20 cm x 7.5 cm" for a cake, or "makes: 900 g" for what is made by weight'
        yield Flaw(code="tins or makes", path=(), message='the mixture has neither "tins" nor "makes"', hint=hint)
    if mixture.tins and mixture.bake is None:
        hint = 'add "bake: {oven: 170 °C, time: 55-65 min}"'
        yield Flaw(
            code="missing", path=("tins",), message='the mixture has "tins" but no "bake"', hint=hint, on_key=True
        )
    oven = mixture.bake.oven if mixture.bake else None
    if oven and facts.kinds[mixture.kind].bake and oven.celsius <= _COOLEST_C:
        told, hint = f"no cake is done in an oven at {oven.written}", "write such as 160 °C, 140 °C fan or gas mark 3"
        yield Flaw(code="too cool", path=("bake", "oven"), message=told, hint=hint)
    if mixture.batter_depth and not mixture.tins:
        yield Flaw(
            code="no tins",
            path=("batter depth",),
            message="a batter depth needs tins",
            hint='add "tins:", or leave it out',
        )


def _fit_flaws(mixture: Mixture, book: Book, facts: Facts) -> Iterator[Flaw]:
    if not mixture.tins:
        return
    tins = tuple((count, as_owned(tin, book)) for count, tin in mixture.tins)
    brim_mm = min(tin.brim_mm for _, tin in tins)
    if mixture.batter_depth and mixture.batter_depth > brim_mm:
        hint = f"the tin is {brim_mm:g} mm deep: measure again, from the base to the top of the raw batter"
        yield Flaw(code="too deep", path=("batter depth",), message="the batter stands above the brim", hint=hint)
        return
    try:
        batch = weigh("", mixture, book, facts)
    except ValueError:
        holds = volume_at(tins, max(tin.brim_mm for _, tin in tins))
        hint = f"the tins hold {holds:.0f} ml to the brim: more tins, or less mixture"
        yield Flaw(code="too much", path=("tins",), message="the mixture is more than its tins hold", hint=hint)
        return
    limit = facts.numbers["rim limit"].value
    by_share = any(tin.kind.kept == "share" for _, tin in tins)
    if not by_share and batch.baked_mm > limit * brim_mm:
        message = f"baked, it would stand {batch.baked_mm:.0f} mm high in a tin {brim_mm:g} mm deep"
        yield Flaw(code="too much", path=("tins",), message=message, hint="more or deeper tins, or less mixture")
