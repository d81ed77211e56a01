"""What everything costs and is sold for, in lists: orders, cakes, recipes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.money.lines import BarPart, bar, bar_said
from tinbook.pages.money.sums import SumWords
from tinbook.pages.orders.order_view import LEAVES
from tinbook.pages.orders.week import OrderLine, price_of_order
from tinbook.pages.spelling import formats
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.of_mixtures import mixture_costs
from tinbook.plans.money.of_orders import order_money
from tinbook.plans.money.offered import Priced, cake_priced
from tinbook.plans.money.till import Till, till_of


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedLine:
    """A cake or an order with its price."""

    name: str
    address: str
    more: str
    cost: str
    price: str
    each: str
    bar: tuple[BarPart, ...]
    said: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceList:
    """Some cakes or orders, under a heading, with what their first and fourth columns are of."""

    title: str
    what: str
    last: str
    rows: tuple[PricedLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MixtureLine:
    """A recipe: what a hundred grams and a tin of it cost, and what of it has no price."""

    name: str
    address: str
    hundred: str
    tin: str
    in_tin: str
    whole: str
    unknown: str


def price_address(slug: str) -> str:
    """Where a cake's price is."""
    return f"orders/price/{slug}"


@dataclass(frozen=True)
class PricesView:
    """Cakes, orders and recipes with their prices. `lines`: the orders, those to come first."""

    lines: tuple[OrderLine, ...]
    desk: Desk

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @cached_property
    def till(self) -> Till:
        """What it is worked out from."""
        return till_of(self.desk.book, self.desk.facts, self.desk.bakes)

    @property
    def words(self) -> SumWords:
        """How sums are written."""
        return SumWords(self.till.money)

    @property
    def lists(self) -> tuple[PriceList, ...]:
        """Orders, then cakes; those of which there are any."""
        every = (
            PriceList(title="Orders", what="Order", last="Left", rows=self.orders),
            PriceList(title="Cakes, in their own size", what="Cake", last="A portion", rows=self.cakes),
        )
        return tuple(each for each in every if each.rows)

    @cached_property
    def cakes(self) -> tuple[PricedLine, ...]:
        """Every cake in its own size."""
        return tuple(self._cakes())

    def _cakes(self) -> Iterator[PricedLine]:
        for slug, design in self.desk.book.cakes.items():
            try:
                found = cake_priced(slug, None, self.till)
            except AskError:
                continue
            yield self._line(design.name, price_address(slug), found, f"serves {found.serves}")

    @cached_property
    def orders(self) -> tuple[PricedLine, ...]:
        """Every order, at what was agreed, quoted, or is worked out."""
        return tuple(self._orders())

    def _orders(self) -> Iterator[PricedLine]:
        for line in self.lines:
            money = order_money(line.slug, self.till.orders[line.slug], self.till)
            if money is None:
                continue
            said = "agreed" if money.agreed is not None else "quoted" if money.quoted is not None else "worked out"
            found = self._line(line.handle, price_of_order(line.slug), money.actual, f"{line.state}; price {said}")
            price = self.words.plain(money.price)
            sure = "" if money.actual.sure or said != "worked out" else " at least"
            yield PricedLine(
                name=found.name, address=found.address, more=found.more, cost=found.cost, price=price + sure,
                each=self.words.plain(money.left), bar=found.bar, said=found.said,
            )  # fmt: skip

    def _line(self, name: str, address: str, found: Priced, more: str) -> PricedLine:
        parts, each = bar(found, self.till), found.each(found.serves)
        return PricedLine(
            name=name, address=address, more=more, cost=self.words.plain(found.cost.shown),
            price=self.words.plain(found.price.price) + ("" if found.sure else " at least"),
            each="" if each is None else self.words.plain(each), bar=parts, said=bar_said(parts),
        )  # fmt: skip

    @cached_property
    def mixtures(self) -> tuple[MixtureLine, ...]:
        """Every recipe."""
        words = self.words
        return tuple(
            MixtureLine(
                name=each.name,
                address=f"mixtures/{each.slug}",
                hundred=words.plain(each.hundred_shown),
                tin="" if each.tin_shown is None else words.plain(each.tin_shown),
                in_tin="" if each.in_tin is None else formats.tin_words(each.in_tin.name),
                whole=words.plain(each.cost.shown),
                unknown=formats.sentence(each.cost.unknown) if each.cost.unknown else "",
            )
            for each in mixture_costs(self.till)
        )
