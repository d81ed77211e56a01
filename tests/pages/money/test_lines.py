"""A cost in lines: what is printed adds up, line by line."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from tests.pages.money.conftest import number
from tests.plans.money.conftest import money

from tinbook.pages.base.page import Desk
from tinbook.pages.money.lines import bar, bar_said, cost_lines, sum_lines
from tinbook.plans.money.offered import Priced, cake_priced
from tinbook.plans.money.till import Till, till_of


@pytest.fixture(scope="module")
def till(money_desk: Desk) -> Till:
    return till_of(money_desk.book, money_desk.facts, money_desk.bakes)


@pytest.fixture(scope="module")
def wedding(till: Till) -> Priced:
    return cake_priced("estuary-wedding-cake", None, till)


def test_lines_add_down_to_the_price(wedding: Priced, till: Till) -> None:
    """Groups to their sums, these and the hours to the cost, and the cost with what is added to the price."""
    group, cost, price = 0.0, 0.0, 0.0
    sums = 0
    for line in sum_lines(wedding, till):
        figure = number(line.figure)
        if "tb-gap" in line.kind:
            assert figure == pytest.approx(group, abs=0.001), line.what
            cost, group, sums = cost + figure, 0.0, sums + 1
        elif line.what == "Cost":
            assert figure == pytest.approx(cost + group, abs=0.001)
            price, group = figure, 0.0
        elif "tb-price" in line.kind:
            assert figure == pytest.approx(price + group, abs=0.001) == float(wedding.price.price)
        else:
            group += figure
    assert sums == 2


def test_margin_and_vat_are_named(wedding: Priced, till: Till) -> None:
    own = replace(till, money=money(currency="GBP", margin="20 %", vat="20 %", least="9999"))
    found = cake_priced("estuary-wedding-cake", None, own)
    told = {line.what: line.more for line in sum_lines(found, own)}
    assert told["Added: margin"] == "25\xa0% of the cost, 20\xa0% of the price" and told["VAT"] == "20\xa0%"
    assert "Up to the least we take" in told
    plain = {line.what: line.more for line in sum_lines(wedding, till)}
    assert plain["Added: mark-up"] == "18\xa0% of the cost, 15.3\xa0% of the price"
    assert "in whole packs" in plain["Ingredients"] and plain["Rounding"] == "up to the next £5"


def test_what_has_no_price_is_named(till: Till) -> None:
    found = cake_priced("pier-cake", None, till)
    lines = list(sum_lines(found, till))
    unknown = [line for line in lines if line.figure == "?"]
    assert unknown and any("lustre dust" in line.what for line in unknown) and lines[-1].more.startswith("at least")


def test_the_bar_is_whole(wedding: Priced, till: Till) -> None:
    parts = bar(wedding, till)
    assert sum(float(part.wide.rstrip("%")) for part in parts) == pytest.approx(100.0, abs=0.1)
    assert sum(number(part.figure) for part in parts) == pytest.approx(float(wedding.price.price))
    assert sum(int(part.percent.partition("\xa0")[0]) for part in parts) == 100
    assert len({part.fill for part in parts}) == len(parts) and parts[0].name in bar_said(parts)


def test_everything_that_is_bought(wedding: Priced, till: Till) -> None:
    lines = list(cost_lines(wedding.cost, till))
    known = wedding.cost.of("ingredients", "boards")
    assert sum(number(line.cost) for line in lines) == pytest.approx(float(known.shown))
    for line in lines:
        if line.packs:
            assert Decimal(str(number(line.over))) == Decimal(str(number(line.packs))) - Decimal(str(number(line.cost)))
