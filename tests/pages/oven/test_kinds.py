"""The oven's pages of each kind of mixture."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.models import Mixture
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.sheets import ROWS
from tinbook.pages.oven.kinds import MANY, baked_by_kind, kind_lines, kind_pages
from tinbook.pages.oven.oven import OvenView, oven_pages


def told(page: Page) -> str:
    return page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}")


@pytest.fixture
def large(desk: Desk, mixture: Callable[..., Mixture]) -> Desk:
    """So many creamed sponges that they need two pages, two mud cakes, and an icing."""
    many = {f"m{at:03}": mixture(name=f"M {at:03}") for at in range(ROWS + 5)}
    many |= {f"mud{at}": mixture(name=f"Mud {at}", kind="mud") for at in range(2)}
    many["cream"] = mixture(name="Cream", kind="buttercream", tins=None, bake=None)
    return replace(desk, book=replace(desk.book, mixtures=many, techniques={}, bakes=()))


def test_a_small_book_has_none(desk: Desk) -> None:
    assert sum(map(len, baked_by_kind(desk).values())) <= MANY
    assert kind_lines(desk) == () and not list(kind_pages(desk)) and OvenView(desk).here


def test_every_mixture_baked_is_in_both_tables_of_its_kind_once(large: Desk) -> None:
    pages = list(kind_pages(large))
    assert [page.address for page in pages] == ["oven/creamed", "lists/oven/creamed/2", "oven/mud"]
    assert [page.listed for page in pages] == [True, False, True]
    ways = [row.head for page in pages for row in page.view.items[page.part].ways.rows]
    loads = [row.head for page in pages for row in page.view.items[page.part].loads.rows]
    assert ways == loads == [each.name for slug, each in large.book.mixtures.items() if slug != "cream"]
    text = told(pages[1])
    assert "M 154" in text and "M 149" not in text and "What each bake involves" in text
    assert f"{ROWS + 1} to {ROWS + 5} of {ROWS + 5}" in text


def test_the_ovens_own_page_leads_there(large: Desk) -> None:
    page, *_ = oven_pages(large)
    text = told(page)
    assert [(line.address, line.count) for line in kind_lines(large)] == [
        ("oven/creamed", "155\u00a0mixtures"), ("oven/mud", "2\u00a0mixtures"),
    ]  # fmt: skip
    assert '<a href="/oven/creamed#">' in text and '<a href="/oven/mud#">' in text
    assert "M 001" not in text and "What to set on the dial" in text
