"""A cake in each of its sizes with its price; and what a price would be if one thing were otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime
from decimal import Decimal

from tinbook.engine.money import PriceMade, coins, cost, entered
from tinbook.models import CakeDesign
from tinbook.models.orders import Order, OrderChange
from tinbook.models.reading import NONE
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.bought import bought, made_or_bought
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.cakes.sizes import CakeSize, cake_sizes
from tinbook.plans.money.cost import CostSum, asked_for, cost_of
from tinbook.plans.money.hours import OrderHours, hours_of
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked, design_of, worked_order

SOME_DAY = datetime(2000, 1, 3, 12)
"""A cake by itself is handed over at noon, on a day that says nothing."""
FOR_ITSELF = "one-cake"
HOUR_MIN = 60.0
HOURS_MORE = (-60.0, 60.0, 120.0)
GUESTS_MORE = (-10, 10, 20)


@dataclass(frozen=True, kw_only=True)
class Priced:
    """Something with its cost and its price. `serves`: portions; 0 for what is not cut."""

    worked: OrderWorked
    hours: OrderHours
    cost: CostSum
    price: PriceMade
    serves: int
    coin: Decimal

    @property
    def sure(self) -> bool:
        """Whether every price in it is known."""
        return not self.cost.unknown

    def each(self, count: int) -> Decimal | None:
        """The price over so many, in coins; None over none."""
        return coins(cost(self.price.price, Decimal(count), Decimal(1)), self.coin) if count else None

    @property
    def hour_shown(self) -> Decimal | None:
        """What is left for each hour worked once everything but the hours is paid, in coins."""
        if not self.hours.hands_min:
            return None
        left = self.price.net - sum(row.shown for row in self.cost.rows if row.group != "hours" and row.shown)
        return coins(cost(left, entered(self.hours.hands_min), Decimal(60)), self.coin)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizePriced:
    """A size of a cake, and what it costs and is sold for."""

    size: CakeSize
    priced: Priced


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """A price if one thing were otherwise: what, and by how much more it would be (or less)."""

    said: Saying
    price: Decimal
    more: Decimal
    sure: bool


def priced(worked: OrderWorked, till: Till, hours: OrderHours | None = None) -> Priced:
    """An order with its cost and its price, in the hours that are planned or in so many."""
    hours = hours or hours_of(worked, till)
    found = cost_of(worked, hours, till)
    return Priced(
        worked=worked, hours=hours, cost=found, price=asked_for(found, till),
        serves=sum(cake.serves for cake in worked.cakes), coin=till.coin,
    )  # fmt: skip


def order_for(slug: str, size: str | None = None) -> Order:
    """An order for a cake of the book and nothing else, in its own size or another."""
    return Order.model_construct({"cake", "size"}, handle=slug, hand_over=SOME_DAY, cake=slug, size=size)


def cake_priced(slug: str, size: str | None, till: Till) -> Priced:
    """A cake of the book in a size; AskError for one it cannot be made in."""
    return priced(worked_order(FOR_ITSELF, order_for(slug, size), till.book, till.facts, till.bakes), till)


def sizes_priced(slug: str, till: Till) -> tuple[SizePriced, ...]:
    """A cake in every size it is offered in, small to large."""
    sizes = cake_sizes(till.book.cakes[slug], till.book, till.facts).offered
    return tuple(SizePriced(size=size, priced=cake_priced(slug, _called(size), till)) for size in sizes)


def _called(size: CakeSize) -> str | None:
    if size.steps is None:
        return size.key
    return f"{size.steps:+d}" if size.steps else None


def what_ifs(now: Priced, till: Till) -> tuple[WhatIf, ...]:
    """An order's price for other guests, with other fillings and covers, in more hours or fewer."""
    order = now.worked.order
    found = [*_hours(now, till)]
    if order.cake:
        design = design_of(order, till.book)
        found = [*_guests(now, till), *_fillings(now, design, till), *_covers(now, design, till), *found]
    return tuple(found)


def _hours(now: Priced, till: Till) -> Iterator[WhatIf]:
    for more in HOURS_MORE:
        hours = replace(now.hours, hands_min=now.hours.hands_min + more, least_min=max(0.0, now.hours.least_min + more))
        if hours.hands_min > 0.0:
            said = saying("if_hours", hours=more / HOUR_MIN)
            yield _what_if(said, priced(now.worked, till, hours), now)


def _guests(now: Priced, till: Till) -> Iterator[WhatIf]:
    order = now.worked.order
    guests = order.guests or now.serves
    for more in GUESTS_MORE:
        if guests + more > 0:
            asked = order.model_copy(update={"guests": guests + more, "size": None})
            yield from _tried(saying("if_guests", guests=guests + more), asked, now, till)


def _fillings(now: Priced, design: CakeDesign, till: Till) -> Iterator[WhatIf]:
    """Only what is made here: a filling is a recipe."""
    if design.filling in (None, NONE):
        return
    for slug, mixture in till.book.mixtures.items():
        if slug != design.filling and "filling" in till.facts.kinds[mixture.kind].plays:
            yield from _changed(saying("if_filling", name=mixture.name), "filling", slug, now, till)


def _covers(now: Priced, design: CakeDesign, till: Till) -> Iterator[WhatIf]:
    if design.cover in (None, NONE):
        return
    for word, name in _cover_words(till):
        if word != design.cover:
            yield from _changed(saying("if_cover", name=name), "cover", word, now, till)


def _cover_words(till: Till) -> Iterable[tuple[str, str]]:
    for slug, mixture in till.book.mixtures.items():
        if "cover" in till.facts.kinds[mixture.kind].plays:
            yield slug, mixture.name
    names = {mixture.name.lower() for mixture in till.book.mixtures.values()}
    for name in till.book.cards:
        batch = bought(name, till.book, till.facts) if name.lower() not in names else None
        if batch and "cover" in batch.kind.plays and made_or_bought(name, till.book, till.facts):
            yield name, name


def _changed(said: Saying, key: str, word: str, now: Priced, till: Till) -> Iterator[WhatIf]:
    order = now.worked.order
    before = order.change or OrderChange.model_construct(set())
    written = before.model_fields_set | {key}
    change = OrderChange.model_construct(
        set(written), **{name: getattr(before, name) for name in before.model_fields_set} | {key: word}
    )
    yield from _tried(said, order.model_copy(update={"change": change}), now, till)


def _tried(said: Saying, order: Order, now: Priced, till: Till) -> Iterator[WhatIf]:
    """The order, if it can be made so."""
    try:
        worked = worked_order(now.worked.slug, order, till.book, till.facts, till.bakes)
    except AskError:
        return
    yield _what_if(said, priced(worked, till), now)


def _what_if(said: Saying, then: Priced, now: Priced) -> WhatIf:
    return WhatIf(said=said, price=then.price.price, more=then.price.price - now.price.price, sure=then.sure)
