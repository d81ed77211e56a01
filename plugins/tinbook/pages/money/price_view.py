"""The price of a cake: what it costs, what is asked, where the money goes, and what if; an order's has more to say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.money.lines import BarPart, CostLine, SumLine, bar, bar_said, cost_lines, sum_lines
from tinbook.pages.money.sums import SumWords, by_measure
from tinbook.pages.orders.order_view import LEAVES
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.money.of_orders import dearer_in, last_time
from tinbook.plans.money.offered import Priced, cake_priced, sizes_priced, what_ifs
from tinbook.plans.money.till import Till, till_of

MOST_DEARER = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceFigure:
    """A figure and what it is of."""

    figure: str
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedSize:
    """A size of a cake with its price."""

    name: str
    tins: str
    serves: str
    cost: str
    price: str
    each: str
    bar: tuple[BarPart, ...]
    said: str
    own: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class IfLine:
    """A price if one thing were otherwise."""

    what: str
    price: str
    more: str


@dataclass(frozen=True)
class PriceView:
    """What both have."""

    slug: str
    desk: Desk

    @cached_property
    def till(self) -> Till:
        """What it is worked out from."""
        return till_of(self.desk.book, self.desk.facts, self.desk.bakes)

    @property
    def words(self) -> SumWords:
        """How its sums are written."""
        return SumWords(self.till.money)

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @cached_property
    def priced(self) -> Priced | None:
        """It, priced; None if it cannot be made."""
        raise NotImplementedError

    @property
    def cake_link(self) -> str:
        """The page of the cake, if it is a cake's price."""
        return ""

    @property
    def order_link(self) -> str:
        """The page of the order, if it is an order's."""
        return ""

    @cached_property
    def sizes(self) -> tuple[PricedSize, ...]:
        """A cake in each of its sizes."""
        return ()

    @property
    def ledger(self) -> tuple[SumLine, ...]:
        """What was said about an order's price, and what came of it."""
        return ()

    @cached_property
    def lines(self) -> tuple[SumLine, ...]:
        """Its sum."""
        return tuple(sum_lines(self.priced, self.till)) if self.priced else ()

    @property
    def asked(self) -> Decimal:
        """The price that stands large on it."""
        return self.priced.price.price if self.priced else Decimal(0)

    @property
    def answer(self) -> str:
        """The same in words."""
        return self.words.short(self.asked)

    @property
    def sure(self) -> bool:
        """Whether every price in it is known."""
        return self.priced is None or self.priced.sure

    @property
    def figures(self) -> tuple[PriceFigure, ...]:
        """What the price comes to for each."""
        return tuple(self._figures()) if self.priced else ()

    def _figures(self) -> Iterator[PriceFigure]:
        found = self.priced
        if found is None:
            return
        guests = found.worked.order.guests
        each, guest, hour = found.each(found.serves), found.each(guests or 0), found.hour_shown
        if each is not None:
            yield PriceFigure(figure=self.words.plain(each), what=f"a portion, {found.serves} of them")
        if guest is not None:
            yield PriceFigure(figure=self.words.plain(guest), what=f"a guest, {guests} of them")
        if hour is not None:
            yield PriceFigure(figure=self.words.plain(hour), what="for each hour worked")

    @cached_property
    def bar(self) -> tuple[BarPart, ...]:
        """Where the money goes."""
        return bar(self.priced, self.till) if self.priced else ()

    @property
    def bar_said(self) -> str:
        """The same in words."""
        return bar_said(self.bar)

    @cached_property
    def every(self) -> tuple[CostLine, ...]:
        """Everything that is bought for it."""
        return tuple(cost_lines(self.priced.cost, self.till)) if self.priced else ()

    @cached_property
    def ifs(self) -> tuple[IfLine, ...]:
        """What if."""
        found = what_ifs(self.priced, self.till) if self.priced else ()
        return tuple(
            IfLine(
                what=formats.title(spell(each.said)),
                price=self.words.short(each.price) + ("" if each.sure else " at least"),
                more=self.words.more(each.more) if each.more else "the same",
            )
            for each in found
        )

    @cached_property
    def told(self) -> tuple[tuple[str, str], ...]:
        """What is to be known about it: what has become dearer, how it was the last time, what has no price."""
        return tuple(self._told()) if self.priced else ()

    def _told(self) -> Iterator[tuple[str, str]]:
        found, words, things = self.priced, self.words, self.till.things
        if found is None:
            return
        changed = [each for each in dearer_in(found.cost, self.till) if each.more]
        if changed:
            lines = []
            for each in changed[:MOST_DEARER]:
                thing = things.called(each.of)
                if thing:
                    now, was = (
                        by_measure(each.now, thing, words),
                        words.plain(each.before.per(_one(each.of, self.till))),
                    )
                    lines.append(f"{each.of}, {now}, was {was} ({words.more(each.more)} here)")
            yield "Dearer than before", "; ".join(lines)
        last = last_time(found, self.till)
        if last:
            more = f", {words.more(last.more)}" if last.more else ", the same as now"
            yield "The last time", f"at the prices of {words.day(last.day)}, {words.whole(last.then)}{more} now"
        if self._old:
            yield "Older than half a year", f"the prices of {formats.sentence(self._old)}"
        if found.cost.unknown:
            yield "Not priced", formats.sentence(found.cost.unknown)

    @property
    def _old(self) -> tuple[str, ...]:
        today = self.desk.now.date() if self.desk.now else None
        if today is None or self.priced is None:
            return ()
        newest = ((row.of, self.till.paid.newest(row.of)) for row in self.priced.cost.rows if row.thing)
        return tuple(name for name, price in newest if price and price.is_old(today))


def _one(name: str, till: Till) -> float:
    """How much of a thing a price is told by, in its unit."""
    thing = till.things.called(name)
    if thing is None:
        return 1.0
    return thing.per if thing.kind == "count" else 1000.0 * thing.per


@dataclass(frozen=True)
class CakePriceView(PriceView):
    """The price of a cake of the book, in every size."""

    @cached_property
    def priced(self) -> Priced | None:
        """In its own size."""
        return cake_priced(self.slug, None, self.till)

    @property
    def name(self) -> str:
        """The cake."""
        return self.desk.book.cakes[self.slug].name

    @property
    def cake_link(self) -> str:
        """Its own page."""
        return f"cakes/{self.slug}"

    @cached_property
    def sizes(self) -> tuple[PricedSize, ...]:
        """In each of its sizes."""
        words = self.words
        return tuple(
            PricedSize(
                name=formats.title(each.size.key) if each.size.steps is None else "",
                tins=formats.tin_words(" + ".join(tin.size_label for tin in each.size.tins)),
                serves=str(each.priced.serves),
                cost=words.plain(each.priced.cost.shown),
                price=words.plain(each.priced.price.price) + ("" if each.priced.sure else " at least"),
                each=words.plain(per) if (per := each.priced.each(each.priced.serves)) is not None else "",
                bar=(parts := bar(each.priced, self.till)),
                said=bar_said(parts),
                own=each.size.steps == 0,
            )
            for each in sizes_priced(self.slug, self.till)
        )
