"""The kitchen's pages about money in a browser: they fit every screen, read well in every look, and print."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from pathlib import Path

import pytest
from playwright.sync_api import Page
from tests.browser.test_axe import LOOKS, SIZES, breaches, faint, wear
from tests.every import check_every

pytestmark = pytest.mark.browser
Open = Callable[..., Page]
CAKE, ORDER = "orders/price/estuary-wedding-cake/", "orders/price-of/2026-12-12-boathouse-wedding/"
PAGES = (CAKE, ORDER, "orders/prices/", "orders/paid/")


def test_nothing_sticks_out_and_axe_finds_nothing(page: Open, kitchen_url: str) -> None:
    tab = page()
    seen: set[str] = set()

    def fits(case: tuple[str, int, str]) -> None:
        address, width, look = case
        tab.set_viewport_size({"width": width, "height": 820})
        tab.goto(kitchen_url + address)
        wear(tab, look)
        assert tab.evaluate("document.documentElement.scrollWidth") <= width
        assert breaches(tab, contrast=False) == [] and faint(tab, seen) == []

    check_every(list(product(PAGES, (390, 820, 1180), LOOKS[:2])), fits)


def test_lines_stand_left_of_the_line_and_the_answer_is_seen_at_once(page: Open, kitchen_url: str) -> None:
    for size in ("phone", "tablet"):
        tab = page(viewport=SIZES[size])
        tab.goto(kitchen_url + ORDER)
        lines = tab.evaluate("""[...document.querySelectorAll(".tb-sums > li")].map(row =>
            [...row.children].map(each => { const b = each.getBoundingClientRect(); return [b.left, b.right]; }))""")
        assert len(lines) > 15 and all(figure[1] <= words[0] + 1 for figure, words in lines)
        answer = tab.locator(".tb-answer b").first
        box = answer.bounding_box()
        assert answer.inner_text() == "£475" and box is not None and box["y"] + box["height"] < SIZES[size]["height"]


def test_a_column_is_never_cut_at_a_tablets_edge(page: Open, kitchen_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    for address in PAGES:
        tab.goto(kitchen_url + address)
        wide = tab.evaluate("""[...document.querySelectorAll(".tb-scroll")].filter(each => each.offsetParent)
            .map(each => each.scrollWidth - each.clientWidth)""")
        assert all(more <= 1 for more in wide), (address, wide)


def test_on_a_phone_the_names_leave_room_for_the_figures(page: Open, kitchen_url: str) -> None:
    tab = page(viewport=SIZES["phone"])
    for address in PAGES:
        tab.goto(kitchen_url + address)
        wide = tab.evaluate("""[...document.querySelectorAll(".tb-money-table tbody th")].filter(each => each.offsetParent)
            .map(each => each.getBoundingClientRect().width)""")
        assert wide and max(wide) < SIZES["phone"]["width"] / 2, (address, max(wide))


def test_a_price_is_two_pages_of_paper_at_most(page: Open, kitchen_url: str, tmp_path: Path) -> None:
    tab = page()
    for address in (CAKE, ORDER):
        tab.goto(kitchen_url + address)
        tab.pdf(path=tmp_path / "it.pdf", format="A4")
        assert 1 <= (tmp_path / "it.pdf").read_bytes().count(b"/Type /Page\n") <= 2, address


def test_no_shared_page_leads_to_them_and_find_does_not(page: Open, kitchen_url: str) -> None:
    """From the kitchen's own pages alone, and not by a search."""
    tab = page()
    for address in ("", "cakes/estuary-wedding-cake/", "mixtures/madeira-cake/"):
        tab.goto(kitchen_url + address)
        links = tab.evaluate('[...document.querySelectorAll("a[href]")].map(each => each.getAttribute("href"))')
        assert links and not [link for link in links if "price" in link or link.endswith("paid/")], address
