"""The kitchen's pages about money: what everything costs, what was paid, and the price of each cake and each order.

They are in the kitchen's own book alone: a public book has no orders and no prices.
"""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.order_price import OrderPriceView
from tinbook.pages.money.paid_view import PaidView
from tinbook.pages.money.price_view import CakePriceView
from tinbook.pages.money.prices_view import PricesView, price_address
from tinbook.pages.orders.order_view import PAID, PRICES
from tinbook.pages.orders.view import SECTION
from tinbook.pages.orders.week import order_lines, price_of_order


def money_pages(desk: Desk) -> Iterator[Page]:
    """Every page about money, where the kitchen's own pages are."""
    orders = desk.book.others.get("order")
    if desk.now is None or not orders:
        return
    lines = order_lines(desk, desk.now)
    yield Page(address=PRICES, title="Prices", template="prices", view=PricesView(lines, desk), section=SECTION)
    yield Page(address=PAID, title="Paid", template="paid", view=PaidView(desk.now.date(), desk), section=SECTION)
    for slug in desk.book.cakes:
        view = CakePriceView(slug, desk)
        yield Page(
            address=price_address(slug), title=f"Price: {view.name}", template="price", view=view, section=SECTION,
            listed=False,
        )  # fmt: skip
    for slug, order in orders.items():
        yield Page(
            address=price_of_order(slug), title=f"Price: {order.handle}", template="price",
            view=OrderPriceView(slug, desk), section=SECTION, listed=False,
        )  # fmt: skip
