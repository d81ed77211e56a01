"""What is paid and asked: read once cards and supplies are known, so that each price is held against its card."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from tinbook.facts import Facts
from tinbook.loading.intake import Intake, under
from tinbook.models import Book
from tinbook.models.money import HouseMoney
from tinbook.models.orders import Order
from tinbook.models.register import SourceKind, kinds
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.money import money_flaws, order_money_flaws, price_flaws
from tinbook.plans.shopping.things import Things

MONEY, PRICES, ORDER = kinds()["money"], kinds()["prices"], kinds()["order"]


def with_money(intake: Intake, book: Book, facts: Facts, spoilt: Spoilt, today: date | None) -> Book:
    """The book with its money and its prices; none from a file of which any part cannot be trusted, and no order with a
    sum that cannot be right. `spoilt`: cards lost by a problem told elsewhere; `today`: the day prices are held
    against, if they are."""
    money: HouseMoney = book.others[MONEY.name]
    if MONEY.address in intake.documents and MONEY.address not in intake.broken:
        intake.tell(MONEY.address, money_flaws(money))
    certain = MONEY.address not in intake.broken
    money = money if certain else MONEY.nothing
    things = Things(book, facts)
    # the slip in the money is told; whether a sum is in its currency cannot be said until it is mended
    prices = tuple(
        entry
        for file in intake.years_of(PRICES)
        for entry in _entries(intake, file, things, money if certain else None, spoilt, today)
    )
    orders: Mapping[str, Order] = book.others[ORDER.name]
    for slug, order in orders.items() if certain else ():
        intake.tell(f"{ORDER.address}{slug}", order_money_flaws(order, money))
    sound = {slug: order for slug, order in orders.items() if f"{ORDER.address}{slug}" not in intake.broken}
    return replace(book, others={**book.others, MONEY.name: money, PRICES.name: prices, ORDER.name: sound})


def _entries(
    intake: Intake, file: SourceKind, things: Things, money: HouseMoney | None, spoilt: Spoilt, today: date | None
) -> tuple[Any, ...]:
    data = intake.data_of(file)
    found: list[Any] = []
    for path, entry in intake.entries(file, data) if data is not None else ():
        flaws = price_flaws(entry, things, money or HouseMoney(), spoilt, today)
        intake.tell(file.address, under(path, (flaw for flaw in flaws if money or flaw.code != "currency")))
        found.append(entry)
    return () if file.address in intake.broken else tuple(found)
