"""A cost in lines that add down the page, and a bar of where the money goes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import accumulate

from tinbook.pages.base.shared import plural
from tinbook.pages.money.sums import SumWords
from tinbook.pages.orders.shop_lines import amount_said, name_said
from tinbook.pages.orders.week import fill_of
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.money import share
from tinbook.pages.spelling.orders import lasts
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.money.cost import (
    BOARDS,
    DRIVE,
    GROUPS,
    HANDS,
    HOURS,
    HOUSE,
    INGREDIENTS,
    KEPT_UP,
    OVEN,
    ROAD,
    CostRow,
    CostSum,
)
from tinbook.plans.money.offered import Priced
from tinbook.plans.money.shares import OF_ALL, shares_of
from tinbook.plans.money.tables import row_said
from tinbook.plans.money.till import Till
from tinbook.plans.shopping.shown import needed_shown

FEW = {INGREDIENTS: 5, BOARDS: 2}
"""How many things of a group have a line; the others share one, and are in the fold."""
TITLES = {
    INGREDIENTS: "Ingredients", BOARDS: "Boards and box", HOURS: "Hours", KEPT_UP: "The kitchen and the oven",
    ROAD: "The road", OF_ALL: "Added, and rounding", "vat": "VAT",
}  # fmt: skip
HATCH = {HOURS: 0, INGREDIENTS: 1, KEPT_UP: 4, BOARDS: 2, ROAD: 3}
PLAIN = 5
LEAST_PERCENT = 7
"""A part of the bar that is smaller has no room for its figure."""
SUM, GAP, TOTAL, PRICE = "tb-sum", "tb-sum tb-gap", "tb-sum", "tb-sum tb-price"


@dataclass(frozen=True, slots=True, kw_only=True)
class SumLine:
    """A line of a sum: its figure (empty: not known), what it is, and what else is said; `kind` is how it stands."""

    figure: str
    what: str
    more: str = ""
    kind: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BarPart:
    """A part of the bar, in percent from its left, and its line in the legend."""

    left: str
    wide: str
    middle: str
    fill: str
    label: str
    name: str
    figure: str
    percent: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CostLine:
    """Everything of a cost, one thing to a line: how much is used, what that costs, in packs, and what of these is
    over."""

    what: str
    used: str
    cost: str
    packs: str
    over: str


def sum_lines(found: Priced, till: Till) -> Iterator[SumLine]:
    """From the first ingredient down to the price."""
    words = SumWords(till.money)
    for group in (INGREDIENTS, BOARDS):
        yield from _group_lines(found.cost.of(group), group, words)
    for row in found.cost.of(HOURS, KEPT_UP, ROAD).rows:
        yield SumLine(figure=_figure(row.shown, words), what=what_said(row), more=_rate(row, till, words))
    yield SumLine(figure=words.plain(found.cost.shown), what="Cost", more=_least(found.cost, words), kind=SUM)
    made, money = found.price, till.money
    told = f"{share(till.mark_up)} of the cost, {share(till.margin)} of the price"
    if till.mark_up:
        name = "Margin" if money.margin is not None else "Mark-up"
        yield SumLine(figure=words.plain(made.added), what=f"Added: {name.lower()}", more=told)
    if made.rounding:
        step = f"up to the next {words.short(money.round_up_to.amount)}" if money.round_up_to else ""
        name = "Up to the least we take" if made.least else "Rounding"
        yield SumLine(figure=words.plain(made.rounding), what=name, more="" if made.least else step)
    if money.vat:
        yield SumLine(figure=words.plain(made.vat), what="VAT", more=share(money.vat))
    least = "" if found.sure else "at least: something has no price"
    yield SumLine(figure=words.plain(made.price), what="Price", more=least, kind=PRICE)


def _group_lines(found: CostSum, group: str, words: SumWords) -> Iterator[SumLine]:
    if not found.rows:
        return
    known = [row for row in found.rows if row.exact is not None]
    unknown = [row for row in found.rows if row.exact is None]
    few, rest = known[: FEW[group]], CostSum(rows=tuple(known[FEW[group] :]))
    if len(rest.rows) == 1:
        few, rest = known, CostSum(rows=())
    for row in few:
        yield SumLine(figure=_figure(row.shown, words), what=what_said(row), more=used_said(row))
    if rest.rows:
        yield SumLine(figure=words.plain(rest.shown), what=plural(len(rest.rows), "other thing"))
    if unknown:
        names = formats.sentence(what_said(row).lower() for row in unknown)
        yield SumLine(figure="?", what=f"No price yet: {names}", kind="tb-unknown")
    packs = f"in whole packs {words.plain(found.bought_shown)}" if found.bought_shown != found.shown else ""
    yield SumLine(figure=words.plain(found.shown), what=TITLES[group], more=packs, kind=GAP)


def _least(cost: CostSum, words: SumWords) -> str:
    return f"{words.plain(cost.least_shown)} if all goes quickly" if cost.least_shown != cost.shown else ""


def _figure(shown: Decimal | None, words: SumWords) -> str:
    return "?" if shown is None else words.plain(shown)


def what_said(row: CostRow) -> str:
    """What a row is of: `Butter`, `Hours`."""
    return name_said(row.thing) if row.thing else formats.title(spell(row_said(row)))


def used_said(row: CostRow) -> str:
    """How much of it is used: `977 g`; nothing for what has no amount, and for a single board or box."""
    if row.thing is None or not row.amount:
        return ""
    shown = needed_shown(row.thing, row.amount)
    return "" if row.group == BOARDS and row.thing.kind == "count" and shown == 1.0 else amount_said(row.thing, shown)


def _rate(row: CostRow, till: Till, words: SumWords) -> str:
    """What a row of hours, the kitchen or the road is worked out from."""
    money, kept = till.money, till.money.kept_up
    if row.of == HANDS and money.an_hour:
        return f"{lasts(row.amount)} by the timetable, at {words.rate(money.an_hour.amount)} an hour"
    if row.of == HOUSE and kept and kept.an_hour:
        return f"{words.rate(kept.an_hour.amount)} an hour worked"
    if row.of == HOUSE and kept and kept.a_month and kept.cakes_a_month:
        return f"{words.rate(kept.a_month.amount)} a month over {plural(kept.cakes_a_month, 'order')}"
    if row.of == OVEN and money.oven:
        return f"on for {lasts(row.amount)}, at {words.rate(money.oven.a_kwh.amount)} a kilowatt-hour"
    if row.of == DRIVE and money.a_km:
        if row.exact is None:
            return "nobody has said how far it is: add “distance:” to the order"
        there = formats.with_unit(formats.number(round(row.amount, 1)), "km")
        return f"{there} there and back, at {words.rate(money.a_km.amount)} a kilometre"
    return ""


def bar(found: Priced, till: Till) -> tuple[BarPart, ...]:
    """Where the money goes, part by part; nothing for a price of nothing."""
    words = SumWords(till.money)
    parts = shares_of(found)
    ends = tuple(accumulate(part.share for part in parts))
    return tuple(
        BarPart(
            left=f"{float(end - part.share) * 100.0:.2f}%",
            wide=f"{float(part.share) * 100.0:.2f}%",
            middle=f"{float(end - part.share / 2) * 100.0:.2f}%",
            fill=fill_of(HATCH.get(part.of, PLAIN)),
            label=formats.with_unit(str(part.percent), "%") if part.percent >= LEAST_PERCENT else "",
            name=TITLES[part.of],
            figure=words.plain(part.amount),
            percent=formats.with_unit(str(part.percent), "%"),
        )
        for part, end in zip(parts, ends, strict=True)
    )


def bar_said(parts: Sequence[BarPart]) -> str:
    """The bar in words, for whoever does not see it."""
    return ", ".join(f"{part.name} {part.percent}" for part in parts)


def cost_lines(cost: CostSum, till: Till) -> Iterator[CostLine]:
    """Everything in a cost that is bought."""
    words = SumWords(till.money)
    for row in cost.of(*GROUPS[:2]).rows:
        over = None if row.bought_shown is None or row.shown is None else row.bought_shown - row.shown
        yield CostLine(
            what=what_said(row) + (" (made here)" if row.through else ""),
            used=used_said(row),
            cost=_figure(row.shown, words),
            packs="" if row.bought is None else _figure(row.bought_shown, words),
            over="" if row.bought is None or over is None else words.plain(over),
        )
