"""The shopping list as lines of text to send, and as plain data."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tinbook.pages.orders.shop_lines import amount_said, enough_said, over_said, shop_places, to_find, told_besides
from tinbook.pages.spelling.formats import NBSP
from tinbook.pages.spelling.orders import day
from tinbook.plans.shopping.asked import Shopping
from tinbook.plans.shopping.shopping import ShopLine
from tinbook.plans.shopping.shown import home_shown
from tinbook.plans.shopping.stock import Reckoned

UNITS = {"food": "g", "pieces": "count", "length": "mm"}


def shop_text(found: Shopping) -> Iterator[str]:
    """The list, place by place."""
    listed = found.list
    if not listed.orders:
        yield "There is nothing to buy: no order that is agreed is still to go out."
    else:
        whose = ", ".join(f"{order.handle} ({day(order.day)})" for order in listed.orders)
        places = shop_places(listed)
        yield f"{to_find(places)} to buy for {whose}".replace(NBSP, " ")
        for place in places:
            yield f"\n{place.name}"
            wide = max(len(_buys(row.buys)) for row in place.rows)
            for row in place.rows:
                yield f"  {_buys(row.buys):>{wide}}  {row.name} ({row.said})".replace(NBSP, " ")
        for title, told in (("Enough at home", enough_said(listed)), ("Left over", over_said(listed))):
            if told:
                yield f"\n{title}\n  {'; '.join(told)}.".replace(NBSP, " ")
    besides = list(told_besides(found))
    if besides:
        yield ""
    for more in besides:
        yield more.replace(NBSP, " ")


def _buys(buys: tuple[tuple[str, str], ...]) -> str:
    return " + ".join(f"{count} {size}".strip().replace("×", "x").replace(NBSP, " ") for count, size in buys)


def stock_text(name: str, of: Reckoned, line: ShopLine) -> Iterator[str]:
    """How what is there of a thing came about."""
    thing = line.thing

    def said(amount: float) -> str:
        return amount_said(thing, home_shown(thing, amount)).replace(NBSP, " ")

    start = f"{said(of.counted)} counted on {day(of.counted_on)}" if of.counted_on and of.counted is not None else ""
    parts = [start] if start else []
    parts += [f"{said(of.bought)} bought"] if of.bought else []
    parts += [f"{said(of.taken)} taken"] if of.taken else []
    parts += [f"{said(amount)} used for {slug}" for slug, amount in of.used]
    opened = sum(lot.amount for lot in of.lots if lot.opened)
    parts += [f"{said(opened)} of it is opened"] if opened else []
    yield f"{name}: {', '.join(parts)}; {said(of.left)} left"


def stock_lines(found: Shopping) -> Iterator[str]:
    """How what is there came about, for everything on the list."""
    for line in found.list.lines:
        of = found.list.stock.get(line.thing.name)
        if of and (of.counted is not None or of.bought):
            yield from stock_text(line.thing.name, of, line)


def shop_data(found: Shopping) -> dict[str, Any]:
    """The same as plain data, exact, with units in the keys."""
    listed = found.list
    return {
        "orders": [
            {"order": order.slug, "handle": order.handle, "goes_out": order.day.isoformat()} for order in listed.orders
        ],
        "lines": [_line(line) for line in listed.lines],
        "no_weight_known": list(listed.some),
        "tins_wanted": list(listed.tins),
        "not_made": [{"order": handle, "why": why} for handle, why in found.not_made],
        "only_asked": list(found.only_asked),
        "not_taken_off": list(found.unknown),
    }


def _line(line: ShopLine) -> dict[str, Any]:
    unit = UNITS[line.thing.unit]
    return {
        "line": line.line,
        "of": line.thing.name,
        "found_in": line.thing.found_in,
        "kept_in": line.thing.kept_in,
        f"needed_{unit}": line.needs,
        f"spare_{unit}": line.spare,
        f"at_home_{unit}": line.home,
        f"missing_{unit}": line.short,
        f"too_old_{unit}": line.too_old,
        f"left_over_{unit}": line.over,
        "packs": [{"count": count, "pack": pack.written} for count, pack in line.packs],
        "shares": [
            {"order": share.slug, f"needed_{unit}": share.needs, f"at_home_{unit}": share.home}
            for share in line.shares
        ],
    }  # fmt: skip
