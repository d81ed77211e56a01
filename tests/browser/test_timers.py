"""Timers: several at once, through sleep and change of page, and heard by who cannot see them.

The page's clock is the tests': a laid-down tablet is a jump of the clock in which no timer of the page fires.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.browser.conftest import comes_true

pytestmark = pytest.mark.browser

TABLET: dict[str, Any] = {"viewport": {"width": 820, "height": 1180}, "has_touch": True}
START = "2026-11-25T09:00:00"
HIDE = """hidden => {
  Object.defineProperty(document, "visibilityState", { configurable: true, get: () => hidden ? "hidden" : "visible" });
  Object.defineProperty(document, "hidden", { configurable: true, get: () => hidden });
  document.dispatchEvent(new Event("visibilitychange"));
}"""
HEAR = """() => {
  window.told = [];
  const said = document.querySelector("#tb-said");
  new MutationObserver(() => told.push(said.textContent)).observe(said, { childList: true, subtree: true });
}"""
LOCK = """
window.asked = 0; window.held = 0; window.refuse = false;
Object.defineProperty(Navigator.prototype, "wakeLock", { configurable: true, get: () => ({ request: async kind => {
  window.asked++;
  if (window.refuse) throw new DOMException("no", "NotAllowedError");
  window.held++;
  const lock = new EventTarget();
  lock.release = async () => { window.held--; lock.dispatchEvent(new Event("release")); };
  window.last = lock;
  return lock;
} }) });
"""


@pytest.fixture
def bench(page: Callable[..., Page], demo_url: str, kinds: dict[str, str]) -> Callable[..., Page]:
    """bench(script): a mixture in tins with a stopped clock, and `script` run before the page's own."""

    def opened(script: str = "") -> Page:
        tab = page(**TABLET)
        if script:
            tab.add_init_script(script)
        tab.clock.install(time=START)
        tab.goto(demo_url + kinds["mixture in tins"])
        tab.clock.pause_at("2026-11-25T09:00:10")
        return tab

    return opened


def begin(tab: Page, *at: int) -> list[int]:
    """Start the timers of the at-th buttons; their minutes."""
    minutes = []
    for place in at:
        button = tab.locator(".tb-start").nth(place)
        minutes.append(round(float(button.get_attribute("data-minutes") or 0)))
        button.tap()
    expect(tab.locator(".tb-timer")).to_have_count(len(at))  # what runs them is fetched at the first touch
    return minutes


def faces(tab: Page) -> list[str]:
    return tab.locator(".tb-timer b").all_text_contents()


def the(tab: Page, word: str) -> Locator:
    return tab.locator("#tb-tray").get_by_role("button", name=re.compile(f"^{word}"))


def test_two_run_at_once(bench: Callable[..., Page]) -> None:
    tab = bench()
    tray = tab.get_by_role("region", name="Timers")
    expect(tray).to_be_hidden()
    first, other = begin(tab, 0, 2)
    assert first != other
    expect(tray).to_be_visible()
    assert faces(tab) == [f"{first}:00", f"{other}:00"]
    tab.clock.run_for(61_000)
    assert faces(tab) == [f"{first - 2}:59", f"{other - 2}:59"]
    expect(tab.locator(".tb-start").first).to_have_text(f"until 9:{first:02}")
    the(tab, "Stop").first.tap()
    tab.clock.run_for(30_000)
    assert faces(tab) == [f"{first - 2}:59", f"{other - 2}:29"]
    expect(tab.locator(".tb-timer").first).to_contain_text("stopped")
    the(tab, "Resume").tap()
    tab.clock.run_for(10_000)
    assert faces(tab) == [f"{first - 2}:49", f"{other - 2}:19"]
    the(tab, "Clear").first.tap()
    assert faces(tab) == [f"{other - 2}:19"]
    the(tab, "Clear").tap()
    expect(tray).to_be_hidden()


def test_sleep_cannot_put_it_wrong(bench: Callable[..., Page]) -> None:
    tab = bench()
    (minutes,) = begin(tab, 1)
    tab.evaluate(HIDE, True)
    tab.clock.fast_forward(60_000 * (minutes - 2))
    tab.evaluate(HIDE, False)
    expect(tab.locator("#tb-tray b")).to_have_text("2:00")
    the(tab, "Stop").tap()
    tab.clock.fast_forward(3_600_000)
    assert faces(tab) == ["2:00"]
    the(tab, "Resume").tap()
    tab.evaluate(HIDE, True)
    tab.clock.fast_forward(3_600_000)
    tab.evaluate(HIDE, False)
    assert faces(tab) == ["0:00"]
    expect(tab.locator(".tb-timer")).to_have_class(re.compile("tb-rings"))


