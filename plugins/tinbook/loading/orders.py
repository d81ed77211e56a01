"""Orders: checked last, once everything that they may ask for has been read."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from datetime import date

from tinbook.facts import Facts
from tinbook.loading.cakes import names_lost
from tinbook.loading.intake import Intake
from tinbook.models import Book
from tinbook.models.orders import Order
from tinbook.plans.rules.orders import handle_flaws, order_flaws

ORDERS, NAME = "orders/", "order"


def with_orders(intake: Intake, book: Book, facts: Facts, colours: Collection[str], today: date | None) -> Book:
    """The book with its sound orders; what is wrong with the others is told. `colours`: those lost by a problem told
    elsewhere; `today`: the day orders are held against, if they are."""
    orders: Mapping[str, Order] = book.others[NAME]
    if not orders:
        return book
    lost, twice = names_lost(intake, colours), handle_flaws(orders)
    for slug, order in orders.items():
        flaws = order_flaws(order, book, facts, lost, today)
        intake.tell(f"{ORDERS}{slug}", (*flaws, twice[slug]) if slug in twice else flaws)
    sound = {slug: order for slug, order in orders.items() if f"{ORDERS}{slug}" not in intake.broken}
    return replace(book, others={**book.others, NAME: sound})
