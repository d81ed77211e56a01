"""What orders of the demo take, worked out once; and books with a stock of their own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Worked, ordered, worked

from tinbook.loading import Loaded
from tinbook.models import Book, read_model
from tinbook.models.stock import StockEntry
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.shopping.needs import OrderNeeds, needs_of
from tinbook.plans.shopping.things import Things

__all__ = ["ordered", "worked"]
Entry = Callable[..., StockEntry]
CLASS = {
    "class": {"techniques": ["rope-edge", "cover-a-board"], "people": "4", "lasts": "3 h"},
    "hand over": "2026-12-08 14:00",
}
TUBS = {"mixtures": [{"mixture": "modelling-paste", "count": "2"}], "hand over": "2026-12-09 09:00"}
SPONGE = {"mixtures": [{"mixture": "madeira-cake", "count": "2"}], "hand over": "2026-12-18 09:00"}
ORDERS = {"light": LIGHT, "wedding": WEDDING, "cups": CUPS, "class": CLASS, "tubs": TUBS, "sponge": SPONGE}


@pytest.fixture(scope="session")
def things(demo: Loaded) -> Things:
    """What the demo knows."""
    return Things(demo.book, demo.facts)


@pytest.fixture(scope="session")
def orders_worked(worked: Worked) -> dict[str, OrderWorked]:
    """A cake for guests, a wedding cake, cups, a class, tubs and plain cakes."""
    return {slug: worked(data, slug, handle=slug) for slug, data in ORDERS.items()}


@pytest.fixture(scope="session")
def pool(orders_worked: dict[str, OrderWorked], things: Things) -> dict[str, OrderNeeds]:
    """What each takes."""
    return {slug: needs_of(each, things) for slug, each in orders_worked.items()}


@pytest.fixture(scope="session")
def entry(demo: Loaded) -> Entry:
    """`entry("butter", counted="500 g")`: a line of the stock, which must be read."""

    def read(of: str, day: str = "2026-12-01", **more: Any) -> StockEntry:
        data = {"day": day, "of": of, **{key.replace("_", " ").strip(): said for key, said in more.items()}}
        found, flaws = read_model(StockEntry, data, "this entry", demo.book.house.spoons)
        assert found is not None and not flaws, flaws
        return found

    return read


def on(need: OrderNeeds, day: date) -> OrderNeeds:
    """The same order on another day."""
    return replace(need, day=day)


def with_others(book: Book, **others: Any) -> Book:
    """A book with other files of the house."""
    return replace(book, others={**book.others, **others})
