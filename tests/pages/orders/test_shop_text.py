"""The list as text to send and as data."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date

import pytest

from tinbook.loading import Loaded
from tinbook.pages.orders.shop_text import shop_data, shop_text, stock_lines
from tinbook.plans.shopping.asked import Shopping, shopping


@pytest.fixture(scope="module")
def found(demo: Loaded) -> Shopping:
    return shopping(demo.book, demo.facts, date(2026, 12, 7))


def test_text_is_plain_and_has_every_line(found: Shopping) -> None:
    text = "\n".join(shop_text(found))
    assert "\u00a0" not in text and "Fridge at the grocer's\n  " in text
    for line in found.list.to_buy:
        assert line.thing.name[1:].replace(" x ", " × ") in text
    assert "Enough at home\n" in text and "Left over\n" in text


def test_with_no_orders_it_says_so(found: Shopping) -> None:
    none = replace(found, list=replace(found.list, orders=(), lines=(), some=(), tins=(), stock={}), only_asked=())
    assert list(shop_text(none)) == ["There is nothing to buy: no order that is agreed is still to go out."]


def test_data_are_exact_and_have_their_units(found: Shopping) -> None:
    data = json.loads(json.dumps(shop_data(found)))
    told = {each["of"]: each for each in data["lines"]}
    for line in found.list.lines:
        unit = {"food": "g", "length": "mm", "pieces": "count"}[line.thing.unit]
        each = told[line.thing.name]
        assert each[f"needed_{unit}"] == line.needs and each[f"missing_{unit}"] == line.short
        assert sum(share[f"needed_{unit}"] for share in each["shares"]) == pytest.approx(line.needs)
    assert [each["order"] for each in data["orders"]] == [order.slug for order in found.list.orders]


def test_how_the_stock_came_about(found: Shopping) -> None:
    lines = list(stock_lines(found))
    assert "butter: 500 g counted on Sat 28 Nov; 500 g left" in lines
    assert any("of it is opened" in line for line in lines)
