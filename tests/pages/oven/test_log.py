"""The log of a busy house: the newest on the oven's page, older ones behind it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest

from tinbook.models import Book
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.oven.log import NEWEST, OLDER, log_sheets
from tinbook.pages.oven.oven import oven_pages


@pytest.fixture
def busy(desk: Desk) -> Desk:
    """A bake a day for a year."""
    (first, *_) = (bake for bake in desk.book.bakes if bake.of == "creamed-butter-sponge")
    days = [date(2026, 1, 1) + timedelta(days=at) for at in range(NEWEST + OLDER + 65)]
    book: Book = replace(desk.book, bakes=tuple(replace_day(first, day) for day in days))
    return replace(desk, book=book)


def replace_day(bake: object, day: date) -> object:
    return bake.model_copy(update={"day": day})  # type: ignore[attr-defined]


def days_of(page: Page) -> list[str]:
    text = page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}")
    return [part.partition("<")[0] for part in text.split("<th scope=row>")[1:]]


def test_every_bake_is_on_one_page_newest_first(busy: Desk) -> None:
    pages = [page for page in oven_pages(busy) if page.template in ("oven", "oven_log")]
    assert [page.address for page in pages] == ["oven", "lists/oven/2", "lists/oven/3"]
    days = [days_of(page) for page in pages]
    assert [len(each) for each in days] == [NEWEST, OLDER, 65]
    whole = [day for each in days for day in each]
    assert whole == sorted(whole, reverse=True) and len(set(whole)) == len(busy.book.bakes)


def test_a_short_log_stays_where_it_is(desk: Desk, filled: Callable[[str], str]) -> None:
    assert log_sheets(desk, "oven") == () and "tb-sheets" not in filled("oven")
