"""Costs and prices of random cakes in random currencies against the same sums in fractions, to the last digit."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any

import pytest
from tests.conftest import demo_book
from tests.every import all_seeds, check_every
from tests.oracles.costs import Asked, Bill, Rates, Receipt, Taken, asked, billed, in_coins

from tinbook.models import read_model
from tinbook.models.currency import currencies
from tinbook.models.money import HouseMoney, PricePaid
from tinbook.models.orders import Order
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.cost import GROUPS, CostSum, asked_for, cost_of
from tinbook.plans.money.hours import OrderHours, hours_of
from tinbook.plans.money.offered import Priced
from tinbook.plans.money.paid import paid_prices
from tinbook.plans.money.shares import shares_of
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked, worked_order
from tinbook.plans.shopping.needs import needs_of
from tinbook.plans.shopping.shopping import shopping_list
from tinbook.plans.shopping.things import FOOD, LENGTH, Things

SEEDS = range(4000) if all_seeds() else range(100)
GUESTS = range(10, 121, 1 if all_seeds() else 30)
FAR = {"30 min": {"distance": "18 km"}, "12 min": {"distance": "7.5 miles"}}
PEOPLED = (
    {"class": {"techniques": ["rope-edge", "cover-a-board"], "people": "5", "lasts": "3 h"}},
    {"mixtures": [{"mixture": "modelling-paste", "count": "2"}, {"mixture": "royal-icing", "count": "1"}]},
    {"mixtures": [{"mixture": "cupcakes", "count": "48"}]},
    {"mixtures": [{"mixture": "marzipan", "count": "3"}, {"mixture": "rich-fruit-cake", "count": "2"}]},
)


@dataclass(frozen=True)
class Made:
    """An order with the hours it takes and what it needs; each is worked out once."""

    worked: OrderWorked
    hours: OrderHours
    taken: tuple[Taken, ...]
    nameless: frozenset[str]


@cache
def room() -> tuple[Things, Bakes]:
    loaded = demo_book()
    return Things(loaded.book, loaded.facts), Bakes(loaded.book, loaded.facts)


def till(money: HouseMoney, paid: Sequence[PricePaid]) -> Till:
    things, bakes = room()
    return Till(things, bakes, money, paid_prices(paid, things))


def read(cls: Any, data: Mapping[str, Any]) -> Any:
    found, flaws = read_model(cls, data, "it", demo_book().book.house.spoons)
    assert found is not None and not flaws, flaws
    return found


@cache
def made(at: int, guests: int, road: str) -> Made | None:
    """The order of that place; None for a cake that cannot be made for so many."""
    cakes = sorted(demo_book().book.cakes)
    what = {"cake": cakes[at], "guests": str(guests)} if at < len(cakes) else PEOPLED[at - len(cakes)]
    more = {"delivered": road, **FAR[road]} if road and "class" not in what else {}
    order = read(Order, {"handle": "quay", "hand over": "2026-12-05 11:00", **what, **more})
    things, bakes = room()
    try:
        worked = worked_order("quay", order, things.book, things.facts, bakes)
    except AskError:
        return None
    mine = till(HouseMoney(), ())
    needs = needs_of(worked, things)
    spare = mine.kitchen.spare or 0.0
    listed = shopping_list([needs], {"quay"}, {}, things.book, things.facts, spare)
    taken = tuple(
        Taken(
            name=line.thing.name,
            amount=line.needs,
            eaten=line.thing.unit == FOOD,
            like=line.thing.card,
            packs=tuple((count, pack.amount * line.thing.per) for count, pack in line.packs),
        )
        for line in listed.lines
        if not line.from_eggs
    )
    return Made(worked, hours_of(worked, mine), taken, frozenset(listed.some))


def random_sum(rng: random.Random, most: float, places: int) -> str:
    return f"{rng.uniform(0, most):.{places}f}"


def random_money(rng: random.Random) -> tuple[HouseMoney, Rates]:
    """A house's money, as it is read; and the same as fractions of what was written."""
    code = rng.choice((*sorted(currencies()), "GBP", "JPY", "BHD"))
    places = read(HouseMoney, {"currency": code}).currency.places
    scale = rng.choice((1, 10, 1000))
    told: dict[str, Any] = {
        "an hour": random_sum(rng, 30 * scale, rng.randint(0, 4)), "packaging": random_sum(rng, 4 * scale, places),
        "a km": random_sum(rng, scale, 3), "wasted": f"{rng.randint(0, 15)} %", "round up to": random_sum(rng, 10 * scale, places),
        "least": random_sum(rng, 500 * scale, places), "VAT": f"{rng.choice(('5', '7.7', '20', '25', '5.5', '0'))} %",
    }  # fmt: skip
    how = rng.choice(("mark-up", "margin", ""))
    added = f"{rng.uniform(0, 60):.1f}"
    if how:
        told[how] = f"{added} %"
    rates: dict[str, Any] = {}
    if rng.random() < 0.5:
        hour = random_sum(rng, 5 * scale, 2)
        told["kept up"], rates["by_hour"] = {"an hour": hour}, Fraction(hour)
    else:
        month, cakes = random_sum(rng, 300 * scale, 2), rng.randint(1, 40)
        told["kept up"] = {"a month": month, "cakes a month": str(cakes)}
        rates["by_order"] = Fraction(month) / cakes
    power, energy = f"{rng.uniform(0.5, 4):.2f}", random_sum(rng, scale, 4)
    told["oven"] = {"draws": f"{power} kW", "a kWh": energy}
    if Fraction(told["round up to"]) == 0 or rng.random() < 0.3:
        del told["round up to"]
    for key in ("an hour", "packaging", "a km", "wasted", "least", "VAT", "oven", "kept up"):
        if rng.random() < 0.2:
            told.pop(key)
    if "kept up" not in told:
        rates = {}

    def plain(key: str, whole: int = 1) -> Fraction:
        return Fraction(told.get(key, "0").removesuffix(" %")) / whole

    return read(HouseMoney, {"currency": code, **told}), Rates(
        places=places, wage=plain("an hour"), packaging=plain("packaging"), a_km=plain("a km"), wasted=plain("wasted", 100),
        oven_hour=Fraction(power) * Fraction(energy) if "oven" in told else Fraction(0), step=plain("round up to"),
        least=plain("least"), vat=plain("VAT", 100), mark_up=plain("mark-up", 100),
        margin=plain("margin", 100) if how == "margin" else None, **rates,
    )  # fmt: skip


