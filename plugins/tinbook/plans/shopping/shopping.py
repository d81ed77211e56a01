"""The shopping list: what some orders take together, less what is at home, rounded once to packs."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from tinbook.engine.packs import packs_for
from tinbook.engine.tolerance import GRAIN, whole_up
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.packs import Pack
from tinbook.plans.base.weighing import egg_part_g
from tinbook.plans.shopping.fitting import Fitter
from tinbook.plans.shopping.needs import OrderNeeds
from tinbook.plans.shopping.stock import Lot, Reckoned, Stock, taken_from
from tinbook.plans.shopping.things import EGG, PARTS, Thing, Things

NOTHING_KNOWN = Reckoned()


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderShare:
    """What one order takes of a thing, in the thing's unit: `needs` of it exactly, and `home` from what is there."""

    slug: str
    needs: float
    home: float


@dataclass(frozen=True, kw_only=True)
class ShopLine:
    """A line of the list, in the thing's unit. `needs`: what the orders take, `spare` more for what goes wrong; `home`:
    what of that is there; `short`: what is missing; `packs`: how many of which are bought. `for_parts`: of the needs,
    what is wanted for whites or yolks; of these, `from_eggs` is what the eggs on the list give. `too_old`: what is
    there, but will not be good by then. `there`: all there is; `rest`: what of that no order takes. `line` names it for
    the tablet's ticks."""

    thing: Thing
    shares: tuple[OrderShare, ...]
    needs: float
    spare: float
    home: float
    short: float
    packs: tuple[tuple[int, Pack], ...]
    for_parts: float
    from_eggs: float
    too_old: float
    there: float
    rest: float
    line: str

    @property
    def bought(self) -> float:
        """All the packs together."""
        return sum(count * pack.amount for count, pack in self.packs) * self.thing.per

    @property
    def to_buy(self) -> bool:
        """Whether anything is missing."""
        return self.short > 0.0

    @property
    def over(self) -> float:
        """What is left once the orders are made: of the packs, and of what is there that no other order takes."""
        return self.rest + max(0.0, self.bought - self.short)


@dataclass(frozen=True, kw_only=True)
class ShoppingList:
    """What to buy for some orders. `lines` in the order of where they are found, what is enough at home among them;
    `some`: what is wanted in an amount nobody has given; `tins`: tins the house has none of; `stock`: how it came
    about."""

    orders: tuple[OrderNeeds, ...]
    lines: tuple[ShopLine, ...]
    some: tuple[str, ...]
    tins: tuple[str, ...]
    stock: Stock

    @property
    def to_buy(self) -> tuple[ShopLine, ...]:
        """The lines of which something is missing."""
        return tuple(line for line in self.lines if line.to_buy)

    @property
    def enough(self) -> tuple[ShopLine, ...]:
        """The lines of which there is enough at home."""
        return tuple(line for line in self.lines if not line.to_buy)


@dataclass(kw_only=True)
class _Allotted:
    """How what orders take of a thing is met, by order: what each takes exactly, what it `needs` with what is spare,
    what it gets from home; and what was too old for one."""

    exact: dict[str, float] = field(default_factory=dict)
    needs: dict[str, float] = field(default_factory=dict)
    home: dict[str, float] = field(default_factory=dict)
    for_parts: dict[str, float] = field(default_factory=dict)
    too_old: float = 0.0

    def add(self, slug: str, amount: float, spare: float = 0.0) -> None:
        self.exact[slug] = self.exact.get(slug, 0.0) + amount
        self.needs[slug] = self.needs.get(slug, 0.0) + amount * (1.0 + spare)

    def short(self, slug: str) -> float:
        missing = self.needs.get(slug, 0.0) - self.home.get(slug, 0.0)
        return missing if missing > GRAIN * self.needs.get(slug, 0.0) else 0.0


