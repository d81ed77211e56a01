"""An order and its money: what was quoted, agreed and paid beforehand, what it costs, and what is left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from tinbook.engine.money import NOTHING, coins, times, vat_in
from tinbook.models.currency import MoneySaid
from tinbook.models.orders import Order
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.cost import CostSum, cost_of
from tinbook.plans.money.hours import hours_taken
from tinbook.plans.money.offered import Priced, priced
from tinbook.plans.money.paid import PaidPrice, dearer
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked, worked_order


@dataclass(frozen=True, kw_only=True)
class OrderMoney:
    """The money of an order. `now`: what it costs and would be sold for as it is planned; `taken`: what it really cost,
    at the prices and in the hours it took, once it is done. What nobody has said is None."""

    order: Order
    now: Priced
    taken: Priced | None
    quoted: Decimal | None
    agreed: Decimal | None
    deposit: Decimal | None
    coin: Decimal
    vat: Decimal

    @property
    def price(self) -> Decimal:
        """What is taken for it: as agreed, as quoted, or as it is worked out."""
        said = self.agreed if self.agreed is not None else self.quoted
        return self.now.price.price if said is None else said

    @property
    def due(self) -> Decimal:
        """What of that has not been paid."""
        return self.price - (self.deposit or NOTHING)

    @property
    def left(self) -> Decimal:
        """What is left of it, without VAT, once what it cost is paid; below nothing if it did not cover that."""
        return self.price - vat_in(self.price, self.vat, self.coin) - self.actual.cost.shown

    @property
    def actual(self) -> Priced:
        """As it was, once it is done; before that, as it is planned."""
        return self.taken or self.now

    @property
    def off(self) -> Decimal | None:
        """By how much it cost more than was planned, once it is done."""
        return None if self.taken is None else self.taken.cost.shown - self.now.cost.shown


def order_money(slug: str, order: Order, till: Till) -> OrderMoney | None:
    """The money of an order; None if it cannot be made, or if the book has changed since it was done."""
    worked = order_worked(slug, order, till)
    if worked is None:
        return None
    taken = None
    if not order.open:
        then, hours = till.on(order.hand_over.date()), hours_taken(worked, till)
        taken = priced(worked, then, hours)
    return OrderMoney(
        order=order, now=priced(worked, till), taken=taken, quoted=_said(order.quoted), agreed=_said(order.agreed),
        deposit=_said(order.deposit), coin=till.coin, vat=till.money.vat or NOTHING,
    )  # fmt: skip


def order_worked(slug: str, order: Order, till: Till) -> OrderWorked | None:
    """An order worked out; None if it cannot be."""
    try:
        return worked_order(slug, order, till.book, till.facts, till.bakes)
    except AskError:
        return None
    except (LookupError, ValueError):
        if order.open:
            raise
        # an order that is done is never checked again, so anything it names may be gone
        return None


def _said(said: MoneySaid | None) -> Decimal | None:
    return None if said is None else said.amount


def deposit_for(price: Decimal, till: Till) -> Decimal | None:
    """The deposit that is asked for a price, in coins; None if the house asks for none."""
    return None if till.money.deposit is None else coins(times(price, till.money.deposit), till.coin)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dearer:
    """Something in an order that has become dearer: its price before and now, and what that makes on the order."""

    of: str
    before: PaidPrice
    now: PaidPrice
    more: Decimal


def dearer_in(cost: CostSum, till: Till) -> tuple[Dearer, ...]:
    """What of a cost has become dearer since the price before, what matters most first."""
    found = list(_dearer(cost, till))
    return tuple(sorted(found, key=lambda each: (-each.more, each.of)))


def _dearer(cost: CostSum, till: Till) -> Iterator[Dearer]:
    before = {row.of: row for row in cost.rows if row.thing}
    for name, row in before.items():
        known = dearer(name, till.paid)
        if known is None or row.exact is None:
            continue
        old, new = known
        used = row.exact
        # the same amount at the price before
        was = old.for_(new.amount) * used / new.price if new.price else NOTHING
        yield Dearer(of=name, before=old, now=new, more=coins(used - was, till.coin))


@dataclass(frozen=True, slots=True, kw_only=True)
class LastTime:
    """The last order for the same cake that is done: the day, and what the cake now being looked at would have cost at
    that day's prices, with what it costs by those of today more (or less)."""

    handle: str
    day: date
    then: Decimal
    more: Decimal


def last_time(now: Priced, till: Till) -> LastTime | None:
    """How a cake compares with the last time it was made; None if it never was, or if a price of that day is not
    known."""
    order = now.worked.order
    done = [each for each in till.orders.values() if not each.open and each.cake and each.cake == order.cake]
    done = [each for each in done if each is not order]
    if not done:
        return None
    last = max(done, key=lambda each: each.hand_over)
    day = last.hand_over.date()
    then = cost_of(now.worked, now.hours, till.on(day))
    if set(then.unknown) - set(now.cost.unknown):
        return None
    return LastTime(handle=last.handle, day=day, then=then.shown, more=now.cost.shown - then.shown)
