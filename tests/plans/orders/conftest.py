"""Orders as a maker writes them, in the demo's kitchen."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import read_model
from tinbook.models.kitchen import WorkingKitchen
from tinbook.models.orders import Order
from tinbook.plans.orders.asked import OrderWorked, worked_order
from tinbook.plans.orders.week_work import WeekWork, week_work

Ordered = Callable[..., Order]
Worked = Callable[..., OrderWorked]
Weeks = Callable[..., WeekWork]

WEDDING = {"cake": "estuary-wedding-cake", "hand over": "2026-12-12 15:00", "delivered": "25 min"}
LIGHT = {"cake": "lighthouse-cake", "guests": "30", "hand over": "2026-12-11 11:00"}
CUPS = {"mixtures": [{"mixture": "cupcakes", "count": "48"}], "hand over": "2026-12-12 10:00"}


@pytest.fixture(scope="session")
def ordered(demo: Loaded) -> Ordered:
    """`ordered({"cake": ...})`: that order, which must be read."""

    def read(data: dict[str, Any], **more: Any) -> Order:
        whole = {"handle": "quay", "hand over": "2026-12-05 11:00", **data, **more}
        order, flaws = read_model(Order, whole, "an order", demo.book.house.spoons)
        assert order is not None, flaws
        return order

    return read


@pytest.fixture(scope="session")
def worked(demo: Loaded, ordered: Ordered) -> Worked:
    """`worked({"cake": ...})`: that order worked out."""

    def work(data: dict[str, Any], slug: str = "quay", **more: Any) -> OrderWorked:
        return worked_order(slug, ordered(data, **more), demo.book, demo.facts)

    return work


@pytest.fixture(scope="session")
def weeks(demo: Loaded, worked: Worked) -> Weeks:
    """`weeks(light=LIGHT, cups=CUPS)`: all there is to do for these orders."""

    def work(kitchen: WorkingKitchen | None = None, **orders: dict[str, Any]) -> WeekWork:
        found = [worked(data, slug, handle=slug) for slug, data in orders.items()]
        return week_work(found, demo.book, demo.facts, kitchen or WorkingKitchen())

    return work
