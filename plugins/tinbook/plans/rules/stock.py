"""What is wrong with the supplies and with the stock: each with what to write instead."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from tinbook.models import Flaw, word_in
from tinbook.models.packs import BY_KIND
from tinbook.models.stock import ACTS, StockEntry
from tinbook.models.supplies import RIBBON, WANTED, Supply, SupplySize
from tinbook.plans.rules.fields import FOLLOWS, Spoilt
from tinbook.plans.shopping.things import FOOD, LENGTH, Thing, Things, plain, sound_size

SOUND = Spoilt()
EXAMPLES = {"mass": "500 g", "volume": "500 ml", "length": "3 m", "count": "2"}


def supply_flaws(supply: Supply, before: Sequence[Supply]) -> Iterator[Flaw]:
    """What is wrong with a line of the supplies; `before`: the lines above it."""
    if not sound_size(supply.what, supply.size):
        yield _size_flaw(supply.what, supply.size)
    kind = "length" if supply.what == RIBBON else "count"
    for at, pack in enumerate(supply.packs):
        if pack.kind != kind:
            message, hint = f"a pack of {supply.what} has a number", 'write how many are in it, such as "12"'
            if kind == "length":
                message, hint = "a reel of ribbon has a length", 'write something like "5 m"'
            yield Flaw(code="packs", path=("packs", at), message=message, hint=hint)
    if any(plain(each.name) == plain(supply.name) for each in before):
        hint = "keep one of the two"
        yield Flaw(code="twice", path=("what",), message=f'"{supply.name}" is in the list already', hint=hint)


def _size_flaw(what: str, size: SupplySize | None) -> Flaw:
    example = WANTED[what][1]
    if size is None:
        message, hint = f"the book chooses a {what} by its size", f'add "size: {example}"'
        return Flaw(code="size", path=("what",), message=message, hint=hint)
    message, hint = f'"{size.written}" is not the size of a {what}', f'write something like "{example}"'
    return Flaw(code="size", path=("size",), message=message, hint=hint)


def stock_flaws(entry: StockEntry, things: Things, spoilt: Spoilt = SOUND, today: date | None = None) -> Iterator[Flaw]:
    """What is wrong with an entry of the stock; `spoilt`: cards lost by a problem told elsewhere; `today`: the day
    it is held against, if it is."""
    written = [act for act in ACTS if getattr(entry, act) is not None]
    if not written:
        hint = 'add "counted: 500 g", or "bought" or "taken"'
        yield Flaw(code="stock", path=("of",), message="this does not say how much", hint=hint)
    for act in written[1:]:
        hint = "write an entry for each"
        yield Flaw(
            code="stock", path=(act,), message=f"an entry says either {written[0]} or {act}", hint=hint, on_key=True
        )
    if today and entry.day > today:
        message, hint = f"{entry.day.isoformat()} is still to come", "write the day on which it was done"
        yield Flaw(code="future", path=("day",), message=message, hint=hint)
    if entry.opened and entry.opened > entry.day:
        message = "it was opened after this day"
        hint = f"write a day up to {entry.day.isoformat()}, or make it an entry of its own"
        yield Flaw(code="future", path=("opened",), message=message, hint=hint)
    thing = things.called(entry.of)
    if thing is None:
        yield unknown_thing(entry.of, things, spoilt)
        return
    for act in written:
        said = getattr(entry, act)
        if things.amount_of(thing, said) is None:
            yield other_kind(act, said.kind, thing, things)
        elif not said.total and act != "counted":
            yield Flaw(code="stock", path=(act,), message=f'"{said.written}" is nothing', hint="leave the entry out")
    yield from _opened_flaws(entry, thing, things)


def _opened_flaws(entry: StockEntry, thing: Thing, things: Things) -> Iterator[Flaw]:
    inside = entry.in_opened
    if inside is None:
        return
    path = ("in opened",)
    if entry.counted is None or entry.opened is None:
        hint = 'add "opened: " and the day, and how much was counted' if entry.opened is None else "leave it out"
        message = "this is for something that was counted and is opened"
        yield Flaw(code="stock", path=path, message=message, hint=hint, on_key=True)
        return
    part, whole = things.amount_of(thing, inside), things.amount_of(thing, entry.counted)
    if part is None:
        yield other_kind("in opened", inside.kind, thing, things)
    elif whole is not None and part > whole:
        message = f"{inside.written} is more than the {entry.counted.written} that were counted"
        yield Flaw(code="stock", path=path, message=message, hint="write how much of that is in the opened pack")


def unknown_thing(word: str, things: Things, spoilt: Spoilt) -> Flaw:
    """The name of something that the book does not know."""
    close = things.near(word)
    hint = (
        f'did you mean "{close}"?' if close else "give it a card in house/ingredients.yaml, or a line in supplies.yaml"
    )
    message = f'"{word}" is neither an ingredient on a card nor among the supplies'
    lost = spoilt.more or word_in(spoilt.names, word) or word_in(spoilt.names, word.partition(",")[0])
    return Flaw(code=FOLLOWS if lost else "unknown thing", path=("of",), message=message, hint=hint)


def other_kind(key: str, kind: str, thing: Thing, things: Things) -> Flaw:
    """An amount of a kind that a thing does not come in, or that its card does not weigh."""
    good = [each for each in EXAMPLES if things.one(thing, each) is not None]
    message = f"{thing.name} is not measured by {BY_KIND[kind]}"
    hint = f"write something like {EXAMPLES[good[0]]}"
    if thing.unit == FOOD and kind in ("count", "volume"):
        message = "its card does not say what one weighs"
        hint += f', or add "each:" to the card for "{thing.card}"'
        if kind == "volume":
            message = "the book does not know what a millilitre of it weighs"
            hint = f'write something like {EXAMPLES[good[0]]}, or add "weighs:" to the card for "{thing.card}"'
    if thing.unit == LENGTH and kind == "count":
        message = f"{thing.name} is measured by length"
    return Flaw(code="unit", path=(key,), message=message, hint=hint)
