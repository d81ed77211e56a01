"""Rules for orders: what they name must be there, and they must be possible. One that has gone out is left alone."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from datetime import date

from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Path
from tinbook.models.orders import Order
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.sizes import cake_sizes
from tinbook.plans.cakes.tables import size_asked
from tinbook.plans.orders.asked import OrderWorked, design_of, plain_cake, worked_order
from tinbook.plans.orders.free_from import ALSO, FreeFrom, held_against, meant
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.plans.rules.fields import FOLLOWS, link_flaws
from tinbook.problems import nearest

_POSTCODE = r"\b[A-Z]{1,2}[0-9][A-Z0-9]? ?[0-9][A-Z]{2}\b"
_STREET = r"\b[0-9]+[a-z]? (?:[A-Z][\w'’]+ )+(?:Street|Road|Lane|Avenue|Close|Drive|Row|Terrace|Way|St|Rd|Ave)\b"
LIKE_PERSONAL: Mapping[str, re.Pattern[str]] = {
    "an e-mail address": re.compile(r"\S+@\S+\.\w+"),
    "a telephone number": re.compile(r"(?<![\w-])\+?(?:[0-9][ ()-]?){9,}(?![\w-])"),
    "an address": re.compile(f"{_POSTCODE}|{_STREET}"),
    "a person's name": re.compile(r"\b(?:Mr|Mrs|Ms|Miss|Mx|Dr)\.? [A-Z]\w+|^[A-Z][a-z]+ (?:[A-Z]\. ?)?[A-Z][a-z]+$"),
}
"""What looks like something about a person. It is a guess: a name that is also a word is not found, and a boat with two
names may be."""


PAGES = frozenset({"index", "week", "shopping", "prices", "paid"})
"""What pages of the kitchen's book are called: an order's file would take their place."""


def order_flaws(
    order: Order, book: Book, facts: Facts, lost: Collection[str] = (), today: date | None = None
) -> tuple[Flaw, ...]:
    """Everything wrong with an order that is still open; `lost` are names missing only because of a problem reported
    elsewhere. `today`: the day it is held against, if it is."""
    flaws = [*_personal(order)]
    if not order.open:
        return tuple(flaws)
    told = [*_what_flaws(order, book, lost), *_change_flaws(order, book, facts, lost), *_free_words(order, book, facts)]
    if today and order.hand_over.date() < today:
        message = f'the order is still "{order.state}", but it was due on {order.hand_over.date().isoformat()}'
        hint = 'write "state: gone", or the new day'
        flaws.append(Flaw(code="past", path=("hand over",), message=message, hint=hint, note=True))
    if not told and not [flaw for flaw in flaws if not flaw.note]:
        told += _possible(order, book, facts)
    return (*flaws, *told)


def handle_flaws(orders: Mapping[str, Order]) -> dict[str, Flaw]:
    """One handle for two open orders, told at the later file, and files called as pages are; by the order's slug."""
    seen: dict[str, str] = {}
    found = {}
    for slug, order in orders.items():
        if slug in PAGES:
            message = f'the kitchen\'s book has a page called "{slug}"'
            hint = f'give the file another name, such as "{order.hand_over.date().isoformat()}-{slug}.yaml"'
            found[slug] = Flaw(code="file name", path=("handle",), message=message, hint=hint)
            continue
        handle = " ".join(order.handle.lower().split())
        if order.open and handle in seen:
            message = f'"{order.handle}" is the handle of orders/{seen[handle]}.yaml as well'
            hint = "give this one a handle of its own"
            found[slug] = Flaw(code="handle", path=("handle",), message=message, hint=hint)
        elif order.open:
            seen[handle] = slug
    return found


def _personal(order: Order) -> Iterator[Flaw]:
    texts: list[tuple[Path, str]] = [(("handle",), order.handle)]
    texts += [(("notes", index), note) for index, note in enumerate(order.notes)]
    for path, text in texts:
        what = next((what for what, pattern in LIKE_PERSONAL.items() if pattern.search(text)), None)
        if what:
            hint = "use a handle that only you know, and keep the rest out of the book; if it is not, leave it"
            yield Flaw(code="personal", path=path, message=f"this looks like {what}", hint=hint, note=True)


