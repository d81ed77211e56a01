"""The shopping page: what to buy for the orders that are agreed, to be ticked in the shop."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.orders.order_view import LEAVES
from tinbook.pages.orders.shop_lines import ShopPlace, enough_said, over_said, shop_places, to_find, told_besides
from tinbook.pages.orders.week import KitchenWeek, OrderLine
from tinbook.pages.spelling.orders import day
from tinbook.plans.shopping.asked import shopping


@dataclass(frozen=True, kw_only=True)
class ShoppingView:
    """The list. `orders`: those it is for; `besides`: what else is to be known; `made`: the day it is of."""

    orders: tuple[OrderLine, ...]
    places: tuple[ShopPlace, ...]
    enough: tuple[str, ...]
    over: tuple[str, ...]
    besides: tuple[str, ...]
    made: str

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @property
    def to_find(self) -> str:
        """How much there is to find."""
        return to_find(self.places)


def shopping_view(week: KitchenWeek, desk: Desk) -> ShoppingView:
    """The list for a book's orders, hatched as in its week."""
    today = week.now.date()
    found = shopping(desk.book, desk.facts, today)
    listed = {order.slug for order in found.list.orders}
    return ShoppingView(
        orders=tuple(line for line in week.orders if line.slug in listed),
        places=shop_places(found.list, {line.slug: line.hatch for line in week.orders}),
        enough=enough_said(found.list),
        over=over_said(found.list),
        besides=tuple(told_besides(found)),
        made=day(today),
    )