def shopping_list(
    orders: Sequence[OrderNeeds], chosen: Collection[str], stock: Stock, book: Book, facts: Facts, spare: float = 0.0
) -> ShoppingList:
    """What to buy for the `chosen` of some orders. What is at home goes to the orders it was bought for, and then to
    whichever goes out first, whether or not it is among those chosen: the lists of all orders, one by one, ask for no
    more than one list for all of them."""
    things = Things(book, facts)
    by_time = sorted(orders, key=lambda each: (each.day, each.slug))
    allotted = _allotted(by_time, stock, things, spare)
    mine = [order for order in by_time if order.slug in chosen]
    lines = [
        line
        for name, each in allotted.items()
        if (line := _line(_thing(name, things), each, mine, stock.get(name, NOTHING_KNOWN), _from_eggs(name, things)))
    ]
    places = _places(things)
    lines.sort(key=lambda line: (places.get(line.thing.found_in, len(places)), line.thing.name.lower()))
    return ShoppingList(
        orders=tuple(mine),
        lines=tuple(lines),
        some=tuple(dict.fromkeys(name for order in mine for name in order.some)),
        tins=tuple(dict.fromkeys(name for order in mine for name in order.tins)),
        stock=stock,
    )


def _places(things: Things) -> Mapping[str, int]:
    """Where things are found, in the order in which the supplies and then the cards name the places."""
    cards = [card.found_in for card in things.book.cards.values()]
    named = dict.fromkeys(place for place in (*cards, *(each.found_in for each in things.supplies)) if place)
    return {place: at for at, place in enumerate(named)}


def _thing(name: str, things: Things) -> Thing:
    return things.called(name) or things.of_name(name)


def _chosen_sizes(
    orders: Sequence[OrderNeeds], lots: Mapping[str, Sequence[Lot]], things: Things
) -> Iterator[tuple[OrderNeeds, Mapping[str, float]]]:
    """For each order, in turn, the boards, boxes, sticks and ribbon it takes, by name. What was bought for another of
    these orders is left to it, and what it then leaves goes to the next."""
    slugs = {order.slug for order in orders}
    fitter = Fitter(
        things, {name: sum(lot.amount for lot in own if not lot.orders & slugs) for name, own in lots.items()}
    )
    for order in orders:
        for name, own in lots.items():
            fitter.home[name] += sum(lot.amount for lot in own if order.slug in lot.orders)
        yield order, fitter.choose(order.sized)


def _allotted(orders: Sequence[OrderNeeds], stock: Stock, things: Things, spare: float) -> Mapping[str, _Allotted]:
    """What is at home, shared out, by the names of things."""
    lots = {name: list(each.lots) for name, each in stock.items()}
    found: dict[str, _Allotted] = {}
    for order in orders:
        for name, mass_g in order.food.items():
            found.setdefault(name, _Allotted()).add(order.slug, mass_g, spare)
        for name, count in order.pieces.items():
            found.setdefault(name, _Allotted()).add(order.slug, count)
    for order, sizes in _chosen_sizes(orders, lots, things):
        for name, amount in sizes.items():
            found.setdefault(name, _Allotted()).add(order.slug, amount)
    # what comes out of an egg first: what is missing of it adds to the eggs
    parts = [name for name in found if _from_eggs(name, things)]
    for name in parts:
        _share_out(found[name], lots.get(name, []), orders, things.called(name))
    egg = things.egg
    if parts and egg:
        _crack(found, parts, egg, orders, things, spare)
    for name, of in found.items():
        if name not in parts:
            _share_out(of, lots.get(name, []), orders, _thing(name, things))
    return found


def _from_eggs(name: str, things: Things) -> bool:
    """Whether it is a part of an egg, and not sold by itself."""
    thing = things.called(name)
    return thing is not None and thing.part in PARTS and not thing.packs and things.egg is not None


