"""Everything a sum of money is worked out from, together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from functools import cached_property

from tinbook.engine.money import NOTHING, margin_of, mark_up_of
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.money import HouseMoney
from tinbook.models.orders import Order
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.money.paid import PaidPrices, paid_prices
from tinbook.plans.shopping.things import Things


@dataclass(frozen=True)
class Till:
    """A book with its money and the prices that count."""

    things: Things
    bakes: Bakes
    money: HouseMoney
    paid: PaidPrices

    @property
    def book(self) -> Book:
        """The book."""
        return self.things.book

    @property
    def facts(self) -> Facts:
        """The facts."""
        return self.things.facts

    @property
    def kitchen(self) -> WorkingKitchen:
        """When and how the kitchen works."""
        found: WorkingKitchen = self.book.others["kitchen"]
        return found

    @property
    def orders(self) -> Mapping[str, Order]:
        """Its orders, by their files."""
        found: Mapping[str, Order] = self.book.others["order"]
        return found

    @property
    def coin(self) -> Decimal:
        """The smallest part of its currency."""
        return self.money.coin

    @cached_property
    def mark_up(self) -> Decimal:
        """What is added, as a share of the cost."""
        return self.money.mark_up or NOTHING if self.money.margin is None else mark_up_of(self.money.margin)

    @cached_property
    def margin(self) -> Decimal:
        """The same as a share of the price without VAT."""
        return margin_of(self.mark_up) if self.money.margin is None else self.money.margin

    def on(self, day: date) -> Till:
        """With the prices that counted on a day."""
        return replace(self, paid=self.paid.up_to(day))

    def before(self) -> Till:
        """With each price as it was before it changed last."""
        return replace(self, paid=self.paid.one_before())


def till_of(book: Book, facts: Facts, bakes: Bakes | None = None) -> Till:
    """The till of a book."""
    things = Things(book, facts)
    return Till(things, bakes or Bakes(book, facts), book.others["money"], paid_prices(book.others["prices"], things))
