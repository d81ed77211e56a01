"""The shopping list in words: what goes in the basket, what it is for, and what is at home."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import accumulate, groupby

from tinbook.pages.base.shared import plural
from tinbook.pages.orders.week import HATCHES, fill_of
from tinbook.pages.spelling import formats
from tinbook.plans.shopping.asked import Shopping
from tinbook.plans.shopping.shopping import ShopLine, ShoppingList
from tinbook.plans.shopping.shown import home_shown, loose_shown, needed_shown
from tinbook.plans.shopping.things import Thing

ELSEWHERE = "Anywhere"
"""What is said of a place that nobody has named."""


@dataclass(frozen=True, slots=True)
class ShareBar:
    """One order's share of a line: where its bar begins and how wide it is, in percent, and its hatching."""

    left: str
    wide: str
    fill: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopRow:
    """A line to find. `buys`: how many, and of what size; `bought`: the same as a log has it; `slugs`: the orders it is
    bought for."""

    line: str
    of: str
    name: str
    buys: tuple[tuple[str, str], ...]
    bought: tuple[str, ...]
    said: str
    shares: tuple[ShareBar, ...]
    shares_said: str
    slugs: tuple[str, ...]

    @property
    def bought_said(self) -> str:
        """What is bought, as the tablet hands it back."""
        return "|".join(self.bought)

    @property
    def for_said(self) -> str:
        """The orders it is bought for, likewise."""
        return "|".join(self.slugs)


@dataclass(frozen=True, slots=True)
class ShopPlace:
    """Where something is found, and what is to be found there."""

    name: str
    rows: tuple[ShopRow, ...]


def amount_said(thing: Thing, shown: float) -> str:
    """An amount as it is shown: `595 g`, `1200 ml`, `8.65 m`, `6`."""
    if thing.kind == "length":
        return formats.with_unit(formats.number(shown / 1000.0), "m")
    return formats.with_unit(formats.number(shown), {"mass": "g", "volume": "ml"}.get(thing.kind, ""))


def name_said(thing: Thing) -> str:
    """`Drum, round 30 cm`."""
    return size_said(thing.name[:1].upper() + thing.name[1:])


def size_said(name: str) -> str:
    """A name with its lengths joined to their units."""
    return name.replace(" x ", " × ").replace(" cm", f"{formats.NBSP}cm").replace(" mm", f"{formats.NBSP}mm")


def shop_places(found: ShoppingList, hatches: Mapping[str, int] | None = None) -> tuple[ShopPlace, ...]:
    """What is to be bought, by where it is found. `hatches`: each order's; left out, they count from the first."""
    orders = {
        order.slug: (order.handle, hatches[order.slug] if hatches else nth % HATCHES)
        for nth, order in enumerate(found.orders)
    }
    return tuple(
        ShopPlace(place[:1].upper() + place[1:], tuple(_row(line, orders) for line in lines))
        for place, lines in groupby(found.to_buy, key=lambda line: line.thing.found_in or ELSEWHERE)
    )


def _row(line: ShopLine, orders: Mapping[str, tuple[str, int]]) -> ShopRow:
    total = line.needs or 1.0
    ends = tuple(accumulate(share.needs / total for share in line.shares))
    return ShopRow(
        line=line.line,
        of=line.thing.name,
        name=name_said(line.thing),
        buys=tuple(_buys(line)),
        bought=tuple(_bought(line)),
        said=", ".join(_said(line)),
        shares=tuple(
            ShareBar(f"{(end - share.needs / total) * 100.0:.1f}", f"{share.needs / total * 100.0:.1f}",
                     fill_of(orders[share.slug][1]))
            for share, end in zip(line.shares, ends, strict=True)
        ),
        shares_said=", ".join(
            f"{orders[share.slug][0]} {amount_said(line.thing, needed_shown(line.thing, share.needs))}"
            for share in line.shares
        ),
        slugs=tuple(share.slug for share in line.shares if share.home < share.needs),
    )  # fmt: skip


def _buys(line: ShopLine) -> Iterator[tuple[str, str]]:
    if line.packs:
        for count, pack in line.packs:
            single = pack.kind == "count" and pack.amount == 1.0
            yield str(count), "" if single else f"×{formats.NBSP}{formats.kept_together(pack.written)}"
        return
    figure, _, unit = amount_said(line.thing, loose_shown(line)).partition(formats.NBSP)
    yield figure, unit


def _bought(line: ShopLine) -> Iterator[str]:
    """As it goes into the log of the stock."""
    for count, pack in line.packs:
        single = pack.kind == "count" and pack.amount == 1.0
        yield str(count) if single else pack.written if count == 1 else f"{count} x {pack.written}"
    if not line.packs:
        unit = {"mass": " g", "volume": " ml", "length": " mm"}.get(line.thing.kind, "")
        yield f"{loose_shown(line):.0f}{unit}"


def _said(line: ShopLine) -> Iterator[str]:
    thing = line.thing
    yield f"{amount_said(thing, needed_shown(thing, line.needs))} needed"
    if line.for_parts:
        yield f"{amount_said(thing, needed_shown(thing, line.for_parts))} of them for whites or yolks"
    if line.spare:
        yield f"{amount_said(thing, needed_shown(thing, line.spare))} spare"
    home = home_shown(thing, line.home)
    yield f"{amount_said(thing, home) if home else 'none'} at home"
    old = home_shown(thing, line.too_old)
    if old:
        yield f"{amount_said(thing, old)} at home will be too old"


def enough_said(found: ShoppingList) -> tuple[str, ...]:
    """What there is enough of at home: `black treacle: 48 g of 300 g, the low shelf`."""
    return tuple(
        f"{size_said(line.thing.name)}: {amount_said(line.thing, needed_shown(line.thing, line.needs))}"
        + (" from the eggs" if line.from_eggs else f" of {_there(line)}")
        + (f", {line.thing.kept_in}" if line.thing.kept_in else "")
        for line in found.enough
    )


def _there(line: ShopLine) -> str:
    return amount_said(line.thing, home_shown(line.thing, line.there))


def over_said(found: ShoppingList) -> tuple[str, ...]:
    """What will be left of what is bought: `butter: 118 g`."""
    shown = [(line.thing, home_shown(line.thing, line.over)) for line in found.to_buy]
    return tuple(f"{size_said(thing.name)}: {amount_said(thing, left)}" for thing, left in shown if left)


def told_besides(found: Shopping) -> Iterator[str]:
    """What else is to be known: what is on no card, tins the house has none of, orders that are left out."""
    listed = found.list
    if listed.some:
        yield f"Also needed, but the book cannot say how much: {', '.join(listed.some)}."
    if listed.tins:
        yield f"Not among your tins: {', '.join(map(formats.tin_words, listed.tins))}."
    for handle, why in found.not_made:
        yield f"{handle} is not on the list: {why}."
    if found.only_asked:
        yield f"Only asked for so far, so not on this list: {', '.join(found.only_asked)}."
    if found.unknown:
        told = ", ".join(found.unknown)
        yield f"The book has changed since these went out, so what they used is not taken off the stock: {told}."
    yield from _shorts(listed)


def _shorts(found: ShoppingList) -> Iterator[str]:
    """Where more was used than anybody had counted: the count is worth doing again."""
    short = [line.thing.name for line in found.lines if (of := found.stock.get(line.thing.name)) and of.short > 0.0]
    if short:
        yield f"More of these was used than you had counted, so count them again: {', '.join(short)}."


def to_find(places: Iterable[ShopPlace]) -> str:
    """`30 things`."""
    return plural(sum(len(place.rows) for place in places), "thing")