def _crack(
    found: dict[str, _Allotted],
    parts: Sequence[str],
    egg: str,
    orders: Sequence[OrderNeeds],
    things: Things,
    spare: float,
) -> None:
    """Eggs for the whites and yolks that are missing: the white and the yolk of one egg serve one order."""
    of, book, facts = found.setdefault(egg, _Allotted()), things.book, things.facts
    whole_g = egg_part_g(EGG, book, facts)
    for order in orders:
        eggs = max(found[name].short(order.slug) / egg_part_g(_thing(name, things).part, book, facts) for name in parts)
        if eggs:
            # what is spare is in the whites and yolks already
            of.for_parts[order.slug] = eggs * whole_g / (1.0 + spare)
            of.add(order.slug, of.for_parts[order.slug], spare)


def _share_out(of: _Allotted, lots: Sequence[Lot], orders: Sequence[OrderNeeds], thing: Thing | None) -> None:
    """What there is of a thing: to the orders it was bought for, then to each in turn."""
    left = list(lots)
    keeps = thing.keeps_min if thing else None
    for own in (True, False):
        for order in orders:
            wanted = of.short(order.slug)
            if wanted <= 0.0:
                continue
            open_to_it = [lot for lot in left if not own or order.slug in lot.orders]
            others = [lot for lot in left if own and order.slug not in lot.orders]
            got, rest = taken_from(open_to_it, wanted, order.day, keeps, order.slug)
            of.home[order.slug] = of.home.get(order.slug, 0.0) + got
            left = [*others, *rest]
            if not own and got < wanted:
                of.too_old = max(of.too_old, sum(lot.amount for lot in rest))


def _line(thing: Thing, of: _Allotted, mine: Sequence[OrderNeeds], known: Reckoned, cracked: bool) -> ShopLine | None:
    """The line for the orders on the list; None if none of them takes it, or it is never bought. `cracked`: what is
    missing of it comes out of eggs."""
    takers = [order for order in mine if of.needs.get(order.slug, 0.0) > 0.0]
    if not takers or thing.never:
        return None
    shares = tuple(
        OrderShare(slug=order.slug, needs=of.exact[order.slug], home=of.home.get(order.slug, 0.0)) for order in takers
    )
    missing = [(order, short) for order in takers if (short := of.short(order.slug))]
    short = sum(short for _, short in missing)
    needs = sum(share.needs for share in shares)
    return ShopLine(
        thing=thing,
        shares=shares,
        needs=needs,
        spare=sum(of.needs[order.slug] for order in takers) - needs,
        home=sum(share.home for share in shares),
        short=0.0 if cracked else short,
        from_eggs=short if cracked else 0.0,
        packs=() if cracked else tuple(_packs(thing, missing)),
        for_parts=sum(of.for_parts.get(order.slug, 0.0) for order in takers),
        too_old=of.too_old,
        there=known.left,
        rest=max(0.0, known.left - sum(of.home.values())),
        line=f"{thing.name}/{known.entries + 1}",
    )


def _packs(thing: Thing, missing: Sequence[tuple[OrderNeeds, float]]) -> Iterator[tuple[int, Pack]]:
    """Whole packs for what is missing. What is left of a pack serves the next order; where it does not keep so long
    once it is opened, the next order has packs of its own."""
    if not thing.packs or not missing:
        return
    groups: list[tuple[date, float]] = []
    for order, short in missing:
        if groups and (thing.keeps_min is None or order.day <= groups[-1][0] + timedelta(minutes=thing.keeps_min)):
            groups[-1] = (groups[-1][0], groups[-1][1] + short)
        else:
            groups.append((order.day, short))
    counts: dict[float, int] = {}
    for _, short in groups:
        wanted = short / thing.per
        for count, size in packs_for(whole_up(wanted) if thing.kind == "count" else wanted, thing.sizes):
            counts[size] = counts.get(size, 0) + count
    for size in sorted(counts, reverse=True):
        yield counts[size], next(pack for pack in thing.packs if pack.amount == size)
