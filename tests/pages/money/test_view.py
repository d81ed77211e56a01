"""Which pages about money there are, and where: in the kitchen's book alone."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.money.conftest import with_others

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.money.prices_view import price_address
from tinbook.pages.money.view import money_pages
from tinbook.pages.orders.week import price_of_order
from tinbook.site import build_site


def test_which_pages_there_are(money_desk: Desk) -> None:
    made = {page.address: page for page in money_pages(money_desk)}
    orders = {price_of_order(slug) for slug in money_desk.book.others["order"]}
    cakes = {price_address(slug) for slug in money_desk.book.cakes}
    assert set(made) == {"orders/prices", "orders/paid", *orders, *cakes}
    assert {address for address, page in made.items() if page.listed} == {"orders/prices", "orders/paid"}


def test_every_page_is_filled_and_kept_out_of_search(money_desk: Desk) -> None:
    for page in money_pages(money_desk):
        assert "search: {exclude: true}" in page.markdown, page.address
        html = page.fill(page.markdown, lambda address, anchor="": address)
        assert "<!--tinbook" not in html and "None" not in html and "Decimal" not in html, page.address


def test_without_orders_or_a_moment_there_are_none(money_desk: Desk, demo: Loaded) -> None:
    assert list(money_pages(with_others(money_desk, order={}))) == []
    assert list(money_pages(replace(money_desk, now=None))) == []
    site = build_site(demo.book, demo.facts, demo.broken)
    assert not [address for address in site.pages if "price" in address or address == "orders/paid"]
