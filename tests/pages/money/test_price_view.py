"""A cake's price as it is rendered."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.pages.money.conftest import WEDDING, number, with_others

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.price_view import CakePriceView
from tinbook.plans.cakes.sizes import cake_sizes


@pytest.fixture(scope="module")
def view(money_desk: Desk) -> CakePriceView:
    return CakePriceView("lighthouse-cake", money_desk)


def rendered(view: CakePriceView) -> str:
    page = Page(address="orders/price/lighthouse-cake", title="Price", template="price", view=view, section=("Orders",))
    return page.fill(page.markdown, lambda address, anchor="": address)


def test_it_shows_the_answer_the_sizes_and_what_if(view: CakePriceView) -> None:
    html = rendered(view)
    assert "<b>£190</b>" in html and "Kitchen only" in html and "<!--tinbook" not in html
    assert "search: {exclude: true}" in html
    for title in ("In every size", "What if", "Everything that is bought"):
        assert title in html, title
    assert (
        html.count('class="tb-bar tb-small-bar"') == len(view.sizes)
        and html.count('class="tb-bar"') == 1
        and "cakes/lighthouse-cake" in html
    )


def test_every_size_that_is_offered(view: CakePriceView, money_desk: Desk) -> None:
    offered = cake_sizes(money_desk.book.cakes["lighthouse-cake"], money_desk.book, money_desk.facts).offered
    assert len(view.sizes) == len(offered) and [each.own for each in view.sizes].count(True) == 1
    own = next(each for each in view.sizes if each.own)
    assert number(own.price) == 190.0 and own.serves == "24"
    assert view.figures[0].figure == own.each


def test_what_is_told_besides(view: CakePriceView, money_desk: Desk) -> None:
    told = dict(view.told)
    assert "butter, £8.60 a kilo, was 7.96" in told["Dearer than before"]
    assert told["The last time"].startswith("at the prices of 3 Oct 2026, £") and "Not priced" not in told
    old = dict(CakePriceView("estuary-wedding-cake", money_desk).told)
    assert "black treacle" in old["Older than half a year"]
    assert "lustre dust" in dict(CakePriceView("pier-cake", money_desk).told)["Not priced"]


def test_without_any_money_it_says_what_has_no_price(money_desk: Desk) -> None:
    bare = with_others(money_desk, prices=(), money=type(money_desk.book.others["money"])())
    view = CakePriceView("lighthouse-cake", replace(bare))
    html = rendered(view)
    assert "at least" in html and "butter" in dict(view.told)["Not priced"].lower() and view.lines[-1].figure == "0.00"
    assert view.bar == () and WEDDING not in html