def random_prices(
    rng: random.Random, taken: Sequence[Taken], places: int
) -> tuple[list[PricePaid], dict[str, list[Receipt]]]:
    """A log of prices: some things have none, some several, some in the packs they are bought in."""
    things, _ = room()
    log: list[PricePaid] = []
    receipts: dict[str, list[Receipt]] = {}
    for name in dict.fromkeys(name for each in taken for name in (each.name, each.like) if name):
        thing = things.called(name)
        if thing is None or rng.random() < 0.15:
            continue
        days = sorted(rng.sample(range(1, 29), rng.randint(1, 3)))
        for day in days:
            unit = "g" if thing.unit == FOOD else "m" if thing.unit == LENGTH else ""
            pack = rng.choice([pack.written for pack in thing.packs] or [f"{rng.randint(1, 40)} {unit}".strip()])
            if rng.random() < 0.3:
                pack = f"{rng.randint(1, 2000 if unit == 'g' else 60)} {unit}".strip()
            price = random_sum(rng, 40, places)
            entry = read(PricePaid, {"day": f"2026-11-{day:02d}", "of": name, "pack": pack, "price": price})
            amount = things.amount_of(thing, entry.pack)
            assert amount
            log.append(entry)
            receipts.setdefault(name, []).append(Receipt(price=Fraction(price), amount=amount))
    rng.shuffle(log)
    return log, receipts


@dataclass(frozen=True)
class Case:
    """One random order in a random house, worked out both ways."""

    made: Made
    till: Till
    rates: Rates
    receipts: Mapping[str, Sequence[Receipt]]
    found: CostSum
    bill: Bill
    wanted: Asked


def case(seed: int) -> Case | None:
    rng = random.Random(seed)
    places = len(demo_book().book.cakes) + len(PEOPLED)
    order = made(rng.randrange(places), rng.choice(GUESTS), rng.choice(("", *FAR)))
    if order is None:
        return None
    money, rates = random_money(rng)
    log, receipts = random_prices(rng, order.taken, rates.places)
    mine = till(money, log)
    found = cost_of(order.worked, order.hours, mine)
    distance = order.worked.order.distance
    far = Fraction(distance) if distance is not None else None
    bill = billed(order.taken, receipts, rates, order.hours.hands_min, order.hours.oven_min, far)
    return Case(order, mine, rates, receipts, found, bill, asked(bill, rates))


def exactly(amount: Decimal | None) -> Fraction:
    assert amount is not None
    return Fraction(amount)