def test_its_end_is_announced_once_and_stands_in_the_title(bench: Callable[..., Page]) -> None:
    tab = bench()
    title, name = tab.title(), tab.locator(".tb-start").first.get_attribute("data-name")
    region = tab.locator("[aria-live=polite]#tb-said")
    expect(region).to_have_count(1)
    (minutes,) = begin(tab, 0)
    tab.evaluate(HEAR)
    tab.clock.run_for(60_000 * minutes + 1_000)
    expect(region).to_have_text(f"{name}: time is up")
    assert tab.title() == f"{name}: time is up"
    tab.clock.run_for(5_000)
    assert tab.evaluate("told") == [f"{name}: time is up"]
    the(tab, "Clear").tap()
    tab.clock.run_for(1_000)
    assert tab.title() == title


def test_it_goes_on_while_another_page_is_read(
    bench: Callable[..., Page], demo_url: str, kinds: dict[str, str]
) -> None:
    tab = bench()
    here = tab.url
    (minutes,) = begin(tab, 0)
    tab.clock.run_for(30_000)
    tab.goto(demo_url + kinds["tins"])
    expect(tab.locator("#tb-tray b")).to_have_text(f"{minutes - 1}:30")
    tab.clock.run_for(60_000 * minutes)
    expect(tab.locator("#tb-said")).to_contain_text("time is up")
    expect(tab.locator(".tb-timer")).to_have_class(re.compile("tb-rings"))
    tab.goto(here)
    expect(tab.locator("#tb-tray b")).to_have_text("0:00")
    assert "time is up" in tab.title()
    the(tab, "Clear").tap()
    tab.reload()
    expect(tab.locator(".tb-timer")).to_have_count(0)


def test_a_timer_of_one_tab_is_seen_in_another(page: Callable[..., Page], demo_url: str, kinds: dict[str, str]) -> None:
    tab = page(**TABLET)
    tab.goto(demo_url + kinds["mixture in tins"])
    other = tab.context.new_page()
    other.goto(demo_url + kinds["one of techniques"])
    tab.locator(".tb-start").first.click()
    expect(other.locator(".tb-timer")).to_have_count(1)
    the(other, "Clear").click()
    expect(tab.locator(".tb-timer")).to_have_count(0)


def test_the_screen_is_kept_on_from_the_first_touch(bench: Callable[..., Page]) -> None:
    tab = bench(LOCK)
    told = tab.locator("main .tb-acts").get_by_role("button", name=re.compile("^Keep screen"))
    assert tab.evaluate("asked") == 0
    expect(told).to_have_text("Keep screen on: no")
    tab.locator(".tb-tick").first.tap()
    comes_true(tab, "asked === 1 && held === 1")
    expect(told).to_have_text("Keep screen on: yes")
    expect(told).to_have_attribute("aria-pressed", "true")
    tab.locator(".tb-tick").nth(1).tap()
    assert tab.evaluate("asked") == 1
    # the system takes it when the page is hidden; it is asked for again on return
    tab.evaluate(HIDE, True)
    tab.evaluate("last.release()")
    expect(told).to_have_text("Keep screen on: no")
    assert tab.evaluate("[asked, held]") == [1, 0]
    tab.evaluate(HIDE, False)
    expect(told).to_have_text("Keep screen on: yes")
    assert tab.evaluate("[asked, held]") == [2, 1]
    # the reader lets it go, and it stays gone
    told.tap()
    expect(told).to_have_text("Keep screen on: no")
    assert tab.evaluate("held") == 0
    tab.evaluate(HIDE, True)
    tab.evaluate(HIDE, False)
    tab.locator(".tb-tick").nth(2).tap()
    assert tab.evaluate("[asked, held]") == [2, 0]
    told.tap()
    expect(told).to_have_text("Keep screen on: yes")


def test_a_timer_keeps_the_screen_on(bench: Callable[..., Page]) -> None:
    tab = bench(LOCK)
    begin(tab, 0)
    comes_true(tab, "held === 1")


@pytest.mark.parametrize("script", ["delete Navigator.prototype.wakeLock", LOCK + "window.refuse = true;"])
def test_a_screen_that_cannot_be_kept_on_breaks_nothing(bench: Callable[..., Page], script: str) -> None:
    tab = bench(script)
    tab.locator(".tb-tick").first.tap()
    begin(tab, 0)
    expect(tab.locator(".tb-tick").first).to_be_checked()
    expect(tab.locator(".tb-timer")).to_have_count(1)
    expect(tab.locator("main .tb-acts").get_by_role("button", name=re.compile("[Ss]creen"))).not_to_have_text(
        "Keep screen on: yes"
    )
    tab.evaluate(HIDE, True)
    tab.evaluate(HIDE, False)
