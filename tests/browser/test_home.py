"""The first page tells what was at the bench last, and how far it has come."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_what_was_at_the_bench_last_is_told_by_its_figure(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(demo_url)
    expect(tab.locator("#tb-recent")).to_be_hidden()
    tab.goto(f"{demo_url}mixtures/dark-ganache/#for?grams=800")
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/#for?tin=square+25+cm&count=2")
    tab.locator(".tb-weigh .tb-name").first.click()
    tab.locator(".tb-weigh .tb-name").nth(1).click()
    tab.locator(".tb-doing .tb-start:visible").first.click()
    expect(tab.locator(".tb-doing .tb-start:visible").first).to_contain_text("until")
    begun = tab.locator(".tb-doing .tb-start:visible").first.inner_text()
    tab.goto(demo_url)
    rows = tab.locator("#tb-recent li")
    expect(rows).to_have_count(2)
    expect(rows.nth(0).locator(".tb-figure")).to_have_text("2 × 25")
    expect(rows.nth(0).locator("b").last).to_have_text("Creamed butter sponge")
    told = rows.nth(0).locator("small").inner_text()
    assert told.startswith("square; 2 ticked; ") and told.endswith(begun)
    expect(rows.nth(1).locator(".tb-left")).to_have_text("800 g")
    assert rows.nth(1).locator("small").inner_text() == ""
    rows.nth(0).locator("a").click()
    expect(tab.locator(".tb-this")).to_have_text("2 × square 25 cm")


def test_what_has_no_such_figure_stands_in_its_own_words(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/#for?ml=1500&count=1")
    said = tab.locator(".tb-this").inner_text()
    tab.goto(demo_url)
    expect(tab.locator("#tb-recent .tb-left")).to_have_text(said)
