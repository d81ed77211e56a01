"""The kitchen's own pages: its orders, its week along time, what to buy, a sheet for each day, a page for each order.

There are none without orders, and a public book has no orders: they are not in what a site may show.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked
from tinbook.pages.orders.along import day_drawing, hours_of
from tinbook.pages.orders.order_view import LEAVES, ORDERS, SHOPPING, WEEK, OrderView
from tinbook.pages.orders.pushes import pushed
from tinbook.pages.orders.shopping import shopping_view
from tinbook.pages.orders.week import (
    DayLines,
    KitchenWeek,
    day_address,
    kitchen_week,
    order_address,
)
from tinbook.pages.spelling.orders import lasts, moment

SECTION = ("Orders",)


@dataclass(frozen=True)
class OrdersView:
    """The list of orders: what is to come, what is overdue, what has been."""

    week: KitchenWeek

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @property
    def next_link(self) -> str:
        """The sheet of the next day with work; empty if there is none."""
        return day_address(self._next.day) if self._next else ""

    @property
    def next_name(self) -> str:
        """What that day is called."""
        return self._next.name if self._next else ""

    @property
    def next_words(self) -> str:
        """What comes first on it."""
        return f"{self._next.lines[0].clock} {self._next.lines[0].words}" if self._next else ""

    @property
    def next_hands(self) -> str:
        """How long hands are busy on it."""
        return self._next.hands if self._next else ""

    @property
    def _next(self) -> DayLines | None:
        return next(iter(self.week.days), None)

    @property
    def past_count(self) -> int:
        """How many orders are done or gone."""
        return len(self.week.past)


@dataclass(frozen=True)
class WeekView:
    """The week along time; on a phone the same as a list. `items` are its days."""

    week: KitchenWeek

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @property
    def items(self) -> tuple[DayLines, ...]:
        """Its days."""
        return self.week.days

    @cached_property
    def drawn(self) -> tuple[tuple[DayLines, Markup, str], ...]:
        """Each day with its drawing and its sheet's address."""
        hours = hours_of(self.items)
        return tuple((each, day_drawing(each, hours), day_address(each.day)) for each in self.items)

    @property
    def marks(self) -> tuple[tuple[str, str], ...]:
        """The hours above the drawings, and where they are, in percent."""
        return tuple((hour, f"{at:.2f}") for hour, at in hours_of(self.items).marks)

    @property
    def shows_steps(self) -> bool:
        """Whether tasks say how they are done."""
        return False

    @property
    def planned(self) -> str:
        """When it was planned."""
        return moment(self.week.now)


@dataclass(frozen=True)
class DayView:
    """A day's sheet: what to do when, with how each begins. `items` is that day alone."""

    items: tuple[DayLines, ...]
    before: DayLines | None
    after: DayLines | None

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @property
    def of(self) -> DayLines:
        """The day."""
        return self.items[0]

    @property
    def busy(self) -> tuple[tuple[str, str], ...]:
        """The band: how long hands and the oven are busy."""
        oven = sum(line.oven_min for line in self.of.lines)
        return ((self.of.hands, "hands on"), *(((lasts(oven), "oven"),) if oven else ()))

    @property
    def shows_steps(self) -> bool:
        """Whether tasks say how they are done."""
        return True

    @property
    def beside(self) -> tuple[Linked, ...]:
        """The days before and after it."""
        told = ((self.before, "Previous"), (self.after, "Next"))
        return tuple(Linked(day_address(each.day), f"{word}: {each.name}") for each, word in told if each)


def order_pages(desk: Desk) -> Iterator[Page]:
    """Every page of the kitchen's own, if the book has orders that can be shown."""
    if desk.now is None or not desk.book.others.get("order"):
        return
    week = kitchen_week(desk, desk.now)
    yield Page(address=ORDERS, title="Orders", template="orders", view=OrdersView(week), section=SECTION)
    yield Page(address=WEEK, title="Week", template="orders_week", view=WeekView(week), section=SECTION)
    yield Page(address=SHOPPING, title="Shopping", template="shopping", view=shopping_view(week, desk), section=SECTION)
    for line in (*week.orders, *week.overdue, *week.past):
        order = OrderView(
            line=line, items=week.of_order(line.slug), pushes=pushed(line, week, desk),
            is_late=tuple(each for each in week.wrong if each.startswith(f"{line.handle} ")), desk=desk,
        )  # fmt: skip
        address = order_address(line.slug)
        yield Page(
            address=address,
            title=line.handle,
            template="order",
            view=order,
            section=SECTION,
            listed=line in week.orders,
        )
    for nth, each in enumerate(week.days):
        view = DayView((each,), next(iter(week.days[nth - 1 : nth]), None), next(iter(week.days[nth + 1 :]), None))
        address = day_address(each.day)
        yield Page(address=address, title=each.name, template="orders_day", view=view, section=SECTION, listed=False)
