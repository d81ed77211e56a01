"""What there is at home: counted by hand, and since then bought, taken, and used by orders that are done.

A count wins over every sum before it. Nothing is ever below nothing: what seems to be was not known of.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from itertools import groupby

from tinbook.engine.tolerance import GRAIN, whole_up
from tinbook.models.stock import StockEntry
from tinbook.plans.base.weighing import egg_part_g
from tinbook.plans.shopping.fitting import Fitter
from tinbook.plans.shopping.needs import OrderNeeds
from tinbook.plans.shopping.things import EGG, PARTS, Thing, Things

DAY_MIN = 24 * 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Some of a thing, in its unit: in packs of `each` (0: not known), good up to a day (None: it keeps), bought for
    some orders (none: for any)."""

    amount: float
    each: float = 0.0
    until: date | None = None
    opened: bool = False
    orders: frozenset[str] = frozenset()


@dataclass(kw_only=True)
class Reckoned:
    """How what is there of a thing came about, in its unit: what was counted on a day (None: never), bought and taken
    since, used by which order since; `short`: by how much that was more than was known of. `entries`: how often it is
    in the log."""

    counted: float | None = None
    counted_on: date | None = None
    bought: float = 0.0
    taken: float = 0.0
    used: list[tuple[str, float]] = field(default_factory=list)
    short: float = 0.0
    entries: int = 0
    lots: list[Lot] = field(default_factory=list)

    @property
    def left(self) -> float:
        """What there is."""
        return sum(lot.amount for lot in self.lots)


Stock = Mapping[str, Reckoned]
"""What is known of each thing, by its name."""


def taken_from(
    lots: Sequence[Lot], wanted: float, on: date, keeps_min: float | None, order: str = ""
) -> tuple[float, list[Lot]]:
    """How much of what is wanted there is on a day, and the lots that are left: first what was bought for the order,
    then what is good for the shortest time. What is left of a pack that is opened for it keeps so long and no longer.
    """
    left, got = list[Lot](), 0.0
    for lot in sorted(lots, key=lambda each: (order not in each.orders, each.until or date.max)):
        some = min(lot.amount, wanted - got)
        if some <= 0.0 or (lot.until is not None and lot.until < on):
            left.append(lot)
            continue
        got += some
        left += _rest(lot, some, on, keeps_min)
    return got, left


def _rest(lot: Lot, some: float, on: date, keeps_min: float | None) -> Iterator[Lot]:
    """What is left of a lot: what is still closed, and what is in the pack that was opened."""
    rest = lot.amount - some
    if rest <= GRAIN * lot.amount:
        return
    if keeps_min is None or lot.opened:
        yield replace(lot, amount=rest)
        return
    each = lot.each or lot.amount
    closed = max(0.0, lot.amount - whole_up(some / each) * each)
    good = on + timedelta(minutes=keeps_min)
    until = good if lot.until is None else min(good, lot.until)
    if rest - closed > GRAIN * lot.amount:
        yield replace(lot, amount=rest - closed, until=until, opened=True)
    if closed > GRAIN * lot.amount:
        yield replace(lot, amount=closed)


def reckoned(entries: Iterable[StockEntry], done: Iterable[OrderNeeds], things: Things) -> Stock:
    """What there is of everything in the log, in the order of its days. What goes out on a day on which a thing is
    counted went before the count; what is bought on a day was there for what goes out on it."""
    stock: dict[str, Reckoned] = {}
    by_day: dict[date, dict[str, list[StockEntry]]] = {}
    for entry in entries:
        thing = things.called(entry.of)
        if thing is not None:
            by_day.setdefault(entry.day, {}).setdefault(thing.name, []).append(entry)
            stock.setdefault(thing.name, Reckoned()).entries += 1
    out = sorted(done, key=lambda each: (each.day, each.slug))
    of_day = {day: list(group) for day, group in groupby(out, key=lambda each: each.day)}
    for day in sorted({*by_day, *of_day}):
        today = by_day.get(day, {})
        counted = {name for name, own in today.items() if any(entry.counted for entry in own)}
        for name in today.keys() - counted:
            _enter(stock[name], today[name], things)
        for needs in of_day.get(day, ()):
            _use_all(stock, needs, things)
        for name in counted:
            _enter(stock[name], today[name], things)
    return stock


