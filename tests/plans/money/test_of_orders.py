"""An order's money: quoted, agreed, paid, and what came of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from tests.plans.money.conftest import TillOf, entry
from tests.plans.orders.conftest import LIGHT, Ordered

from tinbook.models.orders import Order
from tinbook.plans.money.of_orders import dearer_in, deposit_for, last_time, order_money
from tinbook.plans.money.offered import priced
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked


def order(ordered: Ordered, **more: Any) -> Order:
    return ordered(LIGHT, **more)


def test_as_it_is_worked_out(ordered: Ordered, till: Till) -> None:
    found = order_money("light", order(ordered), till)
    assert found is not None and found.taken is None and found.off is None
    assert found.price == found.due == found.now.price.price
    assert found.left == found.now.price.net - found.now.cost.shown


def test_as_it_was_said(ordered: Ordered, till: Till) -> None:
    found = order_money("light", order(ordered, quoted="210", agreed="205", deposit="50"), till)
    assert found is not None and (found.price, found.due) == (205, 155)
    assert found.left == 205 - found.now.cost.shown
    quoted = order_money("light", order(ordered, quoted="210"), till)
    assert quoted is not None and quoted.price == 210


def test_vat_is_not_ours(ordered: Ordered, till_with: TillOf) -> None:
    till = till_with(currency="GBP", vat="20 %")
    found = order_money("light", order(ordered, agreed="240"), till)
    assert found is not None and found.left == 200 - found.now.cost.shown


def test_as_it_was_once_it_is_done(ordered: Ordered, till_with: TillOf) -> None:
    """At the prices of its day: what has become dearer since does not change what it cost."""
    then = entry("butter", "250 g", "2.00", "2026-11-01")
    before = till_with((then,), currency="GBP", an_hour="10")
    after = till_with((then, entry("butter", "250 g", "4.00", "2026-12-20")), currency="GBP", an_hour="10")
    done = order(ordered, state="gone", agreed="150")
    first, later = order_money("light", done, before), order_money("light", done, after)
    assert first is not None and later is not None and first.taken is not None and later.taken is not None
    assert later.taken.cost.shown == first.taken.cost.shown and later.left == first.left
    assert later.now.cost.shown > first.now.cost.shown and (later.off or 0) < (first.off or 0) == 0


def test_of_what_is_gone_from_the_book_nothing_is_said(ordered: Ordered, till: Till) -> None:
    lost = order(ordered, state="gone").model_copy(update={"cake": "no-such-cake"})
    assert order_money("light", lost, till) is None
    never = order(ordered, guests="900")
    assert order_money("light", never, till) is None


def test_a_deposit_is_a_share_of_the_price(till_with: TillOf) -> None:
    assert deposit_for(Decimal(333), till_with((), currency="GBP", deposit="25 %")) == Decimal("83.25")
    assert deposit_for(Decimal(333), till_with((), currency="JPY", deposit="25 %")) == 83
    assert deposit_for(Decimal(333), till_with((), currency="GBP")) is None


def test_what_is_dearer_in_it(orders_worked: dict[str, OrderWorked], till_with: TillOf) -> None:
    log = (
        entry("butter", "250 g", "2.00", "2026-03-01"),
        entry("butter", "250 g", "2.50"),
        entry("salt", "750 g", "0.65"),
    )
    till = till_with(log, currency="GBP")
    now = priced(orders_worked["light"], till)
    (found,) = dearer_in(now.cost, till)
    grams = next(row.amount for row in now.cost.rows if row.of == "butter")
    assert found.of == "butter" and abs(found.more - Decimal(grams) * Decimal("0.5") / 250) <= Decimal("0.01")
    assert now.cost.exact - priced(orders_worked["light"], till.before()).cost.exact > 0


def test_against_the_last_time(orders_worked: dict[str, OrderWorked], till: Till, ordered: Ordered) -> None:
    """At the prices of that day the cake now looked at would have cost so much."""
    now = priced(orders_worked["light"], till)
    found = last_time(now, till)
    assert found is not None and found.day == date(2026, 10, 3) and found.handle == "point light"
    then = priced(orders_worked["light"], till.on(found.day))
    assert found.then == then.cost.shown and found.more == now.cost.shown - then.cost.shown > 0
    # of a day with fewer prices nothing can be said, nor of a cake that was never made
    few = replace(till, paid=till.paid.up_to(date(2026, 9, 1)))
    assert last_time(priced(orders_worked["light"], few), few) is not None
    bare = replace(
        till, paid=replace(till.paid, of={n: k for n, k in till.paid.of.items() if k[-1].day > date(2026, 10, 3)})
    )
    assert last_time(now, bare) is None and last_time(priced(orders_worked["wedding"], till), till) is None
