"""No breach of WCAG 2.2 A and AA that axe-core can find in what opens over a page; of the pages, `test_pages.py` asks.

axe-core: https://github.com/dequelabs/axe-core, as shipped by the Python package axe-playwright-python.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib import resources
from typing import Any

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
COLOURS = {"type": "rule", "values": ["color-contrast"]}
BY_SIZE = {"type": "rule", "values": ["scrollable-region-focusable", "target-size"]}
"""What axe finds by how a page is laid out, beside contrast; the rest is the same at every size."""
LOOKS = ("light", "dark", "contrast")
SIZES = {"tablet": {"width": 820, "height": 1180}, "phone": {"width": 390, "height": 844}}
AXE = resources.files("axe_playwright_python").joinpath("axe.min.js").read_text("utf-8")


SETTLE = """() => {
  // folds open; of what is made alike a few are left, as axe takes seconds for hundreds of cells
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  for (const body of document.querySelectorAll("tbody")) [...body.rows].slice(3).forEach(row => row.remove());
  for (const row of document.querySelectorAll("article tr")) [...row.cells].slice(7).forEach(cell => cell.remove());
  for (const list of document.querySelectorAll("article :is(ul, ol, .tb-group)")) [...list.children].slice(5).forEach(each => each.remove());
  for (const svg of document.querySelectorAll("article svg")) [...svg.querySelectorAll("text")].slice(8).forEach(each => each.remove());
  [...document.querySelectorAll("article figure")].slice(12).forEach(each => each.remove());
  [...document.querySelectorAll("article > :is(h2, section.tb-source), article > h2 ~ *")].slice(60).forEach(each => each.remove());
}"""


# Contrast goes by colour, size and weight of letters, and by all that lies behind them: of elements alike in that, on
# whichever page, the first is looked at.
UNLIKE = """seen => {
  const known = new Set(seen), found = [], behind = new Map();
  const ground = each => {
    if (!each) return "";
    if (!behind.has(each)) {
      const of = getComputedStyle(each);
      const own = [of.backgroundColor, of.backgroundImage, of.opacity, of.filter, of.mixBlendMode].join(",");
      behind.set(each, `${ground(each.parentElement)}|${own}`);
    }
    return behind.get(each);
  };
  for (const each of document.querySelectorAll("body *")) {
    each.removeAttribute("data-unlike");
    if (![...each.childNodes].some(node => node.nodeType === 3 && node.textContent.trim()) && !each.matches("input, textarea, select")) continue;
    if (!each.checkVisibility({ visibilityProperty: true })) continue;
    const of = getComputedStyle(each);
    const said = [of.color, of.fontSize, of.fontWeight, of.textShadow, of.position, each.disabled, ground(each)].join(";");
    if (known.has(said)) continue;
    known.add(said);
    found.push(said);
    each.setAttribute("data-unlike", "");
  }
  return found;
}"""


def wear(tab: Page, look: str) -> None:
    """The look, as the device asks for it; it is really on."""
    scheme: Any = "light" if look == "contrast" else look
    tab.emulate_media(color_scheme=scheme, contrast="more" if look == "contrast" else "no-preference")
    paper = {"light": "#fbfcfa", "dark": "#0d1a20", "contrast": "#fff"}[look]
    assert tab.evaluate("getComputedStyle(document.body).getPropertyValue('--paper').trim()") == paper


def breaches(tab: Page, only: dict[str, Any] | None = None, within: str = "html", contrast: bool = True) -> list[str]:
    """What axe finds, each with the element it is about; contrast, which takes longest, may be left to `faint`."""
    if not tab.evaluate("typeof axe === 'object'"):
        tab.evaluate(AXE)
    rules = {} if contrast else {"color-contrast": {"enabled": False}}
    run = {"runOnly": only or {"type": "tag", "values": TAGS}, "rules": rules, "resultTypes": ["violations"]}
    found: list[dict[str, Any]] = tab.evaluate(
        "async ([within, run]) => (await axe.run({ include: [within] }, run)).violations", [within, run]
    )
    return [
        f"{each['id']}: {node['target']} {node['failureSummary'][:200]}" for each in found for node in each["nodes"]
    ]


def faint(tab: Page, seen: set[str]) -> list[str]:
    """What is too faint among elements unlike those `seen` before."""
    found = tab.evaluate(UNLIKE, sorted(seen))
    seen |= set(found)
    return breaches(tab, COLOURS, "[data-unlike]") if found else []


def test_axe_would_find_a_breach(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    tab.goto(demo_url)
    tab.evaluate("""document.querySelector("h1").insertAdjacentHTML("afterend",
        '<button></button><p style="color: #bbb">Too faint to be read by many.</p>')""")
    assert {told.split(":")[0] for told in breaches(tab)} == {"button-name", "color-contrast"}
    seen: set[str] = set()
    assert len(faint(tab, seen)) == 1 and len(seen) > 5
    assert faint(tab, seen) == [], "it is told once"
    tab.locator("p", has_text="Too faint").evaluate("each => each.parentElement.style.background = '#ccc'")
    assert len(faint(tab, seen)) >= 1, "the same letters on another ground"


@pytest.mark.parametrize("size", SIZES)
def test_search_open_with_results(page: Callable[..., Page], demo_url: str, kinds: dict[str, str], size: str) -> None:
    tab = page(viewport=SIZES[size], has_touch=True)
    tab.goto(demo_url + kinds["one of techniques"])
    wear(tab, LOOKS[0])
    tab.locator(".tb-find").tap()
    tab.get_by_role("dialog", name="Find in the book").wait_for()
    seen: dict[str, set[str]] = {look: set() for look in LOOKS}
    for words in ("", "butter", "lighthose 8 inch", "qxqxq"):
        if words:
            tab.locator("#tb-asked").fill(words)
            tab.locator(".tb-mean:not(:empty), .tb-found li").first.wait_for()
        assert breaches(tab) == [], words
        for look in LOOKS[1:]:
            wear(tab, look)
            assert faint(tab, seen[look]) == [], (words, look)
        wear(tab, LOOKS[0])


def test_contents_open(page: Callable[..., Page], demo_url: str, kinds: dict[str, str]) -> None:
    tab = page(viewport=SIZES["phone"], has_touch=True)
    for address in ("", kinds["mixture in tins"]):
        tab.goto(demo_url + address)
        wear(tab, LOOKS[0])
        tab.evaluate(SETTLE)
        tab.locator("button.tb-contents").tap()
        tab.locator("#tb-contents").wait_for()
        assert breaches(tab) == []
        for look in LOOKS[1:]:
            wear(tab, look)
            assert breaches(tab, COLOURS) == [], look


def test_timers_and_questions_open(page: Callable[..., Page], demo_url: str, kinds: dict[str, str]) -> None:
    """The bench in the middle of work: ticks, timers running, stopped and ringing, the question of a fresh start."""
    tab = page(viewport=SIZES["tablet"], has_touch=True)
    tab.clock.install()
    tab.goto(demo_url + kinds["mixture in tins"])
    for place in (0, 1, 2):
        tab.locator(".tb-start").nth(place).tap()
    tab.locator(".tb-timer button").first.tap()
    tab.locator(".tb-tick").first.tap()
    tab.locator("main").get_by_role("button", name="Start again", exact=True).tap()
    tab.locator(".tb-other > summary").tap()
    tab.clock.fast_forward(60_000 * 9)
    tab.evaluate(SETTLE)
    for look in LOOKS:
        wear(tab, look)
        assert breaches(tab, None if look == LOOKS[0] else COLOURS) == [], look
