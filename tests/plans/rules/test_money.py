"""What is wrong with money, prices and the sums of an order."""

from __future__ import annotations

from datetime import date

import pytest
from tests.every import every
from tests.plans.money.conftest import entry, money

from tinbook.loading import Loaded
from tinbook.models import Flaw, read_model
from tinbook.models.orders import Order
from tinbook.plans.rules.money import money_flaws, order_money_flaws, price_flaws
from tinbook.plans.shopping.things import Things


@pytest.fixture(scope="module")
def things(demo: Loaded) -> Things:
    return Things(demo.book, demo.facts)


def only(flaws: list[Flaw], path: str, hint: str) -> None:
    (flaw,) = flaws
    assert flaw.path[0] == path and hint in flaw.hint and flaw.message


def test_sound_money_has_no_flaws() -> None:
    assert not list(money_flaws(money()))
    assert not list(money_flaws(money(currency="GBP", mark_up="25 %", kept_up={"an hour": "3.20"}, a_km="0.4525")))


@every(
    ("keys", "path", "hint"),
    [
        ({"mark_up": "25 %", "margin": "20 %"}, "margin", "keep the one"),
        ({"kept_up": {"a month": "120"}}, "kept up", "cakes a month: 10"),
        ({"kept_up": {"an hour": "3", "a month": "120", "cakes a month": "9"}}, "kept up", "keep either"),
        ({"round_up_to": "0"}, "round up to", "something like 5"),
        ({"currency": "GBP", "an_hour": "€16"}, "an hour", "in GBP, without a sign"),
        ({"an_hour": "£16"}, "an hour", "currency: GBP"),
        ({"currency": "JPY", "least": "45.5"}, "least", "write something like 46"),
        ({"currency": "GBP", "packaging": "1.205"}, "packaging", "1.2"),
    ],
)
def test_a_slip_in_the_money(keys: dict[str, object], path: str, hint: str) -> None:
    only(list(money_flaws(money(**keys))), path, hint)


@every(
    ("of", "pack", "price", "path", "hint"),
    [
        ("buttr", "250 g", "2.10", "of", 'did you mean "butter"?'),
        ("sea glass, green", "1", "2.10", "of", "card"),
        ("butter", "3", "2.10", "pack", "500 g"),
        ("ribbon, 15 mm", "250 g", "2.10", "pack", "3 m"),
        ("butter", "0 g", "2.10", "pack", "on the pack"),
        ("butter", "250 g", "2.10 EUR", "price", "GBP"),
        ("butter", "250 g", "2.105", "price", "2.1"),
    ],
)
def test_a_slip_in_a_price(things: Things, of: str, pack: str, price: str, path: str, hint: str) -> None:
    only(list(price_flaws(entry(of, pack, price), things, money(currency="GBP"))), path, hint)


def test_a_price_of_tomorrow(things: Things) -> None:
    told = list(price_flaws(entry("butter", "250 g", "2.10"), things, money(), today=date(2026, 10, 31)))
    only(told, "day", "the day on which")
    assert not list(price_flaws(entry("butter", "250 g", "2.10"), things, money(), today=date(2026, 11, 1)))


@every(
    ("sums", "path", "hint"),
    [
        ({"quoted": "410 EUR"}, "quoted", "GBP"), ({"agreed": "400.001"}, "agreed", "400"),
        ({"agreed": "400", "deposit": "401"}, "deposit", "which of the two"), ({"quoted": "400", "deposit": "500"}, "deposit", "check"),
    ],
)  # fmt: skip
def test_a_slip_in_an_order(sums: dict[str, str], path: str, hint: str) -> None:
    data = {"handle": "quay", "hand over": "2026-12-05 11:00", "cake": "lighthouse-cake", **sums}
    order, flaws = read_model(Order, data, "an order")
    assert order is not None and not flaws
    only(list(order_money_flaws(order, money(currency="GBP"))), path, hint)
