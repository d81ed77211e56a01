"""The shopping list in words."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from tinbook.loading import Loaded
from tinbook.models import read_model
from tinbook.models.packs import read_amount
from tinbook.models.stock import StockEntry
from tinbook.pages.orders.shop_lines import (
    amount_said,
    enough_said,
    name_said,
    over_said,
    shop_places,
    to_find,
    told_besides,
)
from tinbook.pages.spelling.formats import NBSP
from tinbook.plans.shopping.asked import Shopping, shopping
from tinbook.plans.shopping.needs import OrderNeeds
from tinbook.plans.shopping.shopping import shopping_list
from tinbook.plans.shopping.stock import reckoned
from tinbook.plans.shopping.things import Things

TODAY = date(2026, 12, 7)


@pytest.fixture(scope="module")
def things(demo: Loaded) -> Things:
    return Things(demo.book, demo.facts)


@pytest.fixture(scope="module")
def found(demo: Loaded) -> Shopping:
    return shopping(demo.book, demo.facts, TODAY)


def entry(of: str, **more: str) -> StockEntry:
    read, flaws = read_model(StockEntry, {"day": "2026-12-01", "of": of, **more}, "this entry")
    assert read is not None, flaws
    return read


def test_what_is_bought_can_be_read_back_and_covers_what_is_missing(found: Shopping, things: Things) -> None:
    lines = {line.line: line for line in found.list.to_buy}
    rows = [row for place in shop_places(found.list) for row in place.rows]
    assert len(rows) == len(lines) > 20
    for row in rows:
        line = lines[row.line]
        said = [read_amount(text, things.book.house.spoons) for text in row.bought]
        total = sum(things.amount_of(line.thing, each) or 0.0 for each in said)
        assert total >= line.short * (1 - 1e-9), row.of
        assert things.called(row.of) is not None
        assert row.bought_said.split("|") == list(row.bought) and row.for_said.split("|") == list(row.slugs)


def test_shares_fill_their_bar(found: Shopping) -> None:
    for place in shop_places(found.list):
        for row in place.rows:
            assert sum(float(bar.wide) for bar in row.shares) == pytest.approx(100.0, abs=0.3)
            assert row.shares[0].left == "0.0"
            assert row.shares_said and set(row.slugs) <= {order.slug for order in found.list.orders}


def test_hatches_are_those_of_the_week(found: Shopping) -> None:
    hatches = {order.slug: 3 for order in found.list.orders}
    fills = {bar.fill for place in shop_places(found.list, hatches) for row in place.rows for bar in row.shares}
    assert fills == {"url(#tb-h3)"}


def one(demo: Loaded, things: Things, *log: StockEntry, **food: float) -> str:
    order = OrderNeeds(slug="a", handle="a", day=date(2026, 12, 9), food=food)
    listed = shopping_list([order], {"a"}, reckoned(log, [], things), demo.book, demo.facts, 0.05)
    rows = [row for place in shop_places(listed) for row in place.rows]
    return f"{rows[0].said} {' '.join(rows[0].buys[0])}" if rows else enough_said(listed)[0]


def test_as_it_is_read(demo: Loaded, things: Things) -> None:
    told = one(demo, things, entry("butter", counted="100 g"), butter=1000.0).replace(NBSP, " ")
    assert told == "1000 g needed, 50 g spare, 100 g at home 4 × 250 g"
    told = one(demo, things, entry("milk", counted="1 l", opened="2026-12-01"), milk=100.0).replace(NBSP, " ")
    assert "none at home, 1000 ml at home will be too old" in told
    told = one(demo, things, entry("butter", counted="2 kg"), butter=1000.0).replace(NBSP, " ")
    assert told == "butter: 1000 g of 2000 g"


def test_places_names_and_amounts(found: Shopping, things: Things) -> None:
    places = shop_places(found.list)
    assert [place.name for place in places] == [
        "Fridge at the grocer's",
        "Shelves at the grocer's",
        "Cake-decorating shop",
    ]
    assert to_find(places).replace(NBSP, " ") == f"{len(found.list.to_buy)} things"
    ribbon, drum = things.called("ribbon, 15 mm"), things.called("drum, round 30 cm")
    assert ribbon and drum
    assert amount_said(ribbon, 8630.0).replace(NBSP, " ") == "8.63 m" and amount_said(drum, 2.0) == "2"
    assert name_said(drum).replace(NBSP, " ") == "Drum, round 30 cm"


def test_what_is_left_over_is_what_is_bought_less_what_is_needed(demo: Loaded, things: Things) -> None:
    order = OrderNeeds(slug="a", handle="a", day=TODAY, food={"butter": 600.0})
    listed = shopping_list([order], {"a"}, {}, demo.book, demo.facts)
    assert [said.replace(NBSP, " ") for said in over_said(listed)] == ["butter: 150 g"]


def test_what_else_is_to_be_known(found: Shopping, things: Things) -> None:
    order = OrderNeeds(slug="o", handle="o", day=TODAY, food={"butter": 900.0})
    stock = reckoned([entry("butter", counted="300 g")], [order], things)
    listed = replace(found.list, some=("cake",), tins=("round 33 cm",), stock=stock)
    whole = replace(found, list=listed, not_made=(("quay", "too wide"),), only_asked=("cups",), unknown=("old",))
    told = " ".join(told_besides(whole))
    for said in (
        "cake",
        "round\u00a033",
        "quay is not on the list: too wide.",
        "cups",
        "old",
        "count them again: butter",
    ):
        assert said.replace(NBSP, " ") in told.replace(NBSP, " ")
