"""What was paid: by the kilo or the piece, for which pack and when, and how it went."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from itertools import pairwise

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.money.sums import SumWords, by_measure
from tinbook.pages.orders.order_view import LEAVES
from tinbook.pages.orders.shop_lines import size_said
from tinbook.pages.spelling import formats
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.cost import CostSum
from tinbook.plans.money.of_mixtures import mixture_costs
from tinbook.plans.money.of_orders import order_money
from tinbook.plans.money.offered import cake_priced
from tinbook.plans.money.paid import PaidPrice, dearer, risen_percent
from tinbook.plans.money.till import Till, till_of

WIDE, HIGH = 120.0, 24.0
"""The line of a price over time, in px."""


@dataclass(frozen=True, slots=True)
class PaidGroup:
    """Prices under a heading."""

    title: str
    rows: tuple[PaidLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaidLine:
    """What was paid for a thing: by the kilo or the piece, for which pack and when, and how it went. `points` is the
    line of its prices, empty for a single one."""

    name: str
    by: str
    paid: str
    day: str
    old: bool
    was: str
    points: str
    said: str


@dataclass(frozen=True)
class PaidView:
    """What was paid."""

    today: date
    desk: Desk

    @property
    def leaves(self) -> tuple[Linked, ...]:
        """The pages beside it."""
        return LEAVES

    @cached_property
    def till(self) -> Till:
        """What it is worked out from."""
        return till_of(self.desk.book, self.desk.facts, self.desk.bakes)

    @cached_property
    def lines(self) -> tuple[PaidLine, ...]:
        """Every thing with a price, by name."""
        return tuple(self._lines())

    def _lines(self) -> Iterator[PaidLine]:
        words = SumWords(self.till.money)
        first = min((known[0].day for known in self.till.paid.of.values()), default=self.today)
        for name, known in sorted(self.till.paid.of.items(), key=lambda each: each[0].lower()):
            thing = self.till.things.called(name)
            if thing is None:
                continue
            newest = known[-1]
            changed = dearer(name, self.till.paid)
            risen = risen_percent(*changed) if changed else None
            was = f"was {by_measure(changed[0], thing, words)}" if changed else ""
            same = [each for each in known if each.amount == newest.amount]
            yield PaidLine(
                name=size_said(formats.title(name)),
                by=by_measure(newest, thing, words),
                paid=f"{words.plain(newest.price)} for {size_said(newest.written)}",
                day=words.day(newest.day),
                old=newest.is_old(self.today),
                was=f"{was}, {risen}{formats.NBSP}% dearer" if risen else was,
                points=_points(same, first, self.today),
                said="; ".join(f"{words.day(each.day)} {words.plain(each.price)}" for each in same),
            )

    @property
    def groups(self) -> tuple[PaidGroup, ...]:
        """What has become dearer, what is old, and all of it."""
        every = (("Dearer than before", self.dearer), ("Over half a year old", self.old), ("All prices", self.lines))
        return tuple(PaidGroup(title, rows) for title, rows in every if rows)

    @property
    def dearer(self) -> tuple[PaidLine, ...]:
        """What has become dearer."""
        return tuple(line for line in self.lines if line.was)

    @property
    def old(self) -> tuple[PaidLine, ...]:
        """What was paid more than half a year ago."""
        return tuple(line for line in self.lines if line.old)

    @cached_property
    def unknown(self) -> str:
        """What orders, cakes and recipes take that has no price."""
        names = dict.fromkeys(name for cost in self._costs() for name in cost.unknown)
        return formats.sentence(size_said(name) for name in names) if names else ""

    def _costs(self) -> Iterator[CostSum]:
        for slug, order in self.till.orders.items():
            money = order_money(slug, order, self.till) if order.open else None
            if money:
                yield money.now.cost
        for slug in self.desk.book.cakes:
            with suppress(AskError):
                yield cake_priced(slug, None, self.till).cost
        yield from (each.cost for each in mixture_costs(self.till))


def _points(known: Sequence[PaidPrice], first: date, last: date) -> str:
    """The prices of one pack as a line that holds each until the next; nothing for a single price."""
    if len(known) < 2:
        return ""
    days = max((last - first).days, 1)
    top = max(float(each.price) for each in known) or 1.0
    low = min(float(each.price) for each in known)
    span = (top - low) or 1.0

    def at(day: date) -> float:
        return min(1.0, max(0.0, (day - first).days / days)) * WIDE

    def high(each: PaidPrice) -> float:
        return HIGH - 3.0 - (float(each.price) - low) / span * (HIGH - 6.0)

    told = [f"{at(known[0].day):.1f},{high(known[0]):.1f}"]
    for before, each in pairwise(known):
        told += [f"{at(each.day):.1f},{high(before):.1f}", f"{at(each.day):.1f},{high(each):.1f}"]
    return " ".join((*told, f"{WIDE:.1f},{high(known[-1]):.1f}"))
