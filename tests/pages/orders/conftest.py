"""A kitchen with a class and cups, planned once."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.orders.week import KitchenWeek, kitchen_week

NOW = datetime(2026, 12, 7, 8)
CLASS, CUPS = "2026-12-08-rope-class", "2026-12-12-regatta-club-cups"
GONE = "2026-10-03-point-light"


@pytest.fixture(scope="session")
def kitchen_desk(demo: Loaded) -> Desk:
    """The demo's kitchen with what is quickly planned."""
    orders = {slug: order for slug, order in demo.book.others["order"].items() if slug in (CLASS, CUPS, GONE)}
    book = replace(demo.book, others={**demo.book.others, "order": orders})
    return Desk(book, demo.facts, {}, NOW)


@pytest.fixture(scope="session")
def planned_week(kitchen_desk: Desk) -> KitchenWeek:
    """Its week."""
    return kitchen_week(kitchen_desk, NOW)
