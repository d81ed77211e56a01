"""What a till adds, and the prices of a day."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from tests.plans.money.conftest import TillOf, entry

from tinbook.plans.money.till import Till


def test_mark_up_or_margin_each_with_the_other(till_with: TillOf) -> None:
    by_cost, by_price = till_with((), mark_up="25 %"), till_with((), margin="20 %")
    assert (by_cost.mark_up, by_cost.margin) == (by_price.mark_up, by_price.margin) == (Decimal("0.25"), Decimal("0.2"))
    assert (till_with(()).mark_up, till_with(()).margin) == (0, 0)


def test_prices_of_a_day(till_with: TillOf) -> None:
    till = till_with((entry("butter", "250 g", "2.00", "2026-03-01"), entry("butter", "250 g", "2.20")), currency="GBP")
    then, before, now = till.on(date(2026, 5, 1)), till.before(), till.paid.newest("butter")
    assert now is not None and now.price == Decimal("2.20")
    for other in (then, before):
        price = other.paid.newest("butter")
        assert price is not None and price.price == Decimal("2.00") and other.money is till.money


def test_the_demos(till: Till) -> None:
    assert till.coin == Decimal("0.01") and till.orders and till.paid.of and till.kitchen
