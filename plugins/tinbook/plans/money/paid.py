"""Prices paid, by what they were paid for: the newest counts, the ones before show how it went."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from decimal import Decimal

from tinbook.engine.money import ALL, HUNDREDTH, coins, cost, entered
from tinbook.models.money import PricePaid
from tinbook.plans.shopping.things import FOOD, Things

OLD = timedelta(days=183)
"""A price older than half a year may be one no longer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaidPrice:
    """What was paid on a day for an amount of a thing, in its unit, and how that was written."""

    day: date
    price: Decimal
    amount: Decimal
    written: str

    def for_(self, used: Decimal) -> Decimal:
        """What so much of it costs, exactly."""
        return cost(self.price, self.amount, used)

    def per(self, amount: float) -> Decimal:
        """What so much of it costs, of an amount as the thing is measured."""
        return self.for_(entered(amount))

    def is_old(self, today: date) -> bool:
        """Whether it was paid more than half a year ago."""
        return today - self.day > OLD


@dataclass(frozen=True, kw_only=True)
class PaidPrices:
    """Every price up to a day, by the name of the thing, from the oldest."""

    things: Things
    of: Mapping[str, tuple[PaidPrice, ...]] = field(default_factory=dict)

    def known(self, name: str) -> tuple[PaidPrice, ...]:
        """The prices of a thing; of a colour in a shade that has none of its own, those of the colour."""
        if name in self.of:
            return self.of[name]
        thing = self.things.called(name)
        return self.of.get(thing.card, ()) if thing and thing.unit == FOOD else ()

    def newest(self, name: str) -> PaidPrice | None:
        """The price that counts; None if nobody has written one."""
        return next(reversed(self.known(name)), None)

    def before(self, name: str) -> PaidPrice | None:
        """The price before the newest that was another, for the same pack: a large one is often cheaper by the gram.
        None if there is none."""
        known = self.known(name)
        same = [each for each in known[:-1] if each.amount == known[-1].amount]
        return next((each for each in reversed(same) if each.price != known[-1].price), None)

    def of_pack(self, name: str, amount: float) -> PaidPrice | None:
        """The newest price of a pack of just this size, in the thing's unit; any newest one, if there is none."""
        size = entered(amount)
        same = (each for each in reversed(self.known(name)) if each.amount == size)
        return next(same, self.newest(name))

    def up_to(self, day: date) -> PaidPrices:
        """The prices as they were known on a day."""
        kept = {name: tuple(each for each in known if each.day <= day) for name, known in self.of.items()}
        return PaidPrices(things=self.things, of={name: known for name, known in kept.items() if known})

    def one_before(self) -> PaidPrices:
        """The prices as they were before the newest of each changed."""
        return PaidPrices(things=self.things, of=dict(self._one_before()))

    def _one_before(self) -> Iterator[tuple[str, tuple[PaidPrice, ...]]]:
        for name, known in self.of.items():
            before = self.before(name)
            yield name, known[: known.index(before) + 1] if before else known


def paid_prices(entries: Iterable[PricePaid], things: Things) -> PaidPrices:
    """The prices of a log. Of two on one day the later line is the newer."""
    found: dict[str, list[PaidPrice]] = {}
    for entry in sorted(entries, key=lambda each: each.day):
        thing = things.called(entry.of)
        amount = things.amount_of(thing, entry.pack) if thing else None
        if thing is None or not amount:
            continue  # it is told where the log is read
        weighed = max(entered(amount), HUNDREDTH)
        paid = PaidPrice(day=entry.day, price=entry.price.amount, amount=weighed, written=entry.pack.written)
        found.setdefault(thing.name, []).append(paid)
    return PaidPrices(things=things, of={name: tuple(known) for name, known in found.items()})


def dearer(name: str, prices: PaidPrices) -> tuple[PaidPrice, PaidPrice] | None:
    """The price before and the newest of a thing that has become dearer; None if it has not."""
    before, now = prices.before(name), prices.newest(name)
    return (before, now) if before and now and before.for_(now.amount) < now.price else None


def risen_percent(before: PaidPrice, now: PaidPrice) -> int | None:
    """By how much a price has risen, in whole percent; None from nothing."""
    if not before.price:
        return None
    was = before.for_(now.amount)
    return int(coins(cost(now.price - was, was, Decimal(ALL)), Decimal(1)))
