"""The shopping page as it is rendered."""

from __future__ import annotations

from dataclasses import replace
from html.parser import HTMLParser

import pytest
from tests.pages.orders.conftest import NOW

from tinbook.loading import Loaded
from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.orders.shopping import ShoppingView, shopping_view
from tinbook.pages.orders.week import KitchenWeek, kitchen_week


class Boxes(HTMLParser):
    """The boxes to tick, by their data."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[dict[str, str | None]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "input":
            self.found.append(dict(attrs))


@pytest.fixture(scope="module")
def two(demo: Loaded) -> tuple[KitchenWeek, Desk]:
    """Cups and a class, both agreed."""
    orders = {
        slug: agreed(order)
        for slug, order in demo.book.others["order"].items()
        if slug in ("2026-12-08-rope-class", "2026-12-12-regatta-club-cups")
    }
    desk = Desk(replace(demo.book, others={**demo.book.others, "order": orders}), demo.facts, {}, NOW)
    return kitchen_week(desk, NOW), desk


def agreed(order: Order) -> Order:
    return order.model_copy(update={"state": "agreed"})


def rendered(view: ShoppingView) -> str:
    page = Page(address="orders/shopping", title="Shopping", template="shopping", view=view, section=("Orders",))
    return page.fill(page.markdown, lambda address, anchor="": address)


def test_every_line_has_a_box_that_knows_what_it_is(two: tuple[KitchenWeek, Desk]) -> None:
    view = shopping_view(*two)
    html = rendered(view)
    boxes = Boxes()
    boxes.feed(html)
    rows = [row for place in view.places for row in place.rows]
    assert [box["data-line"] for box in boxes.found] == [row.line for row in rows]
    assert [box["data-bought"] for box in boxes.found] == [row.bought_said for row in rows]
    assert len({row.line for row in rows}) == len(rows) > 5
    assert "<!--tinbook" not in html and all(place.name.replace("'", "&#39;") in html for place in view.places)
    assert view.to_find in html and [line.handle for line in view.orders] == ["rope class", "regatta club cups"]


def test_with_nothing_agreed_it_says_so(
    kitchen_desk: Desk, planned_week: KitchenWeek, two: tuple[KitchenWeek, Desk]
) -> None:
    week, desk = two
    none = replace(desk, book=replace(desk.book, others={**desk.book.others, "order": {}}))
    html = rendered(shopping_view(replace(week, orders=()), none))
    assert "There is nothing to buy" in html and "<input" not in html
    # what is only asked for is said, and not listed
    half = rendered(shopping_view(planned_week, kitchen_desk))
    assert "Only asked for so far, so not on this list: regatta club cups." in half
