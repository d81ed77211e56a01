"""Everything with its price, in lists."""

from __future__ import annotations

from tests.pages.money.conftest import GONE, NOW, WEDDING, number

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.prices_view import PricesView, price_address
from tinbook.pages.orders.week import order_lines, price_of_order
from tinbook.plans.money.of_mixtures import mixture_cost


def test_every_order_cake_and_mixture(money_desk: Desk) -> None:
    view = PricesView(order_lines(money_desk, NOW), money_desk)
    orders, cakes = view.lists
    assert {row.address for row in orders.rows} == {price_of_order(slug) for slug in money_desk.book.others["order"]}
    assert {row.address for row in cakes.rows} == {price_address(slug) for slug in money_desk.book.cakes}
    by = {row.address: row for row in orders.rows}
    assert by[price_of_order(WEDDING)].price == "475.00" and by[price_of_order(WEDDING)].more == "agreed; price agreed"
    assert number(by[price_of_order(GONE)].each) > 0
    assert any(row.price.endswith("at least") for row in cakes.rows)
    page = Page(address="orders/prices", title="Prices", template="prices", view=view, section=("Orders",))
    html = page.fill(page.markdown, lambda address, anchor="": address)
    assert "<!--tinbook" not in html and html.count('class="tb-bar') == len(orders.rows) + len(cakes.rows)


def test_mixtures_by_100_g_and_by_the_tin(money_desk: Desk) -> None:
    view = PricesView((), money_desk)
    assert len(view.lists) == 1
    rows = {row.address: row for row in view.mixtures}
    assert set(rows) == {f"mixtures/{slug}" for slug in money_desk.book.mixtures}
    sponge, cost = rows["mixtures/creamed-butter-sponge"], mixture_cost("creamed-butter-sponge", view.till)
    assert number(sponge.tin) == float(cost.tin_shown or 0) and sponge.in_tin == "round 15\xa0cm"
    assert rows["mixtures/marzipan"].tin == ""
