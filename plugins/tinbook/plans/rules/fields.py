"""Rules between the fields of a mixture, and names that lead to other files. Each returns flaws; none raises."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from tinbook.facts import Facts
from tinbook.models import Book, Flaw, MixLine, Mixture, Path, word_in
from tinbook.plans.base.weighing import Unweighable, as_owned, each_g, mass_of, volume_at, weigh
from tinbook.problems import nearest
from tinbook.units import WORDS, unit_meant

FOLLOWS = "follows"
"""The code of a flaw that only follows from another, reported elsewhere."""

COOLEST_C = 100.0
"""No cake bakes through in an oven as cool as this."""


@dataclass(frozen=True, slots=True)
class Spoilt:
    """Cards that are written but cannot be used: lower-case `names` that lead to them. `more`: there may be others."""

    names: Mapping[str, str] = field(default_factory=dict)
    more: bool = False


def unknown_word(path: Path, word: str, known: Collection[str], *, message: str, hint: str = "") -> Flaw:
    """`word` is none of the `known`: offer the nearest, or the `hint`, or all of them if they are few."""
    close = nearest(word, known)
    if close:
        hint = f'did you mean "{close}"?'
    elif not hint:
        hint = f"choose from: {', '.join(sorted(known))}"
    return Flaw(code="unknown word", path=path, message=message, hint=hint)


def link_flaws(key: str, slugs: Iterable[str], known: Collection[str]) -> Iterator[Flaw]:
    """Names of other files that do not exist."""
    for index, slug in enumerate(slugs):
        if slug not in known:
            close = nearest(slug, known) or next((name for name in known if slug in name), None)
            hint = f'did you mean "{close}"?' if close else "write the name of its file, without .yaml"
            yield Flaw(code="no such file", path=(key, index), message=f'the book has no "{slug}"', hint=hint)


def mixture_flaws(mixture: Mixture, book: Book, facts: Facts, spoilt: Spoilt | None = None) -> tuple[Flaw, ...]:
    """Everything that stops a mixture being weighed and scaled."""
    flaws = [*line_flaws(mixture, book, facts, spoilt or Spoilt()), *_shape_flaws(mixture, facts)]
    flaws += _promise_flaws(mixture, book)
    return tuple(flaws) if flaws else tuple(_fit_flaws(mixture, book, facts))


def _promise_flaws(mixture: Mixture, book: Book) -> Iterator[Flaw]:
    """What it is named for has to be in it."""
    there = {book.house_word(line.take.name) or line.take.name for line in mixture.mix}
    for index, word in enumerate(mixture.named_for):
        if (book.house_word(word) or word) not in there:
            message = f'there is no "{word}" in this mix'
            yield unknown_word(("named for", index), word, there, message=message)


def line_flaws(mixture: Mixture, book: Book, facts: Facts, spoilt: Spoilt) -> Iterator[Flaw]:
    """What stops lines of the mix being weighed."""
    if not mixture.mix:
        hint = 'write its lines, such as "- 250 g butter"'
        yield Flaw(code="empty", path=("mix",), message="the mix is empty", hint=hint)
    for index, line in enumerate(mixture.mix):
        flaw = _line_flaw(("mix", index, "take"), line, book, facts, spoilt)
        if flaw is not None:
            yield flaw


def _line_flaw(path: Path, line: MixLine, book: Book, facts: Facts, spoilt: Spoilt) -> Flaw | None:
    """What stops one line being weighed. The short form of a line is its `take`."""
    take = line.take
    start, end = take.at, take.at + len(take.name)
    name, bad = book.house_word(take.name), word_in(spoilt.names, take.name)
    if bad is not None and (name is None or take.name.lower() in spoilt.names):
        message, hint = f'the card for "{take.name}" has a mistake in it', "fix it in house/ingredients.yaml"
        return Flaw(code=FOLLOWS, path=path, message=message, hint=hint, on_key=False, start=start, end=end)
    if name is None and (flaw := _unit_flaw(path, line, book, facts)):
        return flaw
    if name is None and spoilt.more:
        message, hint = "the ingredients' cards cannot be read", "fix house/ingredients.yaml"
        return Flaw(code=FOLLOWS, path=path, message=message, hint=hint, on_key=False, start=start, end=end)
    if name is None:
        return no_card(path, take.name, book.names, start, end)
    try:
        mass_of(take, name, book, facts)
    except Unweighable as error:
        message, hint, start = error.message, error.hint, 0 if take.quantity.unit == "" else start
        return Flaw(code="no weight", path=path, message=message, hint=hint, on_key=False, start=start, end=end)
    return None


def _unit_flaw(path: Path, line: MixLine, book: Book, facts: Facts) -> Flaw | None:
    """A word before an ingredient that does not count by the piece was meant as a unit: `3 spoon butter`."""
    take = line.take
    word, _, rest = take.name.partition(" ")
    name = book.house_word(rest) if take.quantity.unit == "" else None
    if not name or each_g(book.cards[name], book, facts) is not None:
        return None
    close = nearest(word, WORDS)
    alike = close is not None and close[0] == word[0].lower()
    hint = (unit_meant(word) or f'did you mean "{close}"?') if alike else "write g, ml, tsp or another unit"
    message = f'there is no unit called "{word}"'
    end = take.at + len(word)
    return Flaw(code="value", path=path, message=message, hint=hint, on_key=False, start=take.at, end=end)


def no_card(path: Path, word: str, names: Collection[str], start: int | None = None, end: int | None = None) -> Flaw:
    """An ingredient without a card."""
    small = word.lower()
    # one word of it may be enough: "fine caster sugar" is near "caster sugar"
    inside = max((name for name in names if name in small), key=len, default=None)
    close = nearest(word, names) or inside or next(iter(get_close_matches(small, names, 1, 0.5)), None)
    hint = f'add a card "{word}:" to house/ingredients.yaml'
    if close:
        hint = f'did you mean "{close}"? if not, {hint}'
    message = f'there is no card for the ingredient "{word}"'
    return Flaw(code="unknown ingredient", path=path, message=message, hint=hint, on_key=False, start=start, end=end)


def _shape_flaws(mixture: Mixture, facts: Facts) -> Iterator[Flaw]:
    if mixture.kind not in facts.kinds:
        message = f'the kind "{mixture.kind}" is not known'
        yield unknown_word(("kind",), mixture.kind, facts.kinds, message=message)
        return
    if mixture.tins and mixture.makes:
        hint = 'keep one: "tins" for a cake, "makes" for anything made by weight'
        message = 'the mixture has both "tins" and "makes"'
        yield Flaw(code="tins or makes", path=("makes",), message=message, hint=hint, on_key=True)
    if not mixture.tins and not mixture.makes:
        hint = 'add "tins: 2 round 20 cm x 7.5 cm" for a cake, or "makes: 900 g" for anything made by weight'
        yield Flaw(code="tins or makes", path=(), message='the mixture has neither "tins" nor "makes"', hint=hint)
    if mixture.tins and mixture.bake is None:
        hint = 'add "bake: {oven: 170 °C, time: 55-65 min}"'
        message = 'the mixture has "tins" but no "bake"'
        yield Flaw(code="missing", path=("tins",), message=message, hint=hint, on_key=True)
    oven = mixture.bake.oven if mixture.bake else None
    if oven and facts.kinds[mixture.kind].bake and oven.celsius <= COOLEST_C:
        message, hint = (
            f"no cake bakes at {oven.written}",
            "write it like 160 °C, 140 °C fan or gas mark 3",
        )
        yield Flaw(code="too cool", path=("bake", "oven"), message=message, hint=hint)
    if mixture.batter_depth and not mixture.tins:
        hint = 'add "tins:", or leave it out'
        yield Flaw(code="no tins", path=("batter depth",), message="a batter depth needs tins", hint=hint)


def _fit_flaws(mixture: Mixture, book: Book, facts: Facts) -> Iterator[Flaw]:
    if not mixture.tins:
        return
    tins = tuple((count, as_owned(tin, book)) for count, tin in mixture.tins)
    brim_mm = min(tin.brim_mm for _, tin in tins)
    if mixture.batter_depth and mixture.batter_depth > brim_mm:
        hint = f"the tin is {brim_mm:g} mm deep: measure again, from the base to the top of the raw batter"
        message = "the batter comes above the rim of the tin"
        yield Flaw(code="too deep", path=("batter depth",), message=message, hint=hint)
        return
    try:
        batch = weigh("", mixture, book, facts)
    except ValueError:
        holds_ml = volume_at(tins, max(tin.brim_mm for _, tin in tins))
        hint = f"the tins hold {holds_ml:.0f} ml to the brim: use more tins, or less mixture"
        yield Flaw(code="too much", path=("tins",), message="there is more mixture than the tins can hold", hint=hint)
        return
    limit = facts.numbers["rim limit"].value
    by_share = any(tin.kind.kept == "share" for _, tin in tins)
    if not by_share and batch.baked_mm > limit * brim_mm:
        message = f"baked, it would stand {batch.baked_mm:.0f} mm high in a tin {brim_mm:g} mm deep"
        yield Flaw(code="too much", path=("tins",), message=message, hint="use more or deeper tins, or less mixture")
