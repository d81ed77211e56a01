"""The kitchen's pages: which there are, and that they can be filled."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pages.orders.conftest import CLASS, CUPS, GONE

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.view import money_pages
from tinbook.pages.orders.view import DayView, OrdersView, WeekView, order_pages


@pytest.fixture(scope="module")
def made(kitchen_desk: Desk) -> dict[str, Page]:
    return {page.address: page for page in order_pages(kitchen_desk)}


def test_which_pages_there_are(made: dict[str, Page]) -> None:
    assert {
        "orders/index",
        "orders/week",
        "orders/shopping",
        *(f"orders/{slug}" for slug in (CLASS, CUPS, GONE)),
    } <= set(made)
    days = [address for address in made if address.startswith("orders/day/")]
    week = made["orders/week"].view
    assert isinstance(week, WeekView) and len(days) == len(week.items)
    assert not any(made[each].listed for each in (*days, f"orders/{GONE}"))


def test_without_orders_or_a_moment_there_are_none(kitchen_desk: Desk) -> None:
    none = replace(kitchen_desk.book, others={**kitchen_desk.book.others, "order": {}})
    assert list(order_pages(replace(kitchen_desk, book=none))) == []
    assert list(order_pages(replace(kitchen_desk, now=None))) == []


def test_with_nothing_left_to_do_there_are_no_days(kitchen_desk: Desk) -> None:
    gone = {GONE: kitchen_desk.book.others["order"][GONE]}
    book = replace(kitchen_desk.book, others={**kitchen_desk.book.others, "order": gone})
    pages = [page.address for page in order_pages(replace(kitchen_desk, book=book))]
    assert pages == ["orders/index", "orders/week", "orders/shopping", f"orders/{GONE}"]


def test_every_page_is_filled_and_leads_only_to_pages(made: dict[str, Page], kitchen_desk: Desk) -> None:
    asked: set[str] = set()

    def link(address: str, _: str = "") -> str:
        asked.add(address)
        return address

    for page in made.values():
        html = page.fill(page.markdown, link)
        assert "<!--tinbook" not in html and "&lt;" not in html.replace("&lt;small", ""), page.address
    own = {address for address in asked if address.startswith("orders/")}
    assert own <= set(made) | {page.address for page in money_pages(kitchen_desk)}


def test_a_days_sheet_adds_up(made: dict[str, Page]) -> None:
    for address, page in made.items():
        if address.startswith("orders/day/"):
            view = page.view
            assert isinstance(view, DayView) and view.busy[0][0] == view.of.hands and view.leaves
    first = made["orders/index"].view
    assert isinstance(first, OrdersView) and first.next_link in made and first.past_count == 1
