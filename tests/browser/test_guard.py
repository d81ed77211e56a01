"""Nothing but the book's own scripts runs in a built page, from a host and from a folder; all of the book's own do."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

PLANT = """() => {
  const inline = document.createElement("script");
  inline.textContent = "window.planted = 'inline'";
  const elsewhere = document.createElement("script");
  elsewhere.src = "https://example.org/x.js";
  const picture = document.createElement("div");
  picture.innerHTML = '<img src="nowhere.png" onerror="window.planted = `handler`">';
  document.body.append(inline, elsewhere, picture);
  return fetch("https://example.org/told").then(() => "sent", () => "kept");
}"""


@pytest.fixture(scope="module", params=["hosted", "folder"])
def book(request: pytest.FixtureRequest, demo_url: str, demo_site: Path, demo_folder: Path) -> tuple[str, Path, str]:
    """Where a build of the demo opens, its folder, and how a folder's first page ends there."""
    if request.param == "hosted":
        return demo_url, demo_site, "/"
    return f"{demo_folder.as_uri()}/", demo_folder, ".html"


def test_every_kind_of_page_runs_what_it_brought(book: tuple[str, Path, str], page: Callable[..., Page]) -> None:
    """The fixture of the tab fails where the console complains, as it does of every script that is refused."""
    url, site, ends = book
    tab = page(viewport={"width": 820, "height": 1180})
    for name in ("mixtures/creamed-butter-sponge", "techniques/lighthouse-for-the-front", "guests", "measures", "tins"):
        tab.goto(f"{url}{name}{ends}")
        expect(tab.locator("html")).to_have_class(re.compile(r"\bjs\b"))
        assert tab.locator('meta[http-equiv="Content-Security-Policy"]').count() == 1
        assert tab.locator('meta[name="referrer"]').get_attribute("content") == "no-referrer"
    tab.goto(f"{url}mixtures/creamed-butter-sponge{ends}")
    expect(tab.locator("#tb-bench")).to_be_visible()
    assert tab.locator("[style]").count() and site.is_dir()


def test_the_search_works(book: tuple[str, Path, str], page: Callable[..., Page]) -> None:
    """Its scripts, its style and its index are the book's own files."""
    url, _, ends = book
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(url + ("" if ends == "/" else "index.html"))
    tab.locator(".tb-find").click()
    tab.locator("#tb-asked").fill("ganache")
    expect(tab.locator(".tb-found li").first).to_be_visible()
    assert tab.locator(".tb-finder").evaluate("dialog => getComputedStyle(dialog).borderTopWidth") == "0px", "its style"


def test_nothing_planted_runs_or_sends(
    book: tuple[str, Path, str], page: Callable[..., Page], errors: list[str]
) -> None:
    url, _, ends = book
    tab = page()
    tab.goto(f"{url}mixtures/creamed-butter-sponge{ends}")
    assert tab.evaluate(PLANT) == "kept"
    tab.wait_for_timeout(300)
    assert tab.evaluate("window.planted") is None
    refused = [said for said in errors if "Content Security Policy" in said]
    assert len(refused) >= 3, errors
    errors.clear()
