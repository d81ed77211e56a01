"""A list of many rows is light when it is opened, is narrowed over all of its rows, and is plain pages without a script."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.books import light
from tests.browser.conftest import Host, placed
from tests.browser.test_axe import AXE, TAGS

pytestmark = pytest.mark.browser

COUNT = 170
SCREENS = ({"width": 1180, "height": 820}, {"width": 820, "height": 1180}, {"width": 390, "height": 844})
LEAST = 44
"""Px of the smallest side of what a finger has to hit."""


@pytest.fixture(scope="module")
def site(build: Callable[..., Path], once: Callable[..., Path]) -> Path:
    """A book of more icings than a page holds."""

    def make(out: Path) -> None:
        book = out.parent / "long lists' book"
        book.mkdir()
        build(out, light(book, COUNT, every=1) / "mkdocs.yml")

    return once("long lists", make)


@pytest.fixture(scope="module")
def url(site: Path) -> Iterator[str]:
    host = Host(site)
    yield host.url
    host.stop()


def rows(tab: Page) -> list[str]:
    return [" ".join(text.split()) for text in tab.locator(".tb-list > li:visible b").all_inner_texts()]


@pytest.mark.parametrize("address", ["mixtures/", "lists/mixtures/2/", "tags/everyday/"])
def test_words_are_looked_for_on_all_pages(page: Callable[..., Page], url: str, address: str) -> None:
    tab = page(viewport=SCREENS[1])
    tab.goto(url + address)
    first = rows(tab)
    assert len(first) in (150, 20)
    tab.get_by_role("button", name=f"Search all {COUNT}").click()
    field = tab.get_by_role("searchbox", name="Words to look for")
    expect(field).to_be_focused()
    expect(tab.locator(".tb-sheets, .tb-next-sheet")).to_have_count(0)
    # in the order of the book, whichever page they were fetched from
    assert (
        rows(tab) == [*(f"Plain icing {number:03}" for number in range(COUNT - 1)), "Wherry sponge"]
        or address != "mixtures/"
    )
    assert len(rows(tab)) == len(set(rows(tab))) == COUNT
    field.fill("wherry")
    assert rows(tab) == ["Wherry sponge"]
    expect(tab.locator(".tb-narrow output")).to_have_text(f"1 of {COUNT}")
    # a row that came from another page leads where it did there
    tab.locator(".tb-list a:visible").click()
    tab.wait_for_url(f"**/mixtures/m{COUNT - 1:04}/")
    expect(tab.locator("h1")).to_have_text("Wherry sponge")
    # what was asked is asked again on coming back
    tab.go_back()
    expect(tab.locator(".tb-narrow output")).to_have_text(f"1 of {COUNT}")
    assert rows(tab) == ["Wherry sponge"]


def test_a_heading_stands_over_all_that_belongs_to_it(page: Callable[..., Page], url: str) -> None:
    tab = page(viewport=SCREENS[0])
    tab.goto(f"{url}find/")
    whole = tab.locator(".tb-sheets").get_attribute("data-rows")
    tab.get_by_role("button", name=f"Search all {whole}").click()
    expect(tab.locator(".tb-narrow output")).to_have_text(str(whole))
    heads = tab.locator("article h2").all_inner_texts()
    assert heads == ["Mixtures", "Ingredients"] and tab.locator("article .tb-list").count() == 2
    assert tab.locator("article .tb-list > li").count() == int(str(whole))
    ids = tab.evaluate("[...document.querySelectorAll('[id]')].map(each => each.id)")
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("screen", SCREENS, ids=lambda screen: str(screen["width"]))
def test_the_button_stands_where_the_choices_will(page: Callable[..., Page], url: str, screen: dict[str, int]) -> None:
    tab = page(viewport=screen, has_touch=screen["width"] < 1000)
    tab.goto(f"{url}mixtures/")
    button, ways = placed(tab.get_by_role("button", name="Search all")), placed(tab.locator(".tb-sheets"))
    heading, list_ = placed(tab.locator("h1")), placed(tab.locator("article .tb-list").first)
    assert button["x"] == pytest.approx(heading["x"], abs=1)
    assert heading["y"] < button["y"] and button["y"] + button["height"] <= ways["y"] + 1 and ways["y"] < list_["y"]
    assert list_["y"] < screen["height"] * 0.6
    for target in tab.locator(".tb-sheets a, .tb-whole button, .tb-next-sheet a").all():
        box = placed(target)
        assert box["height"] >= LEAST and box["width"] >= LEAST, target.inner_text()
        assert box["x"] >= 0 and box["x"] + box["width"] <= screen["width"]
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")
    tab.get_by_role("button", name="Search all").click()
    expect(tab.get_by_role("searchbox")).to_be_focused()
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_without_a_script_it_is_pages(page: Callable[..., Page], url: str) -> None:
    tab = page(java_script_enabled=False, viewport=SCREENS[1])
    tab.goto(f"{url}mixtures/")
    assert tab.locator(".tb-narrow, .tb-whole").count() == 0
    expect(tab.locator(".tb-sheets [aria-current]")).to_have_text("1")
    seen = rows(tab)
    tab.get_by_role("link", name="Next page").click()
    expect(tab.locator(".tb-sheets [aria-current]")).to_have_text("2")
    seen += rows(tab)
    assert len(seen) == len(set(seen)) == COUNT
    expect(tab.locator(".tb-head [aria-current]")).to_have_text("Mixtures")


def test_what_cannot_be_fetched_is_said_and_the_pages_stay(
    page: Callable[..., Page], url: str, errors: list[str]
) -> None:
    tab = page(viewport=SCREENS[2])
    tab.route("**/lists/**", lambda route: route.abort())
    tab.goto(f"{url}mixtures/")
    tab.get_by_role("button", name="Search all").click()
    expect(tab.get_by_text("The other pages cannot be fetched from here.")).to_be_visible()
    assert len(rows(tab)) == 150 and tab.locator(".tb-sheets a").count() == 2
    tab.unroute("**/lists/**")
    tab.locator(".tb-sheets a").last.click()
    expect(tab.locator(".tb-sheets [aria-current]")).to_have_text("2")
    assert errors.pop().startswith("Failed to load resource") and not errors


def test_a_book_opened_as_a_folder_says_so(
    page: Callable[..., Page], build: Callable[..., Path], tmp_path: Path, errors: list[str]
) -> None:
    """No browser lets a page from a folder read another."""
    book = tmp_path / "book"
    book.mkdir()
    out = build(tmp_path / "out", light(book, 152, every=1, folder=True) / "mkdocs.yml")
    tab = page(viewport=SCREENS[1])
    tab.goto((out / "mixtures/index.html").as_uri())
    tab.get_by_role("button", name="Search all").click()
    expect(tab.get_by_text("The other pages cannot be fetched from here.")).to_be_visible()
    tab.get_by_role("link", name="Next page").click()
    expect(tab.locator(".tb-sheets [aria-current]")).to_have_text("2")
    assert rows(tab) == ["Plain icing 150", "Wherry sponge"]
    errors.clear()  # the browser says in the console that it may not


@pytest.mark.parametrize("screen", SCREENS[1:], ids=lambda screen: str(screen["width"]))
def test_axe_finds_nothing(page: Callable[..., Page], url: str, screen: dict[str, int]) -> None:
    for address in ("mixtures/", "tags/", "find/"):
        tab = page(viewport=screen, bypass_csp=True)
        tab.goto(url + address)
        tab.evaluate("[...document.querySelectorAll('article li')].slice(12).forEach(each => each.remove())")
        tab.evaluate(AXE)
        run = "tags => axe.run(document, { runOnly: { type: 'tag', values: [...tags, 'best-practice'] } })"
        found = tab.evaluate(run, TAGS)
        assert [each["id"] for each in found["violations"]] == [], address