def _what_flaws(order: Order, book: Book, lost: Collection[str]) -> Iterator[Flaw]:
    """A cake, recipes or a class: one of them, and what they name."""
    if not order.cake and not order.mixtures and not order.class_:
        hint = 'add "cake:", "mixtures:" or "class:"'
        yield Flaw(code="order", path=(), message="the order does not say what is to be made", hint=hint)
    if order.class_ and (order.cake or order.mixtures or order.delivered):
        message, hint = "a class cannot be an order for a cake as well", "write two files"
        yield Flaw(code="order", path=("class",), message=message, hint=hint, on_key=True)
    if order.cake is None:
        for key, said in (("change", order.change), ("size", order.size), ("guests", order.guests)):
            if said is not None:
                message = f'"{key}" is about a cake, and this order has none'
                yield Flaw(code="order", path=(key,), message=message, hint='add "cake:", or take it out', on_key=True)
    elif order.cake in lost and order.cake not in book.cakes:
        message, hint = f'the cake "{order.cake}" has a mistake in it', f"fix cakes/{order.cake}.yaml first"
        yield Flaw(code=FOLLOWS, path=("cake",), message=message, hint=hint)
    elif order.cake not in book.cakes:
        yield _unknown(("cake",), "cake", order.cake, book.cakes)
    for index, each in enumerate(order.mixtures):
        path: Path = ("mixtures", index)
        if each.mixture in lost and each.mixture not in book.mixtures:
            message, hint = (
                f'its recipe "{each.mixture}" has a mistake in it',
                f"fix mixtures/{each.mixture}.yaml first",
            )
            yield Flaw(code=FOLLOWS, path=path, message=message, hint=hint)
        elif each.mixture not in book.mixtures:
            yield _unknown(path, "mixture", each.mixture, book.mixtures)
        elif each.tin and not book.mixtures[each.mixture].tins:
            message = f'"{each.mixture}" is made by weight, not in tins'
            yield Flaw(code="order", path=(*path, "tin"), message=message, hint="take it out", on_key=True)
    if order.class_:
        known = {*book.techniques, *lost}
        for flaw in link_flaws("techniques", order.class_.techniques, known):
            yield Flaw(code=flaw.code, path=("class", *flaw.path), message=flaw.message, hint=flaw.hint)


def _unknown(path: Path, what: str, word: str, known: Collection[str]) -> Flaw:
    close = nearest(word, known)
    hint = f'did you mean "{close}"?' if close else f"the book has {', '.join(sorted(known)) or 'none yet'}"
    return Flaw(code="no such file", path=path, message=f'the book has no {what} "{word}"', hint=hint)


def _change_flaws(order: Order, book: Book, facts: Facts, lost: Collection[str]) -> Iterator[Flaw]:
    """A cake that cannot be made as changed for this order."""
    if order.cake in book.cakes and order.change:
        keys = {(field.alias or name): name for name, field in type(order.change).model_fields.items()}
        for flaw in cake_flaws(design_of(order, book), book, facts, lost):
            written = flaw.path and keys.get(str(flaw.path[0])) in order.change.model_fields_set
            path = ("change", *flaw.path) if written else ("change",)
            yield Flaw(code=flaw.code, path=path, message=flaw.message, hint=flaw.hint, on_key=not written)


def _free_words(order: Order, book: Book, facts: Facts) -> Iterator[Flaw]:
    for index, word in enumerate(order.must_be_free_from):
        if meant(word, book, facts) is None:
            known = [*ALSO, *(each.label for each in facts.allergens.values()), "nuts", *book.names]
            close = nearest(word, known)
            hint = f'did you mean "{close}"?' if close else "name one of the fourteen allergens, or an ingredient"
            message = f'"{word}" is neither an allergen nor an ingredient on a card'
            yield Flaw(code="free from", path=("must be free from", index), message=message, hint=hint)


def _possible(order: Order, book: Book, facts: Facts) -> Iterator[Flaw]:
    """A size that can be made, tins that go into the oven, and nothing in it that a guest must not have."""
    if order.cake and (order.size or order.guests):
        key = "size" if order.size else "guests"
        try:
            sizes = cake_sizes(design_of(order, book), book, facts)
            size_asked(sizes, order.size, None if order.size else order.guests)
        except AskError as error:
            yield Flaw(code="size", path=(key,), message=error.message, hint=error.hint)
            return
    for index, each in enumerate(order.mixtures):
        plain = plain_cake(each, book)
        for flaw in cake_flaws(plain, book, facts) if plain else ():
            yield Flaw(code=flaw.code, path=("mixtures", index), message=flaw.message, hint=flaw.hint)
            return
    # a cake is worked out only where something hangs on it: an open order is read each time a page is saved
    if not order.must_be_free_from and not (order.size and order.guests):
        return
    try:
        worked = worked_order("", order, book, facts)
    except AskError as error:
        yield Flaw(code="size", path=("guests",) if order.guests else (), message=error.message, hint=error.hint)
        return
    yield from _held(worked, order, book, facts)


def _held(worked: OrderWorked, order: Order, book: Book, facts: Facts) -> Iterator[Flaw]:
    for index, each in enumerate(held_against(worked, book, facts)):
        path: Path = ("must be free from", index)
        # only a question so far: it is for the maker to know, and stands in nobody's way
        note = order.state == "asked"
        if each.sources:
            told = ", ".join(dict.fromkeys(name if name == key else f"{name} ({key})" for name, key in each.sources))
            message = f"the order must be free from {each.word}, but has it in {told}"
            yield Flaw(code="free from", path=path, message=message, hint=_offer(each), note=note)
        elif each.unknown:
            told = " or ".join(filter(None, (", ".join(each.unknown[:-1]), each.unknown[-1])))
            message = f"the order must be free from {each.word}, and nobody has said what is in {told}"
            hint = 'look at the packet and write "allergens:" on its card before you agree to the order'
            yield Flaw(code="free from", path=path, message=message, hint=hint, note=note)


def _offer(each: FreeFrom) -> str:
    hint = "; ".join(f"instead of {name}, {', '.join(slugs)}" for name, slugs in each.instead if slugs)
    if hint:
        hint = f"by the cards these are without it: {hint}"
    else:
        hint = "the book has no recipe of this kind without it: say no, or change the recipe"
    return hint
