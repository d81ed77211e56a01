"""The quote: an allow-list. What it has room for is named here, so that a new field is looked at twice."""

from __future__ import annotations

from dataclasses import fields
from datetime import date

import pytest
from tests.pages.money.conftest import CLASS, NOW, WEDDING, with_others
from tests.plans.money.conftest import money

from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk
from tinbook.pages.money.quote import Quote, quote, quote_text
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.of_orders import order_money
from tinbook.plans.money.till import till_of

TODAY = date(2026, 12, 5)


def made(desk: Desk, slug: str) -> Quote:
    till = till_of(desk.book, desk.facts, desk.bakes)
    orders: dict[str, Order] = desk.book.others["order"]
    found = order_money(slug, orders[slug], till)
    assert found is not None
    return quote(found, till, desk, TODAY)


def test_what_may_leave_the_kitchen() -> None:
    assert [field.name for field in fields(Quote)] == [
        "house", "made_on", "what", "when", "price", "with_vat", "facts", "allergens", "not_food", "cross_contact",
    ]  # fmt: skip


def test_a_wedding(money_desk: Desk) -> None:
    found = made(money_desk, WEDDING)
    assert found.when == "12 Dec 2026 at 15:00, brought to you" and found.price == "£475.00" and not found.with_vat
    assert found.facts == (("Deposit received", "£120.00"), ("Still to pay", "£355.00"))
    assert "centre dowel" in found.not_food[0] and found.allergens[0] == "Contains wheat, egg and milk."
    assert any(said.startswith("Not known yet") for said in found.allergens)
    text = list(quote_text(found))
    assert text[0].startswith("Quote from") and "Allergens" in text and "Not food" in text


def test_vat_is_named(money_desk: Desk) -> None:
    assert NOW.date() == TODAY
    taxed = with_others(money_desk, money=money(currency="GBP", vat="20 %"))
    found = made(taxed, WEDDING)
    assert found.with_vat == "with VAT at 20\xa0%" and "Price: £475.00, with VAT at 20\xa0%" in list(quote_text(found))


def test_no_price_is_made_up(money_desk: Desk) -> None:
    with pytest.raises(AskError, match="no sure price") as told:
        made(money_desk, CLASS)
    assert "quoted:" in told.value.hint
    orders = money_desk.book.others["order"]
    named = orders[CLASS].model_copy(update={"quoted": orders[WEDDING].quoted})
    found = made(with_others(money_desk, order={**orders, CLASS: named}), CLASS)
    assert found.price == "£475.00" and found.what[0].startswith("A class for 4\xa0people") and found.allergens == ()