@pytest.mark.long
def test_each_row_and_the_price_to_the_last_digit() -> None:
    tried, seen = 0, set[str]()

    def check(seed: int) -> None:
        nonlocal tried
        it = case(seed)
        if it is None:
            return
        tried += 1
        seen.add(it.till.money.currency.code)
        rows = {row.of: row for row in it.found.rows}
        assert len(rows) == len(it.found.rows)
        assert set(it.found.unknown) == it.bill.unknown | it.made.nameless
        for name, exact in it.bill.exact.items():
            # what costs nothing because the house says nothing of it has no row
            assert (name in rows and exactly(rows[name].exact) == exact) or (name not in rows and not exact), name
        assert {name for name, row in rows.items() if row.exact is not None} <= set(it.bill.exact)
        for name, bought in it.bill.packs.items():
            assert exactly(rows[name].bought) == bought, name
        assert {row.of for row in it.found.rows if row.bought is not None} == set(it.bill.packs)
        made_price = asked_for(it.found, it.till)
        wanted = it.wanted
        assert exactly(made_price.cost) == wanted.cost
        assert exactly(made_price.added) == wanted.added
        assert (exactly(made_price.price), exactly(made_price.vat)) == (wanted.price, wanted.vat)

    check_every(SEEDS, check)
    assert tried > len(SEEDS) * 0.6 and len(seen) > 30


@pytest.mark.long
def test_printed_rows_add_up_to_the_printed_sum_and_exact_ones_to_the_exact() -> None:
    tried = 0

    def check(seed: int) -> None:
        nonlocal tried
        it = case(seed)
        if it is None:
            return
        tried += 1
        places, known = it.rates.places, [row for row in it.found.rows if row.exact is not None]
        assert sum(exactly(row.exact) for row in known) == exactly(it.found.exact)
        assert sum(exactly(row.shown) for row in known) == exactly(it.found.shown)
        for row in known:
            assert exactly(row.shown) == in_coins(exactly(row.exact), places)
            assert row.least is None or 0 <= exactly(row.least) <= exactly(row.exact)
        assert sum(exactly(it.found.of(group).shown) for group in GROUPS) == exactly(it.found.shown)
        price = asked_for(it.found, it.till)
        parts = (price.cost, price.added, price.rounding, price.vat)
        assert all(part >= 0 for part in parts)
        assert sum(map(exactly, parts)) == exactly(price.price)
        whole = Priced(
            worked=it.made.worked, hours=it.made.hours, cost=it.found, price=price, serves=0, coin=it.till.coin
        )
        shares = shares_of(whole)
        if price.price:
            assert sum(exactly(each.amount) for each in shares) == exactly(price.price)
            assert sum(each.percent for each in shares) == 100

    check_every(SEEDS, check)
    assert tried > len(SEEDS) * 0.6


@pytest.mark.long
def test_a_price_that_rises_makes_nothing_cheaper() -> None:
    rose = 0

    def check(seed: int) -> None:
        nonlocal rose
        it = case(seed)
        if it is None or not it.receipts:
            return
        rng = random.Random(-seed)
        name = rng.choice(sorted(it.receipts))
        dearer = {
            of: tuple(replace(paid, price=paid.price + rng.randint(1, 9)) for paid in known) if of == name else known
            for of, known in it.till.paid.of.items()
        }
        then = replace(it.till, paid=replace(it.till.paid, of=dearer))
        after = cost_of(it.made.worked, it.made.hours, then)
        assert after.exact >= it.found.exact
        assert after.shown >= it.found.shown and after.bought_shown >= it.found.bought_shown
        assert asked_for(after, then).price >= asked_for(it.found, it.till).price
        rose += after.exact > it.found.exact

    check_every(SEEDS, check)
    assert rose > len(SEEDS) / 3


def test_twice_as_much_of_a_mixture_costs_twice_and_packs_go_in_steps() -> None:
    """By weight it is in proportion, but for a hundredth of a gram of each thing; packs are whole."""
    things, bakes = room()
    mine = till(read(HouseMoney, {"currency": "GBP"}), demo_book().book.others["prices"])
    by_weight: dict[int, CostSum] = {}
    for count in (1, 2, 4, 8):
        tubs = [{"mixture": "marzipan", "count": str(count)}]
        order = read(Order, {"handle": "q", "hand over": "2026-12-05 11:00", "mixtures": tubs})
        worked = worked_order("q", order, things.book, things.facts, bakes)
        by_weight[count] = cost_of(worked, hours_of(worked, mine), mine).of("ingredients")
        assert not by_weight[count].unknown
    for count, found in by_weight.items():
        near = Decimal("0.005") * len(found.rows)
        assert abs(found.exact - by_weight[1].exact * count) < near
    packs = [by_weight[count].bought_shown for count in sorted(by_weight)]
    assert packs == sorted(packs) and packs[0] > by_weight[1].shown
    # four times the cake wants less than four times the packs: the first ones were not used up
    assert packs[2] < 4 * packs[0]
