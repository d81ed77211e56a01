"""What everything costs, in lists: cakes, recipes, and what was paid, with how it went."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.money.lines import BarPart, bar, bar_said
from tinbook.pages.orders.order_view import LEAVES
from tinbook.pages.orders.shop_lines import size_said
from tinbook.pages.orders.week import OrderLine, price_of_order
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sums import SumWords, by_measure
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.of_mixtures import mixture_costs
from tinbook.plans.money.of_orders import order_money
from tinbook.plans.money.offered import Priced, cake_priced
from tinbook.plans.money.paid import PaidPrice, dearer, risen_percent
from tinbook.plans.money.till import Till, till_of

WIDE, HIGH = 120.0, 24.0
"""The line of a price over time, in px."""


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
class MixtureLine:
    """A recipe: what a hundred grams and a tin of it cost, and what of it has no price."""

    name: str
    address: str
    hundred: str
    tin: str
    in_tin: str
    whole: str
    unknown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PaidLine:
    """What was paid for a thing: by the kilo or the piece, for which pack and when, and how it went. `points` is the
    line of its prices, empty for a single one."""

    name: str
    by: str
    paid: str
    day: str
    old: bool
    was: str
    points: str
    said: str


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
            found = self._line(line.handle, price_of_order(line.slug), money.actual, f"{line.state}; {said}")
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


@dataclass(frozen=True)
class PaidView:
    """What was paid."""

    today: date
    desk: Desk

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @cached_property
    def till(self) -> Till:
        """What it is worked out from."""
        return till_of(self.desk.book, self.desk.facts, self.desk.bakes)

    @cached_property
    def lines(self) -> tuple[PaidLine, ...]:
        """Every thing with a price, by name."""
        return tuple(self._lines())

    def _lines(self) -> Iterator[PaidLine]:
        words = SumWords(self.till.money)
        first = min((known[0].day for known in self.till.paid.of.values()), default=self.today)
        for name, known in sorted(self.till.paid.of.items(), key=lambda each: each[0].lower()):
            thing = self.till.things.called(name)
            if thing is None:
                continue
            newest = known[-1]
            changed = dearer(name, self.till.paid)
            risen = risen_percent(*changed) if changed else None
            was = f"was {by_measure(changed[0], thing, words)}" if changed else ""
            same = [each for each in known if each.amount == newest.amount]
            yield PaidLine(
                name=size_said(formats.title(name)),
                by=by_measure(newest, thing, words),
                paid=f"{words.plain(newest.price)} for {size_said(newest.written)}",
                day=words.day(newest.day),
                old=newest.is_old(self.today),
                was=f"{was}, {risen}{formats.NBSP}% dearer" if risen else was,
                points=_points(same, first, self.today),
                said="; ".join(f"{words.day(each.day)} {words.plain(each.price)}" for each in same),
            )

    @property
    def dearer(self) -> tuple[PaidLine, ...]:
        """What has become dearer."""
        return tuple(line for line in self.lines if line.was)


def _points(known: Sequence[PaidPrice], first: date, last: date) -> str:
    """The prices of one pack as a line that holds each until the next; nothing for a single price."""
    if len(known) < 2:
        return ""
    days = max((last - first).days, 1)
    top = max(float(each.price) for each in known) or 1.0
    low = min(float(each.price) for each in known)
    span = (top - low) or 1.0

    def at(day: date) -> float:
        return min(1.0, max(0.0, (day - first).days / days)) * WIDE

    def high(each: PaidPrice) -> float:
        return HIGH - 3.0 - (float(each.price) - low) / span * (HIGH - 6.0)

    told = [f"{at(known[0].day):.1f},{high(known[0]):.1f}"]
    for before, each in zip(known, known[1:], strict=False):
        told += [f"{at(each.day):.1f},{high(before):.1f}", f"{at(each.day):.1f},{high(each):.1f}"]
    return " ".join((*told, f"{WIDE:.1f},{high(known[-1]):.1f}"))