def _use_all(stock: Stock, needs: OrderNeeds, things: Things) -> None:
    """What an order took. Whites and yolks that were not there by themselves came out of eggs."""
    home = {name: each.left for name, each in stock.items()}
    sizes = Fitter(things, home).choose(needs.sized)
    eggs = 0.0
    for name, mass_g in needs.food.items():
        thing = things.called(name)
        if thing is not None and thing.part in PARTS and not thing.packs and things.egg:
            got = min(mass_g, stock[name].left) if name in stock else 0.0
            _use(stock, name, got, needs, thing)
            eggs = max(eggs, (mass_g - got) / egg_part_g(thing.part, things.book, things.facts))
        elif thing is not None and name != things.egg:
            _use(stock, name, mass_g, needs, thing)
    egg = things.egg
    if egg:
        whole = needs.food.get(egg, 0.0) + eggs * egg_part_g(EGG, things.book, things.facts)
        _use(stock, egg, whole, needs, things.of_card(egg))
    for name, count in (*needs.pieces.items(), *sizes.items()):
        _use(stock, name, count, needs, things.called(name))


def _use(stock: Stock, name: str, amount: float, needs: OrderNeeds, thing: Thing | None) -> None:
    of = stock.get(name)
    if of is None or amount <= 0.0 or (of.counted is None and not of.bought):
        return  # nothing is known of it yet
    got, of.lots = taken_from(of.lots, amount, needs.day, thing.keeps_min if thing else None, needs.slug)
    if got < amount:
        # it was used all the same, whatever was written about how long it keeps
        more, of.lots = taken_from(of.lots, amount - got, date.min, None, needs.slug)
        got += more
    of.used.append((needs.slug, got))
    of.short += max(0.0, amount - got)


def _enter(of: Reckoned, entries: Sequence[StockEntry], things: Things) -> None:
    """The entries for one thing on one day, in the order of the log."""
    for entry in entries:
        thing = things.called(entry.of)
        said = entry.counted or entry.bought or entry.taken
        # nothing of it is nothing in any unit
        one = (things.one(thing, said.kind) if said.total else 0.0) if said and thing else None
        if thing is None or said is None or one is None:
            continue  # it is told where the log is read
        amount, each = said.total * one, said.each * one
        if entry.counted is not None:
            of.counted, of.counted_on = amount, entry.day
            of.bought = of.taken = of.short = 0.0
            of.used, of.lots = [], list(_counted(entry, amount, each, thing, things))
        elif entry.bought is not None:
            of.bought += amount
            until, opened = _until(entry, thing), entry.opened is not None
            orders = frozenset(entry.for_)
            of.lots = [*of.lots, Lot(amount=amount, each=each, until=until, opened=opened, orders=orders)]
        else:
            got, of.lots = taken_from(of.lots, amount, date.min, None)
            of.taken += got


def _counted(entry: StockEntry, amount: float, each: float, thing: Thing, things: Things) -> Iterator[Lot]:
    open_amount = things.amount_of(thing, entry.in_opened) if entry.in_opened else None
    inside = (amount if open_amount is None else open_amount) if entry.opened else 0.0
    if inside:
        yield Lot(amount=inside, each=each, until=_until(entry, thing), opened=True)
    if amount - inside > 0.0:
        yield Lot(amount=amount - inside, each=each, until=entry.good_until)


def _until(entry: StockEntry, thing: Thing) -> date | None:
    """The last day on which what an entry is about is good."""
    days = [entry.good_until] if entry.good_until else []
    if entry.opened and thing.keeps_min is not None:
        days.append(entry.opened + timedelta(minutes=thing.keeps_min))
    return min(days, default=None)
