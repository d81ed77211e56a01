"""The kitchen's pages in a browser: along time on a tablet, a list on a phone; what is ticked is kept, and saved."""

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
CUPS = "2026-12-12-regatta-club-cups"
ADDRESSES = (
    "orders/",
    "orders/week/",
    "orders/day/2026-12-12/",
    f"orders/{CUPS}/",
    "orders/2026-12-08-rope-class/",
    "orders/2026-12-12-boathouse-wedding/",
)


def test_nothing_sticks_out_and_axe_finds_nothing(page: Open, kitchen_url: str) -> None:
    tab = page()
    seen: set[str] = set()

    def fits(case: tuple[int, str]) -> None:
        width, address = case
        tab.set_viewport_size({"width": width, "height": 820})
        tab.goto(kitchen_url + address)
        assert tab.evaluate("document.documentElement.scrollWidth") <= width
        if width != 820:
            tab.evaluate("document.querySelectorAll('details').forEach(each => (each.open = true))")
            assert breaches(tab, contrast=False) == [] and faint(tab, seen) == []

    check_every(list(product((390, 820, 1180), ADDRESSES)), fits)
    tab.goto(kitchen_url + "orders/week/")
    wear(tab, LOOKS[1])
    assert faint(tab, set()) == []


def test_names_along_time_stay_on_the_page_and_apart(page: Open, kitchen_url: str) -> None:
    """As the browser draws them, at both widths of a tablet."""
    tab = page()
    for width in (820, 1180):
        tab.set_viewport_size({"width": width, "height": 820})
        tab.goto(kitchen_url + "orders/week/")
        tab.evaluate("document.fonts.ready")
        boxes = tab.evaluate("""[...document.querySelectorAll(".tb-along section")].map(day =>
            [...day.querySelectorAll("text")].map(each => { const b = each.getBoundingClientRect(); return [b.left, b.right, b.top, b.bottom]; }))""")
        assert boxes and all(boxes)
        for day in boxes:
            for nth, (left, right, top, bottom) in enumerate(day):
                assert left >= 0 and right <= width, (width, nth)
                for other in day[:nth]:
                    apart = left >= other[1] or other[0] >= right or top >= other[3] - 6 or other[2] >= bottom - 6
                    assert apart, (width, nth)


def test_a_phone_has_the_list_and_a_tablet_the_drawing(page: Open, kitchen_url: str) -> None:
    for size, drawn in (("phone", False), ("tablet", True)):
        tab = page(viewport=SIZES[size])
        tab.goto(kitchen_url + "orders/week/")
        assert tab.locator(".tb-along").is_visible() is drawn
        assert tab.locator(".tb-by-day").is_visible() is not drawn


def test_ticks_are_kept_on_every_page_and_saved_with_their_minutes(
    page: Open, kitchen_url: str, tmp_path: Path
) -> None:
    tab = page(viewport=SIZES["tablet"], accept_downloads=True)
    tab.goto(kitchen_url + f"orders/{CUPS}/")
    assert not tab.locator(".tb-saves").is_visible()
    first = tab.locator("[data-task]").first
    key = first.get_attribute("data-task")
    first.check()
    field = tab.get_by_role("spinbutton")
    field.fill("40")
    field.blur()
    tab.goto(kitchen_url + "orders/day/2026-12-12/")
    same = tab.locator(f'[data-task="{key}"]')
    assert same.is_checked() and tab.get_by_role("spinbutton").input_value() == "40"
    with tab.expect_download() as got:
        tab.get_by_role("button", name="Save what is done").click()
    got.value.save_as(tmp_path / "done.json")
    (entry,) = json.loads((tmp_path / "done.json").read_text("utf-8"))["done"]
    assert entry["task"] == key and entry["took"] == "40 min" and entry["of"] == "cupcakes" and entry["said"]
    same.uncheck()
    assert not tab.locator(".tb-saves").is_visible() and tab.get_by_role("spinbutton").count() == 0
    tab.reload()
    assert not tab.locator(f'[data-task="{key}"]').is_checked()


def test_a_day_is_one_page_of_paper(page: Open, kitchen_url: str, tmp_path: Path) -> None:
    tab = page()
    for address, most in (("orders/day/2026-12-10/", 1), ("orders/week/", 3)):
        tab.goto(kitchen_url + address)
        tab.pdf(path=tmp_path / "it.pdf", format="A4")
        assert (tmp_path / "it.pdf").read_bytes().count(b"/Type /Page\n") <= most
