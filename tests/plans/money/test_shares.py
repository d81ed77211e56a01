"""Where the money goes: every part of a price, once."""

from __future__ import annotations

from decimal import Decimal

from tests.plans.money.conftest import TillOf

from tinbook.plans.money.offered import priced
from tinbook.plans.money.shares import OF_ALL, VAT, shares_of
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked


def test_the_parts_are_the_price(orders_worked: dict[str, OrderWorked], till: Till, till_with: TillOf) -> None:
    taxed = till_with(currency="GBP", an_hour="16", vat="20 %", mark_up="25 %", round_up_to="5")
    for each in (till, taxed):
        for worked in orders_worked.values():
            found = priced(worked, each)
            parts = shares_of(found)
            assert sum(part.amount for part in parts) == found.price.price
            assert sum(part.percent for part in parts) == 100
            assert abs(sum(part.share for part in parts) - 1) < Decimal("1e-20")
            assert (VAT in {part.of for part in parts}) == (each is taxed)
            assert OF_ALL in {part.of for part in parts}


def test_nothing_has_no_parts(orders_worked: dict[str, OrderWorked], till_with: TillOf) -> None:
    assert shares_of(priced(orders_worked["tubs"], till_with(()))) == ()
