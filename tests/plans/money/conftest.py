"""Tills with money and prices of one's own, and what orders of the demo take, worked out once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Worked, ordered, weeks, worked
from tests.plans.shopping.conftest import SPONGE, TUBS

from tinbook.loading import Loaded
from tinbook.models import read_model
from tinbook.models.money import HouseMoney, PricePaid
from tinbook.plans.money.paid import paid_prices
from tinbook.plans.money.till import Till, till_of
from tinbook.plans.orders.asked import OrderWorked

__all__ = ["ordered", "weeks", "worked"]
Prices = Callable[..., tuple[PricePaid, ...]]
TillOf = Callable[..., Till]
ORDERS = {"light": LIGHT, "wedding": WEDDING, "cups": CUPS, "tubs": TUBS, "sponge": SPONGE}


def money(**keys: Any) -> HouseMoney:
    """Money with these keys, which must be read: `money(currency="GBP", an_hour="16")`."""
    renamed = {"mark_up": "mark-up", "vat": "VAT"}
    data = {renamed.get(key, key.replace("_", " ")): said for key, said in keys.items()}
    found, flaws = read_model(HouseMoney, data, "the money")
    assert found is not None and not flaws, flaws
    return found


def entry(of: str, pack: str, price: str, day: str = "2026-11-01") -> PricePaid:
    """A line of the log, which must be read."""
    found, flaws = read_model(PricePaid, {"day": day, "of": of, "pack": pack, "price": price}, "this price")
    assert found is not None and not flaws, flaws
    return found


@pytest.fixture(scope="session")
def till(demo: Loaded) -> Till:
    """The demo's own."""
    return till_of(demo.book, demo.facts)


@pytest.fixture(scope="session")
def till_with(till: Till) -> TillOf:
    """`till_with(entries, an_hour="16")`: the demo's book with other prices and other money."""

    def make(entries: tuple[PricePaid, ...] | None = None, **keys: Any) -> Till:
        paid = till.paid if entries is None else paid_prices(entries, till.things)
        return replace(till, money=money(**keys), paid=paid)

    return make


@pytest.fixture(scope="session")
def orders_worked(worked: Worked) -> dict[str, OrderWorked]:
    """A cake for guests, a wedding cake, cups, tubs and plain cakes."""
    return {slug: worked(data, slug, handle=slug) for slug, data in ORDERS.items()}
