"""Lists that narrow: by words, by what the rows say, by touch and by keys; and whole without a script."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.browser.conftest import placed

from tinbook.loading import Loaded
from tinbook.plans.mixtures.keeping import FROZEN, keep_marks, season_names

pytestmark = pytest.mark.browser

TABLET = {"viewport": {"width": 820, "height": 1180}}
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
LEAST = 44
"""Px of the smallest side of what a finger has to hit."""


def rows(tab: Page) -> Locator:
    return tab.locator(".tb-list > li:visible")


def names(tab: Page) -> set[str]:
    return set(tab.locator(".tb-list > li:visible b").all_inner_texts())


@pytest.fixture
def mixtures(page: Callable[..., Page], demo_url: str) -> Callable[..., Page]:
    def opened(**options: object) -> Page:
        tab = page(**options)
        tab.goto(f"{demo_url}mixtures/")
        return tab

    return opened


def test_words_of_any_kind_find_a_row(mixtures: Callable[..., Page], demo: Loaded) -> None:
    tab, whole = mixtures(**TABLET), len(demo.book.mixtures)
    field, left = tab.get_by_role("searchbox", name="Words to look for"), tab.locator(".tb-narrow output")
    expect(left).to_have_text(str(whole))
    field.fill("CARROT cake")
    expect(left).to_have_text(f"1 of {whole}")
    assert names(tab) == {demo.book.mixtures["carrot-cake"].name}
    # another name, which the row does not show
    field.fill("fatless")
    assert names(tab) == {demo.book.mixtures["whisked-sponge"].name}
    assert tab.locator("h2:visible").all_inner_texts() == ["Whisked sponge"]
    field.fill("zebra crossing")
    expect(left).to_have_text(f"0 of {whole}")
    expect(tab.get_by_text("Nothing matches.")).to_be_visible()
    tab.get_by_role("button", name="Show all").click()
    expect(left).to_have_text(str(whole))
    expect(field).to_be_focused()
    assert rows(tab).count() == whole


def test_choices_agree_with_the_plans_and_with_each_other(mixtures: Callable[..., Page], demo: Loaded) -> None:
    tab = mixtures(**TABLET)
    winter = {each.name for each in demo.book.mixtures.values() if "winter" in season_names(each)}
    frozen = {each.name for each in demo.book.mixtures.values() if FROZEN in keep_marks(each)}
    assert winter and frozen and winter & frozen not in (winter, frozen)
    choice = tab.get_by_role("group", name="Season").get_by_role("button", name="winter")
    choice.click()
    assert names(tab) == winter
    expect(choice).to_have_attribute("aria-pressed", "true")
    tab.get_by_role("group", name="Keeps").get_by_role("button", name="frozen").click()
    assert names(tab) == winter & frozen
    choice.click()
    assert names(tab) == frozen


def test_a_long_row_of_choices_is_folded_and_goes_by_keys(mixtures: Callable[..., Page], demo: Loaded) -> None:
    tab = mixtures(**TABLET)
    fold = tab.locator(".tb-narrow details", has=tab.get_by_role("button", name="chocolate", include_hidden=True))
    fold.locator("summary").focus()
    tab.keyboard.press("Enter")
    for _ in range(40):
        tab.keyboard.press("Tab")
        if tab.evaluate("document.activeElement.textContent") == "chocolate":
            break
    tab.keyboard.press("Space")
    assert names(tab) == {each.name for each in demo.book.mixtures.values() if "chocolate" in each.tags}
    expect(fold.locator("summary")).to_have_text("chocolate")
    expect(fold.locator("summary")).to_be_focused()
    assert not fold.evaluate("fold => fold.open")


def test_what_was_chosen_is_there_on_coming_back(mixtures: Callable[..., Page], demo: Loaded) -> None:
    tab = mixtures(**TABLET)
    tab.get_by_role("searchbox", name="Words to look for").fill("carrot")
    tab.locator(".tb-list a:visible").click()
    tab.wait_for_url("**/carrot-cake/")
    tab.go_back()
    expect(tab.locator(".tb-narrow output")).to_have_text(f"1 of {len(demo.book.mixtures)}")
    # a way that leads to a heading shows the heading
    tab.goto(tab.url + "#kind-mud")
    tab.reload()
    expect(tab.locator("#kind-mud")).to_be_visible()


@pytest.mark.parametrize("address", ["mixtures/", "techniques/", "tags/"])
def test_on_a_phone_everything_can_be_hit(page: Callable[..., Page], demo_url: str, address: str) -> None:
    tab = page(**PHONE)
    tab.goto(demo_url + address)
    tab.get_by_role("button", name="Choose", exact=True).tap()
    for fold in tab.locator(".tb-narrow summary").all():
        fold.tap()
    targets = tab.locator(".tb-narrow :is(button, summary, input):visible")
    assert targets.count() > 6
    for target in targets.all():
        box = placed(target)
        assert min(box["width"], box["height"]) >= LEAST, target.inner_text()
        assert box["x"] >= 0 and box["x"] + box["width"] <= 390
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_without_a_script_all_is_there(page: Callable[..., Page], demo_url: str, demo: Loaded) -> None:
    tab = page(java_script_enabled=False, **TABLET)
    tab.goto(f"{demo_url}mixtures/")
    assert rows(tab).count() == len(demo.book.mixtures)
    assert tab.locator(".tb-narrow").count() == 0


def test_rows_of_a_table_narrow_too(page: Callable[..., Page], demo_url: str) -> None:
    """The script's promise to any page: a tbody is a list, several of one name go together."""
    tab = page(**TABLET)
    row = '<tr data-kind="{}"><td>{}</td></tr>'.format
    table = (
        '<div class="tb-scroll"><table><tbody data-narrow="x" data-narrow-kind="Sort">{}</tbody></table></div>'.format
    )
    body = table(row("sweet", "Sugar") + row("salt", "Salt")) + table(row("sweet", "Crème"))

    def serve(route: object) -> None:
        text = f'<meta name="tinbook" content=".">{body}<script type="module" src="assets/tinbook/narrow.js"></script>'
        route.fulfill(body=f"<!doctype html><title>x</title>{text}", content_type="text/html; charset=utf-8")  # type: ignore[attr-defined]

    tab.route("**/try.html", serve)
    tab.goto(f"{demo_url}try.html")
    tab.get_by_role("group", name="Sort").get_by_role("button", name="sweet").click()
    assert tab.locator("td:visible").all_inner_texts() == ["Sugar", "Crème"]
    tab.get_by_role("searchbox").fill("creme")
    assert tab.locator("td:visible").all_inner_texts() == ["Crème"]
    expect(tab.locator("output")).to_have_text("1 of 3")


@pytest.mark.parametrize("address", ["covering/", "boards/"])
def test_tins_are_found_by_their_size_and_not_by_a_figure(
    page: Callable[..., Page], demo_url: str, address: str
) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + address)
    heads = tab.locator("tbody th:visible")
    whole = heads.count()
    tab.get_by_role("searchbox").fill("20 cm")
    found = [name.replace("\u00a0", " ") for name in heads.all_inner_texts()]
    assert "round 20 cm8 in" in "".join(found).replace("\n", "") and 1 < len(found) < whole
    assert all("20" in name for name in found)
    tab.get_by_role("button", name="on hand").click()
    assert 0 < heads.count() < len(found)
