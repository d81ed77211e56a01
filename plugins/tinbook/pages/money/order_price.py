"""The price of an order: as it is worked out, as it was quoted and agreed, and as it was."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.models.orders import Order
from tinbook.pages.base.shared import plural
from tinbook.pages.money.lines import SumLine
from tinbook.pages.money.price_view import PriceView
from tinbook.pages.orders.week import order_address, what_is_made
from tinbook.plans.money.of_orders import OrderMoney, order_money
from tinbook.plans.money.offered import Priced


@dataclass(frozen=True)
class OrderPriceView(PriceView):
    """What is asked for an order."""

    @property
    def order(self) -> Order:
        """What its file says."""
        return self.till.orders[self.slug]

    @property
    def name(self) -> str:
        """What is made, and for whom."""
        return f"{what_is_made(self.order, self.desk)}, order “{self.order.handle}”"

    @property
    def order_link(self) -> str:
        """Its own page."""
        return order_address(self.slug)

    @cached_property
    def money(self) -> OrderMoney | None:
        """Its money; None if it cannot be made, or if the book has changed since."""
        return order_money(self.slug, self.order, self.till)

    @cached_property
    def priced(self) -> Priced | None:
        """As it was, once it is done; before that, as it is planned."""
        return self.money.actual if self.money else None

    @property
    def ledger(self) -> tuple[SumLine, ...]:
        """What was said about its price, and what came of it."""
        return tuple(self._ledger()) if self.money else ()

    def _ledger(self) -> Iterator[SumLine]:
        money, words = self.money, self.words
        if money is None:
            return
        for said, what in ((money.quoted, "Quoted"), (money.agreed, "Agreed")):
            if said is not None:
                off = said - money.now.price.price
                told = f"{words.more(off)} against what is worked out" if off else "as it is worked out"
                yield SumLine(figure=words.plain(said), what=what, more=told)
        if money.deposit is not None:
            yield SumLine(figure=words.plain(money.deposit), what="Deposit", more="paid")
            yield SumLine(figure=words.plain(money.due), what="Still to pay", kind="tb-sum")
        if money.taken is not None and money.off is not None:
            hours = money.taken.hours
            done = f"{hours.logged} of {plural(hours.tasks, 'task')} timed, the rest as planned"
            yield SumLine(figure=words.plain(money.taken.cost.shown), what="It cost", more=done)
            yield SumLine(figure=words.more(money.off), what="Off what today's prices and the plan say")
        left = (
            "left once it is paid for, your hours too" if money.left >= 0 else "short of what it costs, your hours too"
        )
        yield SumLine(figure=words.plain(abs(money.left)), what=left.capitalize(), kind="tb-sum tb-price")
