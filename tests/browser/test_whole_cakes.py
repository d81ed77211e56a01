"""A whole cake in a browser: its sizes, its guests, its ways to the bench and back, its ticks, its paper."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import placed
from tests.every import check_every

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.view import CakeView
from tinbook.pages.spelling import formats

pytestmark = pytest.mark.browser

TABLET: dict[str, Any] = {"viewport": {"width": 1180, "height": 820}, "has_touch": True}
WEDDING, LIGHT = "cakes/estuary-wedding-cake/", "cakes/lighthouse-cake/"
SMALL = """() => [...document.querySelectorAll("main :is(a, button, input, summary)")]
  .filter(each => each.checkVisibility() && !each.closest(".tb-worked p, .tb-unseen, .tb-caution, .tb-allergens, p"))
  .map(each => [each.matches("input[type=checkbox]") ? each.closest("label") : each, each])
  .filter(([each]) => { const box = each.getBoundingClientRect(); return box.height < 43.5 || box.width < 43.5; })
  .map(([, each]) => each.outerHTML.slice(0, 120))"""
WIDER = "() => document.documentElement.scrollWidth - innerWidth"
MOST_SHEETS = 2
LEAST_PT = 9.0
A4_PT, MARGIN_PT = 595.3, 28.0


def chosen(tab: Page) -> str:
    return tab.locator(".tb-size:not([hidden])").get_attribute("data-size") or ""


def test_a_size_is_chosen_kept_on_both_leaves_and_handed_on_in_the_address(
    page: Callable[..., Page], demo_url: str
) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + WEDDING)
    assert chosen(tab) == "written"
    tab.locator(".tb-chip[data-size='+1']").click()
    assert chosen(tab) == "+1" and tab.evaluate("location.hash") == "#for?size=%2B1"
    assert "28 + 23 + 18" in tab.locator(".tb-this").inner_text()
    tab.goto(demo_url + WEDDING)
    assert chosen(tab) == "+1"
    tab.get_by_role("link", name="Everything used").click()
    expect(tab.locator(".tb-size:not([hidden])")).to_have_attribute("data-size", "+1")
    fresh = page(**TABLET)
    fresh.goto(demo_url + WEDDING + "#for?size=-1")
    assert chosen(fresh) == "-1"


def test_for_guests_the_smallest_size_that_serves_them_is_chosen(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + WEDDING)
    tab.get_by_label("Guests").fill("70")
    tab.get_by_label("Guests").press("Enter")
    assert chosen(tab) == "written" and tab.locator("#tb-answer").inner_text() == "serves 73, 3 spare"
    tab.get_by_label("keep the top tier").check()
    assert chosen(tab) == "+1"
    assert tab.locator("#tb-answer").inner_text().endswith("top tier kept back")
    tab.get_by_label("Guests").fill("900")
    tab.get_by_label("Guests").press("Enter")
    assert chosen(tab) == "+1" and "the largest serves" in tab.locator("#tb-answer").inner_text()
    tab.get_by_label("Guests").fill("many")
    tab.get_by_label("Guests").press("Enter")
    assert tab.locator("#tb-answer").inner_text() == "Enter a number of guests."


def test_every_tier_opens_its_bench_as_the_cake_asks_with_the_way_back(
    page: Callable[..., Page], demo_url: str, demo: Loaded
) -> None:
    tab = page(**TABLET)
    sizes = CakeView(slug="estuary-wedding-cake", desk=Desk(demo.book, demo.facts, {})).sizes
    for size in (each for each in sizes if each.key in ("written", "-1")):
        for tier in size.cake.tiers:
            tab.goto(f"{demo_url}{WEDDING}#for?size={size.key}")
            tab.reload()
            assert tier.baked is not None
            name = f"round {tier.asked.tin.name.removeprefix('round ').removesuffix(' cm')}"
            tab.locator(f".tb-size[data-size='{size.key}'] tbody th a", has_text=name).click()
            expect(tab.locator(".tb-live .tb-this")).to_have_text(
                f"{tier.baked.fit.needed} × {tier.asked.tin.name}".replace(" cm", "\u00a0cm")
            )
            figures = tab.locator(".tb-weigh .tb-qty b").all_inner_texts()
            assert figures == [formats.figure(amount) for amount in tier.baked.whole.amounts]
            assert "as the cake needs" in tab.locator(".tb-facts").inner_text()
            assert tier.baked.time is not None
            assert f"{tier.baked.time.check_shown_min:g}" in tab.locator(".tb-oven b").first.inner_text()
            tab.get_by_role("link", name="Back to the cake").click()
            expect(tab.locator(".tb-size:not([hidden])")).to_have_attribute("data-size", size.key)


def test_in_another_tin_a_bench_is_no_tier_of_the_cake_any_more(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + LIGHT)
    tab.locator(".tb-size:not([hidden]) tbody th a").click()
    tab.locator(".tb-live .tb-chip[aria-pressed=false]").first.click()
    assert "as the cake needs" not in tab.locator(".tb-facts").inner_text()
    assert "times=" not in tab.evaluate("location.hash") and "cake=lighthouse-cake" in tab.evaluate("location.hash")
    expect(tab.get_by_role("link", name="Back to the cake")).to_be_visible()


def test_a_decoration_opens_at_the_size_of_its_tier(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + LIGHT)
    tab.locator(".tb-chip[data-size='+2']").click()
    tab.locator(".tb-size:not([hidden])").get_by_role("link", name="lighthouse for the front").click()
    expect(tab.locator(".tb-cakes select")).to_have_value("round 25 cm")
    expect(tab.locator("[data-cake='round 25 cm']").first).to_be_visible()
    tab.get_by_role("link", name="Back to the cake").click()
    expect(tab.locator(".tb-size:not([hidden])")).to_have_attribute("data-size", "+2")


def test_what_is_done_is_kept_by_size(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + LIGHT)
    tab.locator(".tb-size:not([hidden]) .tb-tick").first.check()
    tab.locator(".tb-chip[data-size='+1']").click()
    assert not tab.locator(".tb-size:not([hidden]) .tb-tick").first.is_checked()
    tab.reload()
    tab.locator(".tb-chip[data-size='written']").click()
    assert tab.locator(".tb-size:not([hidden]) .tb-tick").first.is_checked()


def test_rows_stand_level_with_their_tiers(page: Callable[..., Page], demo_url: str) -> None:
    """As far as their words let them: a row may be higher than a low tier, never lower."""
    tab = page(**TABLET)
    tab.goto(demo_url + WEDDING)
    size = tab.locator(".tb-size:not([hidden])")
    rows, tiers = size.locator("tbody tr:not(.tb-sum)"), size.locator(".tb-tier")
    first, top = placed(rows.first.locator("th")), placed(tiers.last)
    assert abs(first["y"] - top["y"]) < 6
    for nth in range(3):
        row, tier = placed(rows.nth(nth).locator("th")), placed(tiers.nth(2 - nth))
        assert row["height"] >= tier["height"] - 3
        assert row["y"] < tier["y"] + tier["height"] and tier["y"] < row["y"] + row["height"]


def test_on_the_first_page_stands_the_cake_last_open(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + LIGHT)
    tab.goto(demo_url)
    expect(tab.locator("#tb-recent")).to_contain_text("Lighthouse cake")


def test_targets_are_large_and_nothing_scrolls_sideways(page: Callable[..., Page], demo_url: str) -> None:
    for width in (320, 390, 820, 1180):
        tab = page(viewport={"width": width, "height": 820}, has_touch=True)
        for address in (
            WEDDING,
            LIGHT,
            WEDDING + "used/",
            LIGHT + "used/",
            WEDDING + "making/",
            LIGHT + "making/",
            "cakes/",
        ):
            tab.goto(demo_url + address)
            assert tab.evaluate(WIDER) <= 0, (width, address)
            assert tab.evaluate(SMALL) == [], (width, address)


def test_without_scripts_a_cake_is_whole_as_written(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(java_script_enabled=False)
    tab.goto(demo_url + WEDDING)
    assert tab.locator(".tb-size:visible").count() == 1 and tab.locator(".tb-elev:visible").count() == 1
    assert not tab.locator(".tb-choose").is_visible() and "25 + 20 + 15" in tab.locator(".tb-what:visible").inner_text()


def test_a_page_with_its_frame_is_light(demo_site: Path) -> None:
    for file in (demo_site / "cakes").rglob("*.html"):
        assert file.stat().st_size <= 150_000, file


def test_on_paper_a_cake_is_two_sheets_at_most(page: Callable[..., Page], demo_url: str, tmp_path: Path) -> None:
    def check(address: str) -> None:
        tab = page(viewport={"width": 820, "height": 1180})
        tab.goto(demo_url + address)
        file = tmp_path / "sheet.pdf"
        tab.pdf(path=file, format="A4", prefer_css_page_size=True)
        told = subprocess.run(["pdfinfo", str(file)], capture_output=True, text=True, check=True).stdout
        assert int(re.search(r"Pages: +(\d+)", told)[1]) <= MOST_SHEETS  # type: ignore[index]
        told = subprocess.run(
            ["pdftotext", "-bbox-layout", str(file), "-"], capture_output=True, text=True, check=True
        ).stdout
        lines = re.findall(r'<line xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">', told)
        # the box of a line of letters is a little higher than their size
        assert min(float(bottom) - float(top) for top, bottom in lines) >= LEAST_PT * 0.8
        words = re.findall(r'<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"', told)
        assert all(float(left) >= MARGIN_PT and float(right) <= A4_PT - MARGIN_PT for left, right in words)

    check_every((WEDDING, LIGHT, WEDDING + "used/", LIGHT + "used/", WEDDING + "making/", LIGHT + "making/"), check)
