"""The pages of reference in a browser: nothing hangs over, each key is found by its anchor, a phone stacks the table."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

PAGES = ("recipes", "techniques", "cakes", "orders", "house", "kitchen", "forms")
SIZES = ((1180, 820), (820, 1180), (390, 844), (320, 640))
LARGEST = 60_000
OVER = """() => [...document.querySelectorAll('article :is(code, td, th, small)')]
  .filter(each => each.scrollWidth > each.clientWidth + 1 && getComputedStyle(each).display !== 'inline')
  .map(each => each.textContent.slice(0, 60))"""


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_light(demo_site: Path, name: str) -> None:
    assert (demo_site / "reference" / name / "index.html").stat().st_size <= LARGEST


BROKEN = """() => {
  // the longest word of each key stands on one line
  const pen = document.createElement('canvas').getContext('2d');
  return [...document.querySelectorAll('.tb-keys tbody th')].filter(head => {
    const key = head.querySelector('code');
    pen.font = getComputedStyle(key).font;
    const room = head.clientWidth - parseFloat(getComputedStyle(head).paddingRight);
    return key.textContent.split(' ').some(word => pen.measureText(word).width > room);
  }).map(head => head.textContent);
}"""


def test_no_key_is_broken_within_a_word(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    for name in PAGES[:3]:
        tab.goto(f"{demo_url}reference/{name}/")
        for width, height in SIZES[:3]:
            tab.set_viewport_size({"width": width, "height": height})
            assert tab.evaluate(BROKEN) == [], (name, width)


def test_nothing_hangs_over_at_any_width(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    for name in PAGES:
        tab.goto(f"{demo_url}reference/{name}/")
        for width, height in SIZES:
            tab.set_viewport_size({"width": width, "height": height})
            assert tab.evaluate("document.documentElement.scrollWidth") <= width, (name, width)
            assert tab.evaluate(OVER) == [], (name, width)


def test_the_key_that_was_asked_for_is_in_sight(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(f"{demo_url}reference/recipes/#a-line-of-the-mix-take")
    row = tab.locator("#a-line-of-the-mix-take")
    expect(row).to_be_in_viewport()
    expect(row.locator("td").last).to_contain_text("take: 250 g butter")
    assert row.evaluate("row => getComputedStyle(row.cells[0]).backgroundColor") != tab.locator(
        "#a-line-of-the-mix-note"
    ).evaluate("row => getComputedStyle(row.cells[0]).backgroundColor")
    row.get_by_role("link", name="an amount").click()
    expect(tab.locator("#an-amount")).to_be_in_viewport()


def test_a_table_on_a_tablet_and_a_sheet_a_key_on_a_phone(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(f"{demo_url}reference/house/")
    tops = "row => [...row.cells].map(cell => Math.round(cell.getBoundingClientRect().top))"
    row = tab.locator("#the-house-mixer-bowl")
    assert len(set(row.evaluate(tops))) == 1
    tab.set_viewport_size({"width": 390, "height": 844})
    stacked = row.evaluate(tops)
    assert stacked == sorted(set(stacked))
    left_out = row.evaluate("row => getComputedStyle(row.cells[2], '::before').content")
    assert "If left out" in left_out


def test_on_paper_each_row_stays_whole(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    tab.goto(f"{demo_url}reference/techniques/")
    tab.emulate_media(media="print")
    row = tab.locator("#a-part-solid")
    assert row.evaluate("row => getComputedStyle(row).breakInside") == "avoid"
    assert row.evaluate("row => getComputedStyle(row).display") == "table-row"


def test_they_are_linked_from_the_foot_of_every_page(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    tab.goto(demo_url)
    tab.locator(".tb-foot").get_by_role("link", name="Reference").click()
    tab.get_by_role("link", name="Writing recipes").first.click()
    expect(tab.locator("h1")).to_have_text("Writing recipes")
