"""The list itself, over random weeks and stocks: nothing short, nothing negative, nothing twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import product
from math import fsum, isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.plans.shopping.conftest import ORDERS, Entry, on

from tinbook.loading import Loaded
from tinbook.models.stock import StockEntry
from tinbook.plans.shopping.needs import OrderNeeds
from tinbook.plans.shopping.shopping import ShoppingList, shopping_list
from tinbook.plans.shopping.stock import reckoned
from tinbook.plans.shopping.things import Things

FIRST = date(2026, 12, 1)
GRAMS = (
    "butter",
    "egg",
    "icing sugar",
    "caster sugar",
    "milk",
    "sugarpaste",
    "gel food colour, white",
    "self-raising flour",
)
PIECES = ("drum, round 30 cm", "card, round 20 cm", "dowel, 6 mm x 30 cm", "lolly sticks")
SLIP = 1e-6


@st.composite
def weeks(draw: st.DrawFn) -> tuple[list[tuple[str, int]], list[tuple[str, str, str, int, bool]]]:
    """Orders with the days they go out, and lines of a stock."""
    slugs = draw(st.lists(st.sampled_from(sorted(ORDERS)), min_size=1, max_size=5, unique=True))
    days = [(slug, draw(st.integers(1, 20))) for slug in slugs]
    lines = []
    for _ in range(draw(st.integers(0, 12))):
        of = draw(st.sampled_from((*GRAMS, *PIECES)))
        act = draw(st.sampled_from(("counted", "counted", "bought", "taken")))
        amount = draw(st.integers(1, 3000 if of in GRAMS else 12))
        said = f"{amount} g" if of in GRAMS else str(amount)
        lines.append((of, act, said, draw(st.integers(0, 6)), draw(st.booleans())))
    return days, lines


def read(lines: Sequence[tuple[str, str, str, int, bool]], entry: Entry, for_: str) -> list[StockEntry]:
    found = []
    for of, act, said, day, kept in lines:
        when = FIRST + timedelta(days=day)
        more = {"for": [for_]} if kept and act == "bought" else {}
        if kept and act == "counted":
            more = {"opened": when.isoformat()}
        found.append(entry(of, when.isoformat(), **{act: said}, **more))
    return found


def made(pool: dict[str, OrderNeeds], days: Sequence[tuple[str, int]]) -> list[OrderNeeds]:
    return [on(pool[slug], FIRST + timedelta(days=6 + day)) for slug, day in days]


@given(week=weeks(), spare=st.sampled_from((0.0, 0.05)))
def test_every_week_is_covered_and_nothing_is_counted_twice(
    week: tuple[list[tuple[str, int]], list[tuple[str, str, str, int, bool]]],
    spare: float,
    pool: dict[str, OrderNeeds],
    entry: Entry,
    things: Things,
    demo: Loaded,
) -> None:
    days, lines = week
    orders = made(pool, days)
    stock = reckoned(read(lines, entry, days[0][0]), [], things)

    def listed(chosen: set[str]) -> ShoppingList:
        return shopping_list(orders, chosen, stock, demo.book, demo.facts, spare)

    whole = listed({order.slug for order in orders})
    for line in whole.lines:
        assert min(line.needs, line.spare, line.home, line.short, line.over, line.too_old, line.there) >= 0.0
        assert all(share.needs > 0.0 and share.home >= 0.0 for share in line.shares)
        assert line.needs == sum(share.needs for share in line.shares)
        assert isclose(line.needs + line.spare, line.home + line.short + line.from_eggs, rel_tol=1e-9), line
        assert line.home <= line.there * (1 + 1e-9) and line.rest <= line.there
        if line.packs:
            assert line.bought >= line.short - SLIP
            assert all(count > 0 for count, _ in line.packs)
    # each order by itself gets what the whole list gives it, so the lists one by one ask for no more
    alone = [listed({order.slug}) for order in orders]
    for line in whole.lines:
        mine = [each for one in alone for each in one.lines if each.thing.name == line.thing.name]
        assert isclose(fsum(each.home for each in mine), line.home, abs_tol=SLIP)
        assert isclose(fsum(each.short for each in mine), line.short, rel_tol=1e-9, abs_tol=SLIP)


@given(week=weeks())
def test_sums_are_those_of_the_orders_to_the_last_digit(
    week: tuple[list[tuple[str, int]], list[tuple[str, str, str, int, bool]]],
    pool: dict[str, OrderNeeds],
    entry: Entry,
    things: Things,
    demo: Loaded,
) -> None:
    days, lines = week
    orders = made(pool, days)
    stock = reckoned(read(lines, entry, "none"), [], things)
    found = shopping_list(orders, {order.slug for order in orders}, stock, demo.book, demo.facts)
    by_time = sorted(orders, key=lambda each: (each.day, each.slug))
    told = {line.thing.name: line for line in found.lines}
    for name in {name for order in orders for name in order.food}:
        if not things.called(name).never and name != "egg":  # type: ignore[union-attr]
            assert told[name].needs == sum(order.food[name] for order in by_time if name in order.food)
    # what is wanted of whole eggs, and the eggs that are cracked for whites and yolks
    if "egg" in told:
        whole = fsum(order.food.get("egg", 0.0) for order in orders)
        assert isclose(told["egg"].needs, whole + told["egg"].for_parts, rel_tol=1e-12)


def test_packs_of_every_line_are_least_waste_against_every_way(
    pool: dict[str, OrderNeeds], things: Things, demo: Loaded
) -> None:
    """Of what keeps, so that it is rounded once: no other packs leave less, and no fewer leave as little."""
    orders = list(pool.values())
    found = shopping_list(orders, set(pool), {}, demo.book, demo.facts)
    checked = 0
    for line in found.to_buy:
        if line.thing.keeps_min is not None or not line.packs or len(line.thing.sizes) > 3:
            continue
        need = line.short / line.thing.per
        sizes = line.thing.sizes
        ways = product(*(range(int(need // size) + 2) for size in sizes))
        totals = [(sum(n * size for n, size in zip(way, sizes, strict=True)), sum(way)) for way in ways]
        best = min(way for way in totals if way[0] >= need - SLIP)
        mine = sum(count * pack.amount for count, pack in line.packs), sum(count for count, _ in line.packs)
        assert mine == pytest.approx(best), line.thing.name
        checked += 1
    assert checked > 10


def test_what_one_order_bought_is_not_asked_for_again_and_stays_its_own(
    pool: dict[str, OrderNeeds], entry: Entry, things: Things, demo: Loaded
) -> None:
    early, late = on(pool["cups"], date(2026, 12, 10)), on(pool["light"], date(2026, 12, 14))
    need = late.food["butter"]
    packs = int(need // 250) + 1
    stock = reckoned([entry("butter", bought=f"{packs} x 250 g", **{"for": ["light"]})], [], things)
    of_late = shopping_list([early, late], {"light"}, stock, demo.book, demo.facts)
    line = next(each for each in of_late.lines if each.thing.name == "butter")
    assert not line.to_buy and line.home == need
    of_early = shopping_list([early, late], {"cups"}, stock, demo.book, demo.facts)
    line = next(each for each in of_early.lines if each.thing.name == "butter")
    # the earlier order only gets what the later leaves
    left = packs * 250.0 - need
    assert line.home == pytest.approx(min(left, early.food["butter"]))


def test_what_does_not_keep_is_bought_for_each(pool: dict[str, OrderNeeds], things: Things, demo: Loaded) -> None:
    """Milk keeps three days once it is opened: two days apart one bottle does, ten days apart there are two."""
    bare = OrderNeeds(slug="a", handle="a", day=FIRST, food={"milk": 100.0})

    def bottles(days: int) -> int:
        other = replace(bare, slug="b", day=FIRST + timedelta(days=days))
        found = shopping_list([bare, other], {"a", "b"}, {}, demo.book, demo.facts)
        return sum(count for line in found.lines for count, _ in line.packs)

    assert (bottles(2), bottles(10)) == (1, 2)


def test_what_is_spare_is_asked_for_but_needed_by_none(pool: dict[str, OrderNeeds], demo: Loaded) -> None:
    found = shopping_list([pool["cups"]], {"cups"}, {}, demo.book, demo.facts, 0.1)
    line = next(each for each in found.lines if each.thing.name == "butter")
    assert line.needs == pool["cups"].food["butter"]
    assert line.short == pytest.approx(line.needs * 1.1) and line.spare == pytest.approx(line.needs * 0.1)


def test_what_is_never_bought_is_not_listed(demo: Loaded) -> None:
    order = OrderNeeds(slug="a", handle="a", day=FIRST, food={"water": 500.0, "butter": 10.0})
    assert [line.thing.name for line in shopping_list([order], {"a"}, {}, demo.book, demo.facts).lines] == ["butter"]


def test_whites_come_out_of_eggs_and_are_not_asked_for(things: Things, demo: Loaded) -> None:
    """Two whites and five yolks are five eggs; with five whole ones besides, ten."""
    white, yolk, egg = (things.one(things.of_card(name), "count") or 0.0 for name in ("egg white", "egg yolk", "egg"))
    food = {"egg white": 2 * white, "egg yolk": 5 * yolk, "egg": 5 * egg}
    order = OrderNeeds(slug="a", handle="a", day=FIRST, food=food)
    found = shopping_list([order], {"a"}, {}, demo.book, demo.facts)
    (line,) = found.to_buy
    assert line.thing.name == "egg" and line.short == pytest.approx(10 * egg)
    assert [(count, pack.amount) for count, pack in line.packs] == [(1, 10.0)]
    assert {each.thing.name for each in found.enough} == {"egg white", "egg yolk"}


def test_places_come_in_the_order_of_the_cards(pool: dict[str, OrderNeeds], demo: Loaded) -> None:
    found = shopping_list(list(pool.values()), set(pool), {}, demo.book, demo.facts)
    places = list(dict.fromkeys(line.thing.found_in for line in found.lines))
    named = [place for place in places if place]
    assert named == ["fridge at the grocer's", "shelves at the grocer's", "cake-decorating shop"]
    assert places[len(named) :] in ([], [""])
