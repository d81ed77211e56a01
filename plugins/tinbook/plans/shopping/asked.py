"""Which orders a list is for, and everything worked out for it: from a book to its shopping list."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.models.stock import StockEntry
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError
from tinbook.plans.orders.asked import worked_order
from tinbook.plans.shopping.needs import OrderNeeds, needs_of
from tinbook.plans.shopping.shopping import ShoppingList, shopping_list
from tinbook.plans.shopping.stock import Stock, reckoned
from tinbook.plans.shopping.things import Things, plain

WEEK = timedelta(days=7)
AGREED = "agreed"


@dataclass(frozen=True, kw_only=True)
class Shopping:
    """A list and what is to be known about it. `not_made`: orders that cannot be worked out, each with why; `unknown`:
    orders that are done, of which nobody can say any more what they took; `only_asked`: orders that are left out, as
    nothing has been promised."""

    list: ShoppingList
    not_made: tuple[tuple[str, str], ...]
    unknown: tuple[str, ...]
    only_asked: tuple[str, ...]


def shopping(book: Book, facts: Facts, today: date, chosen: Collection[str] | None = None) -> Shopping:
    """What to buy from a day on: for the `chosen` orders by their files, or for all that are agreed and still to go
    out. What the house bakes for itself is an order like any other."""
    things = Things(book, facts)
    orders: Mapping[str, Order] = book.others["order"]
    ahead = {slug: order for slug, order in orders.items() if order.open and order.hand_over.date() >= today}
    agreed = {slug for slug, order in ahead.items() if order.state == AGREED}
    wanted = set(agreed if chosen is None else chosen)
    bakes = Bakes(book, facts)
    # the others that are agreed have a claim on what is at home as well
    needs, wrong = _needs({slug: ahead[slug] for slug in ahead if slug in wanted | agreed}, things, bakes)
    stock, unknown = stock_of(book, facts, bakes)
    kitchen: WorkingKitchen = book.others["kitchen"]
    found = shopping_list(needs, wanted, stock, book, facts, kitchen.spare or 0.0)
    left_out = [order.handle for slug, order in ahead.items() if slug not in wanted and order.state != AGREED]
    return Shopping(
        list=found, not_made=tuple(wrong), unknown=unknown, only_asked=tuple(left_out) if chosen is None else ()
    )


def of_week(book: Book, first: date, today: date) -> tuple[str, ...]:
    """The orders that go out in the seven days from one on, and are agreed."""
    orders: Mapping[str, Order] = book.others["order"]
    return tuple(
        slug
        for slug, order in orders.items()
        if order.state == AGREED and first <= order.hand_over.date() < first + WEEK and order.hand_over.date() >= today
    )


def _needs(
    orders: Mapping[str, Order], things: Things, bakes: Bakes
) -> tuple[Sequence[OrderNeeds], list[tuple[str, str]]]:
    needs, wrong = list[OrderNeeds](), list[tuple[str, str]]()
    for slug, order in orders.items():
        try:
            needs.append(needs_of(worked_order(slug, order, things.book, things.facts, bakes), things))
        except AskError as error:
            wrong.append((order.handle, f"{error.message}: {error.hint}"))
    return needs, wrong


def stock_of(book: Book, facts: Facts, bakes: Bakes | None = None) -> tuple[Stock, tuple[str, ...]]:
    """What there is at home, and the handles of orders that are done of which the book cannot say any more what they
    took."""
    things, bakes = Things(book, facts), bakes or Bakes(book, facts)
    entries: Sequence[StockEntry] = book.others["stock"]
    first = _counts_from(entries)
    orders: Mapping[str, Order] = book.others["order"]
    done, unknown = list[OrderNeeds](), list[str]()
    for slug, order in orders.items():
        if order.open or first is None or order.hand_over.date() < first:
            continue
        needs = _took(slug, order, things, bakes)
        if needs is None:
            unknown.append(order.handle)
        else:
            done.append(needs)
    return reckoned(entries, done, things), tuple(unknown)


def _counts_from(entries: Sequence[StockEntry]) -> date | None:
    """The day from which what orders took matters: of anything, the first entry that no later count replaces."""
    known: dict[str, date] = {}
    for entry in sorted(entries, key=lambda each: each.day):
        name = plain(entry.of)
        known[name] = entry.day if entry.counted else known.get(name, entry.day)
    return min(known.values(), default=None)


def _took(slug: str, order: Order, things: Things, bakes: Bakes) -> OrderNeeds | None:
    """What an order that is done took; None if the book has changed so that nobody can say."""
    try:
        return needs_of(worked_order(slug, order, things.book, things.facts, bakes), things)
    except (AskError, LookupError, ValueError):
        # an order that is done is never checked again, so anything it names may be gone
        return None
