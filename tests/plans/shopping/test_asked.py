"""Which orders a list is for, and what is known of those that are done."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from tests.plans.orders.conftest import CUPS, Ordered
from tests.plans.shopping.conftest import SPONGE, TUBS, Entry, with_others

from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.shopping.asked import of_week, shopping, stock_of

TODAY = date(2026, 12, 5)


@pytest.fixture
def house(demo: Loaded, ordered: Ordered, entry: Entry) -> Book:
    orders = {
        "cups": ordered(CUPS, state="agreed"),
        "tubs": ordered(TUBS, state="asked", handle="tubs"),
        "sponge": ordered(SPONGE, state="agreed", handle="sponge"),
        "old": ordered(SPONGE, state="gone", handle="old", **{"hand over": "2026-12-03 09:00"}),
        "late": ordered(SPONGE, state="agreed", handle="late", **{"hand over": "2026-12-04 09:00"}),
    }
    return with_others(demo.book, order=orders, stock=(entry("butter", counted="2 kg"),))


def test_what_is_agreed_and_still_to_go_out(house: Book, demo: Loaded) -> None:
    found = shopping(house, demo.facts, TODAY)
    assert [order.slug for order in found.list.orders] == ["cups", "sponge"]
    assert found.only_asked == ("tubs",) and found.not_made == () and found.unknown == ()


def test_one_of_them_also_if_it_is_only_asked_for(house: Book, demo: Loaded) -> None:
    found = shopping(house, demo.facts, TODAY, ("tubs",))
    assert [order.slug for order in found.list.orders] == ["tubs"] and found.only_asked == ()


def test_a_week_begins_on_any_day(house: Book) -> None:
    assert of_week(house, date(2026, 12, 6), TODAY) == ("cups",)
    assert of_week(house, date(2026, 12, 12), TODAY) == ("cups", "sponge")
    assert of_week(house, date(2026, 12, 13), TODAY) == ("sponge",)
    assert of_week(house, date(2026, 11, 30), TODAY) == ()


def test_what_went_out_is_taken_off(house: Book, demo: Loaded) -> None:
    stock, unknown = stock_of(house, demo.facts)
    of = stock["butter"]
    assert unknown == () and [slug for slug, _ in of.used] == ["old"]
    assert of.left == pytest.approx(2000.0 - of.used[0][1]) and of.used[0][1] > 0.0


def test_what_went_before_the_first_count_does_not_matter(house: Book, demo: Loaded, entry: Entry) -> None:
    later = with_others(house, stock=(entry("butter", "2026-12-04", counted="2 kg"),))
    stock, _ = stock_of(later, demo.facts)
    assert stock["butter"].used == []


def test_an_order_whose_recipe_is_gone_is_said(house: Book, demo: Loaded) -> None:
    mixtures = {slug: each for slug, each in house.mixtures.items() if slug != "madeira-cake"}
    gone = {"old": house.others["order"]["old"]}
    book = with_others(replace(house, mixtures=mixtures), order=gone)
    assert stock_of(book, demo.facts)[1] == ("old",)


def test_an_order_that_cannot_be_made_is_told_and_the_rest_is_listed(
    house: Book, demo: Loaded, ordered: Ordered
) -> None:
    huge = ordered({"cake": "lighthouse-cake", "guests": "900", "hand over": "2026-12-11 11:00"}, state="agreed")
    book = with_others(house, order={**house.others["order"], "huge": huge})
    found = shopping(book, demo.facts, TODAY)
    assert [order.slug for order in found.list.orders] == ["cups", "sponge"] and len(found.not_made) == 1
