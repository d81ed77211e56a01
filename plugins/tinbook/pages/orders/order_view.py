"""An order's page: what is asked for, what a guest must not have, what to do on which day, the cake, a class's pack."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from tinbook.models import CakeDesign, changed_book
from tinbook.models.orders import STATES, Order
from tinbook.pages.base.page import Desk, cross_contact
from tinbook.pages.base.shared import Linked, plural
from tinbook.pages.cake.addresses import Way, cake_address
from tinbook.pages.cake.jobs import JobGroup
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.view import CakeView
from tinbook.pages.orders.pack import ClassPack, class_pack
from tinbook.pages.orders.week import DayLines, OrderLine, price_of_order
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.orders import lasts
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.sizes import CakeSize
from tinbook.plans.orders.asked import OrderWorked, design_of, plain_cake, worked_order
from tinbook.plans.orders.free_from import FreeFrom, held_against

ORDERS, WEEK, SHOPPING = "orders/index", "orders/week", "orders/shopping"
PRICES, PAID = "orders/prices", "orders/paid"
LEAVES = (
    Linked(ORDERS, "Orders"),
    Linked(WEEK, "Week"),
    Linked(SHOPPING, "Shopping"),
    Linked(PRICES, "Prices"),
    Linked(PAID, "Paid"),
)
BACK_TO = re.compile(r"&cake=.*$")
NO_PROMISE = "This is what the cards say, and no guarantee: ask the guest what a trace would do."


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeLine:
    """What a guest must not have: whether it was found, where, what nobody knows, and what there is instead."""

    word: str
    verdict: str
    clear: bool
    found: str
    unknown: str
    instead: tuple[str, ...]


@dataclass(frozen=True)
class OrderedCake:
    """A cake of an order at its size, its lines to tick, and its own page if the book has one as it is ordered."""

    made: CakeInSize
    name: str
    jobs: tuple[JobGroup, ...]
    page: Way | None


@dataclass(frozen=True, kw_only=True)
class OrderView:
    """An order. `items` are its days."""

    line: OrderLine
    items: tuple[DayLines, ...]
    pushes: tuple[str, ...]
    is_late: tuple[str, ...]
    desk: Desk

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @property
    def order(self) -> Order:
        """What its file says."""
        found: Order = self.desk.book.others["order"][self.line.slug]
        return found

    @property
    def price_link(self) -> str:
        """Where its price is."""
        return price_of_order(self.line.slug)

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """The band: figures and what they count."""
        order = self.order
        how = "start" if order.class_ else "delivery" if order.delivered else "collection"
        found = [(self.line.when, how)]
        if order.delivered:
            found.append((lasts(order.delivered), "drive"))
        if order.guests:
            found.append((str(order.guests), "guests"))
        found.append((order.state, "status"))
        return tuple(found)

    @cached_property
    def worked(self) -> OrderWorked | None:
        """It, worked out; None if it is done, as the book may have changed since, or if it cannot be made."""
        if not self.order.open:
            return None
        try:
            return worked_order(self.line.slug, self.order, self.desk.book, self.desk.facts, self.desk.bakes)
        except AskError:
            return None

    @cached_property
    def free_from(self) -> tuple[FreeLine, ...]:
        """What a guest must not have."""
        found = held_against(self.worked, self.desk.book, self.desk.facts) if self.worked else ()
        return tuple(map(_free_line, found))

    @property
    def no_promise(self) -> str:
        """What a verdict is worth."""
        return NO_PROMISE

    @property
    def cross_contact(self) -> str:
        """What else the kitchen handles, in the house's own words."""
        return cross_contact(self.desk)

    @cached_property
    def cakes(self) -> tuple[OrderedCake, ...]:
        """Its cakes, each at its size."""
        return tuple(ordered_cakes(self.worked, self.desk)) if self.worked else ()

    @property
    def tubs(self) -> tuple[Linked, ...]:
        """What is made by weight, with its page."""
        tubs = self.worked.tubs if self.worked else ()
        return tuple(Linked(f"mixtures/{tub.slug}", f"{formats.grams(tub.mass_g)} {tub.mixture.name}") for tub in tubs)

    @cached_property
    def pack(self) -> ClassPack | None:
        """A class's pack."""
        return class_pack(self.order, self.desk) if self.order.open else None

    @property
    def shows_steps(self) -> bool:
        """Whether tasks say how they are done."""
        return False

    @property
    def fits_in(self) -> bool:
        """Whether it is only asked for, and would push nothing."""
        return self.order.state == STATES[0] and bool(self.items) and not self.pushes

    @property
    def hands(self) -> str:
        """How long all of it keeps hands busy."""
        return lasts(sum(line.hands_min for day in self.items for line in day.lines))


def _free_line(found: FreeFrom) -> FreeLine:
    sources = [name if name == what else f"{name} ({what})" for name, what in found.sources]
    verdict = "in it" if sources else "not known" if found.unknown else "not on any of its cards"
    instead = [
        f"{name}: {' or '.join(others) if others else 'no recipe of ours goes without'}"
        for name, others in found.instead
    ]
    return FreeLine(
        word=found.word, verdict=verdict, clear=found.clear,
        found=formats.sentence(sources) if sources else "",
        unknown=formats.sentence(list(found.unknown)) if found.unknown else "",
        instead=tuple(instead),
    )  # fmt: skip


def ordered_cakes(worked: OrderWorked, desk: Desk) -> Iterator[OrderedCake]:
    """The cakes of an order, each at its size."""
    order, book = worked.order, desk.book
    if order.cake and worked.size:
        made = _in_size(order.cake, design_of(order, book), worked.size, worked, desk)
        page = None if order.change else Way(cake_address(order.cake), made.anchor)
        yield OrderedCake(made, made.cake.design.name, made.jobs, page)
    for each in order.mixtures:
        design = plain_cake(each, book)
        if design is not None:
            view = _view(each.mixture, design, desk)
            made = view.written
            yield OrderedCake(made, _counted(each.count, design.name), _without_way_back(made.jobs), None)


def _counted(count: int, name: str) -> str:
    return f"{count} × {name}" if count > 1 else name


def _view(slug: str, design: CakeDesign, desk: Desk) -> CakeView:
    book = changed_book(desk.book, cakes={**desk.book.cakes, slug: design})
    return CakeView(slug=slug, desk=replace(desk, book=book))


def _in_size(slug: str, design: CakeDesign, size: CakeSize, worked: OrderWorked, desk: Desk) -> CakeInSize:
    view = _view(slug, design, desk)
    names = () if size.steps is not None else (size.key,)
    return CakeInSize(cake=worked.cakes[0], size=size, names=names, desk=view.desk)


def _without_way_back(groups: tuple[JobGroup, ...]) -> tuple[JobGroup, ...]:
    """Lines whose bench does not lead back to a cake, as there is none in the book."""
    return tuple(
        replace(
            group,
            lines=tuple(
                replace(line, link=Way(line.link.address, BACK_TO.sub("", line.link.anchor))) if line.link else line
                for line in group.lines
            ),
        )
        for group in groups
    )


def people_said(count: int) -> str:
    """`6 people`."""
    return plural(count, "person", "people")
