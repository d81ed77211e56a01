"""The shopping list in a browser: fits every screen, ticks are kept and saved, two pages of paper, without a network."""

from __future__ import annotations

import json
from collections.abc import Callable
from itertools import product
from pathlib import Path

import pytest
from playwright.sync_api import Page
from tests.browser.test_axe import LOOKS, SIZES, breaches, faint, wear
from tests.every import check_every

pytestmark = pytest.mark.browser
Open = Callable[..., Page]
LIST = "orders/shopping/"


def test_nothing_sticks_out_and_axe_finds_nothing(page: Open, kitchen_url: str) -> None:
    tab = page()
    seen: set[str] = set()

    def fits(case: tuple[int, str]) -> None:
        width, look = case
        tab.set_viewport_size({"width": width, "height": 820})
        tab.goto(kitchen_url + LIST)
        wear(tab, look)
        assert tab.evaluate("document.documentElement.scrollWidth") <= width
        assert breaches(tab, contrast=False) == [] and faint(tab, seen) == []

    check_every(list(product((390, 820, 1180), LOOKS[:2])), fits)


def test_what_goes_in_the_basket_is_left_of_the_line(page: Open, kitchen_url: str) -> None:
    for size in ("phone", "tablet"):
        tab = page(viewport=SIZES[size])
        tab.goto(kitchen_url + LIST)
        places = tab.evaluate("""[...document.querySelectorAll(".tb-shop .tb-lines > li")].map(row =>
            [".tb-qty", ".tb-tick", ".tb-name"].map(each => { const b = row.querySelector(each).getBoundingClientRect(); return [b.left, b.right]; }))""")
        assert len(places) > 20
        for (_, quantity), (box, box_end), (name, _) in places:
            assert quantity <= box + 24 and box_end <= name + 30 and box < name + 24
        assert tab.locator(".tb-share").first.is_visible() is (size == "tablet")


def test_ticks_are_kept_counted_and_saved(page: Open, kitchen_url: str, tmp_path: Path) -> None:
    tab = page(viewport=SIZES["phone"], accept_downloads=True)
    tab.goto(kitchen_url + LIST)
    assert not tab.locator(".tb-basket").is_visible()
    count = tab.locator("[data-line]").count()
    left = tab.locator(".tb-to-find b")
    assert left.inner_text() == f"{count} of {count}"
    butter = tab.locator('[data-of="butter"]')
    butter.check()
    assert left.inner_text() == f"{count - 1} of {count}"
    tab.reload()
    assert butter.is_checked()
    with tab.expect_download() as got:
        tab.get_by_role("button", name="Save what is bought").click()
    got.value.save_as(tmp_path / "bought.json")
    (entry,) = json.loads((tmp_path / "bought.json").read_text("utf-8"))["bought"]
    assert entry["of"] == "butter" and entry["line"] == "butter/2" and entry["day"]
    assert entry["bought"] and all("x 250 g" in each or each == "250 g" for each in entry["bought"])
    assert entry["for"] and all(slug.startswith("2026-12-") for slug in entry["for"])
    butter.uncheck()
    assert not tab.locator(".tb-basket").is_visible() and left.inner_text() == f"{count} of {count}"


def test_it_is_two_pages_of_paper_at_most(page: Open, kitchen_url: str, tmp_path: Path) -> None:
    tab = page()
    tab.goto(kitchen_url + LIST)
    tab.pdf(path=tmp_path / "it.pdf", format="A4")
    assert 1 <= (tmp_path / "it.pdf").read_bytes().count(b"/Type /Page\n") <= 2
