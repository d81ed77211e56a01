"""The house's own tins first: one screen, the answer before all else, few taps, nothing cut off, nothing that moves."""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import Host, placed

from tinbook.loading import Loaded
from tinbook.pages.spelling import formats
from tinbook.plans.base.shelf import at_depths, depths_mm, shelf, tin_to_tin

pytestmark = pytest.mark.browser

Open = Callable[..., Page]
LYING: dict[str, Any] = {"viewport": {"width": 1180, "height": 820}}
UPRIGHT: dict[str, Any] = {"viewport": {"width": 820, "height": 1180}, "has_touch": True}
PHONE: dict[str, Any] = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
GLANCES = (
    "tins/", "tins/all/", "portions/", "portions/round/", "guests/", "boards/", "covering/", "measures/", "oven/",
    "on-hand/", "colours/", "mixtures/", "techniques/", "ingredients/",
)  # fmt: skip
MOST_SHIFT = 0.02
TIN_TO_TIN = re.compile("^Convert tin sizes$")
SHIFTS = """window.moved = 0;
new PerformanceObserver(list => { for (const each of list.getEntries()) window.moved += each.value; })
  .observe({ type: "layout-shift", buffered: true });"""
CELLS = """rows => rows.map(row => [...row.querySelectorAll("td")].map(cell => [cell.innerText.trim(), Boolean(cell.querySelector("b"))]))"""
CUT = """label => {
  const region = [...document.querySelectorAll(".tb-scroll")].find(each => each.getAttribute("aria-label") === label);
  return region.scrollWidth - region.clientWidth;
}"""


def box(tab: Page, selector: str) -> dict[str, float]:
    return placed(tab.locator(selector).first)


def bottom(tab: Page, selector: str) -> float:
    found = box(tab, selector)
    return found["y"] + found["height"]


def test_the_house_is_told_on_one_screen(page: Open, demo_url: str, demo: Loaded) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/")
    assert bottom(tab, ".tb-matrix") <= 820 and bottom(tab, ".tb-facts") <= 820
    assert bottom(tab, ".tb-glance-words .tb-jump") <= 820
    rows = tab.locator(".tb-matrix tbody tr")
    owned = {(own.tin.shape, own.tin.sizes_mm) for own in demo.book.tins if own.have}
    assert rows.count() == tab.locator(".tb-matrix thead th").count() - 1 == len(owned)
    heights = rows.evaluate_all("rows => rows.map(row => row.getBoundingClientRect().height)")
    assert all(44 <= height <= 46 for height in heights), heights
    # every tin is drawn at both its heads, and every head is large enough for a finger
    drawn = tab.locator(".tb-matrix .tb-touch :is(.tb-plan, .tb-drawn)")
    assert drawn.count() == 2 * len(owned)
    for target in tab.locator(".tb-matrix button").all():
        size = placed(target)
        assert min(size["width"], size["height"]) >= 44, target.get_attribute("aria-label")
    big = tab.locator("[data-told=factor]").evaluate("each => parseFloat(getComputedStyle(each).fontSize)")
    assert big == pytest.approx(92)


@pytest.mark.parametrize("screen", [LYING, UPRIGHT])
def test_no_column_of_a_matrix_is_cut(page: Open, demo_url: str, screen: dict[str, Any]) -> None:
    tab = page(**screen)
    for address in ("tins/", "tins/all/"):
        tab.goto(demo_url + address)
        for region in tab.locator(".tb-scroll").all():
            label = region.get_attribute("aria-label")
            assert region.get_attribute("tabindex") == "0" and region.get_attribute("role") == "region" and label
            assert tab.evaluate(CUT, label) <= 1, label


def test_the_page_is_upright_in_one_screen_too(page: Open, demo_url: str) -> None:
    tab = page(**UPRIGHT)
    tab.goto(f"{demo_url}tins/")
    assert bottom(tab, ".tb-facts") <= box(tab, ".tb-matrix")["y"] + 1
    assert bottom(tab, ".tb-matrix") <= 1180


def test_on_a_phone_the_answer_comes_before_the_matrix(page: Open, demo_url: str) -> None:
    tab = page(**PHONE)
    tab.goto(f"{demo_url}tins/")
    assert bottom(tab, ".tb-answer") <= 844 and bottom(tab, ".tb-become") <= 844
    assert bottom(tab, ".tb-facts") <= box(tab, ".tb-wall")["y"] + 1
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")


@pytest.mark.parametrize("address", ["tins/", "tins/all/", "guests/"])
def test_the_script_finds_its_first_answer_already_told(page: Open, demo_url: str, address: str) -> None:
    """With nothing kept, what stands in the page is to the letter what the script would say."""
    bare, full = page(java_script_enabled=False, **UPRIGHT), page(**UPRIGHT)
    told = []
    for tab in (bare, full):
        tab.goto(demo_url + address)
        places = tab.locator("[data-told]:not([data-told=from], [data-told=to]), [data-by]:visible, .tb-found li")
        told.append(places.all_inner_texts())
    assert told[0] == told[1] and len(told[0]) > 6
    if address == "guests/":
        return
    drawn = "each => [...each.children].map(tin => Object.values(tin.getBoundingClientRect().toJSON()).slice(2, 4))"
    plans = [tab.locator(".tb-overlay").evaluate(drawn) for tab in (bare, full)]
    assert plans[0][0] == pytest.approx(plans[1][0], abs=0.6) and plans[0][1] == pytest.approx(plans[1][1], abs=0.6)


def test_two_touches_answer_for_two_tins(page: Open, demo_url: str) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/")
    tab.get_by_role("button", name="from round 20 cm", exact=True).click()
    tab.get_by_role("button", name="to square 25 cm", exact=True).click()
    expect(tab.locator("[data-told=factor]")).to_have_text("1.99")
    expect(tab.locator(".tb-matrix .tb-chosen")).to_have_text("1.99")
    expect(tab.locator("[data-by=depth]")).to_be_visible()
    tab.get_by_role("button", name="to dome 15 cm", exact=True).click()
    expect(tab.locator("[data-by=both]")).to_be_visible()
    expect(tab.locator("[data-by=depth]")).to_be_hidden()
    tab.reload()
    expect(tab.get_by_label("To", exact=True)).to_have_value("dome 15 cm")


def test_the_depths_change_every_factor_as_the_engine_does(page: Open, demo_url: str, demo: Loaded) -> None:
    """From every tin to every tin, from every depth to every depth, to the printed digit; a tin to itself is 1."""
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/")
    rows = [at_depths(row, demo.book) for row in shelf(demo.book).house]
    depths = tab.locator("[data-deep=from] button").all_inner_texts()
    assert [float(deep) * 10 for deep in depths] == list(depths_mm(demo.book))
    seen = set()
    for old, from_deep in enumerate(depths):
        tab.locator("[data-deep=from]").get_by_text(from_deep, exact=True).click()
        for new, to_deep in enumerate(depths):
            tab.locator("[data-deep=to]").get_by_text(to_deep, exact=True).click()
            shown = tab.locator(".tb-matrix tbody tr").evaluate_all(CELLS)
            for line, before in zip(shown, rows, strict=True):
                for (text, bold), after in zip(line, rows, strict=True):
                    told = tin_to_tin(before[old], after[new])
                    same = before is after and told.factor == 1
                    assert text == ("1" if same else formats.fixed(told.factor_shown, 2)), (before[0].tin, after[0].tin)
                    assert bold == (told.factor_shown > 1)
            told = tin_to_tin(rows[0][old], rows[1][new])
            eggs = tab.locator(".tb-ladder [data-told]").all_inner_texts()
            assert eggs == [str(count) for count in told.eggs]
            assert tab.locator("[data-told=factor]").inner_text() == formats.fixed(told.factor_shown, 2)
            near = tab.locator("[data-told=near]").inner_text().replace("\u00a0", " ")
            assert near.endswith(f"× {formats.fixed(rows[1][new].nearest_factor_shown, 2)}")
            expect(tab.locator("[data-by=depth]" if old == new else "[data-by=own]")).to_be_visible()
            seen.add(eggs[-1])
    assert len(seen) > 3


def test_a_depth_is_kept_passed_on_and_told_where_the_tin_is_not_so_deep(page: Open, demo_url: str) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/")
    pressed = tab.locator("[data-deep=to] [aria-pressed=true]")
    ten = tab.locator("[data-deep=to]").get_by_role("button", name="10")
    ten.focus()
    tab.keyboard.press("Enter")
    expect(pressed).to_have_text("10")
    expect(tab.locator("[data-told=shallow]")).to_have_text("round 18\u00a0cm is only 7.5\u00a0cm deep")
    expect(tab.locator("[data-told=brim-to]")).to_have_text("1.91\u00a0l")  # a tin holds what it holds
    assert bottom(tab, ".tb-glance-words .tb-jump") <= 820 and tab.evaluate(CUT, "Factors between our tins") <= 1
    passed_on = tab.url
    tab.reload()
    expect(pressed).to_have_text("10")
    # an address that names tins alone asks for the usual depth
    tab.goto("about:blank")
    tab.goto(f"{demo_url}tins/#for?from=round+20+cm&to=square+25+cm")
    expect(pressed).to_have_text("7.5")
    tab.goto("about:blank")
    tab.goto(passed_on)
    expect(pressed).to_have_text("10")
    # a dome has no depth to choose
    tab.get_by_label("To", exact=True).select_option("dome 15 cm")
    expect(ten).to_be_hidden()
    expect(tab.locator("[data-told=shallow]")).to_be_empty()


def test_on_a_phone_the_tins_are_chips(page: Open, demo_url: str, demo: Loaded) -> None:
    tab = page(**PHONE)
    tab.goto(f"{demo_url}tins/")
    strips = {end: tab.get_by_role("group", name=f"{end} one of our tins") for end in ("From", "To")}
    for strip in strips.values():
        chips = strip.get_by_role("button")
        assert chips.count() == len({(own.tin.shape, own.tin.sizes_mm) for own in demo.book.tins if own.have})
        for chip in chips.all():
            size = placed(chip)
            assert min(size["width"], size["height"]) >= 44
    strips["From"].get_by_role("button", name="round 20 cm").tap()
    strips["To"].get_by_role("button", name="square 25 cm").focus()
    tab.keyboard.press("Enter")
    expect(tab.locator("[data-told=factor]")).to_have_text("1.99")
    chosen = [strip.locator("[aria-pressed=true]").get_attribute("data-tin") for strip in strips.values()]
    assert chosen == ["round 20 cm", "square 25 cm"]
    expect(tab.get_by_label("To", exact=True)).to_have_value("square 25 cm")
    for target in tab.locator("[data-deep] button, .tb-slots select").all():
        size = placed(target)
        assert min(size["width"], size["height"]) >= 44
    # chosen by more than a colour, and where the device forces its own
    look = "each => (({ borderBottomWidth, fontWeight }) => [borderBottomWidth, fontWeight])(getComputedStyle(each))"
    bar = strips["To"].locator("[aria-pressed=true]")
    assert bar.locator("b").evaluate(look)[1] == "800" and bar.evaluate(look)[0] != "0px"
    tab.emulate_media(forced_colors="active")
    assert "underline" in bar.evaluate("each => getComputedStyle(each).textDecoration")


def test_without_a_script_there_is_nothing_to_press(page: Open, demo_url: str) -> None:
    tab = page(java_script_enabled=False, **PHONE)
    tab.goto(f"{demo_url}tins/")
    assert tab.locator("#tb-glance button:visible").count() == 0
    assert tab.locator("[data-told=from]").is_visible() and tab.locator(".tb-matrix td").count() > 200


def test_the_same_page_asked_for_another_tin_answers_anew(page: Open, demo_url: str) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/")
    tab.evaluate("location.hash = '#for?from=round+20+cm&to=square+25+cm'")
    expect(tab.locator("[data-told=factor]")).to_have_text("1.99")


def test_a_tin_of_others_is_answered_where_all_tins_are(page: Open, demo_url: str) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}tins/#for?from=round+20+cm&to=hexagon+23+cm")
    tab.wait_for_url("**/tins/all/**")
    expect(tab.get_by_label("To", exact=True)).to_have_value("hexagon 23 cm")
    tab.goto(f"{demo_url}tins/")
    tab.get_by_role("link", name="All tins").click()
    tab.wait_for_url("**/tins/all/**")


@pytest.mark.parametrize("screen", [LYING, PHONE])
def test_forty_guests_are_answered_from_home_in_two_taps(page: Open, demo_url: str, screen: dict[str, Any]) -> None:
    tab = page(**screen)
    tab.goto(demo_url)
    tab.get_by_role("main").get_by_role("link", name=TIN_TO_TIN).first.click()
    tab.get_by_role("link", name="Tins for guests").click()
    expect(tab.get_by_label("Guests", exact=True)).to_have_value("40")
    first = tab.locator(".tb-found li").first
    expect(first).to_contain_text("serves 43, 3 left over")
    place = placed(first)
    assert place["y"] + place["height"] <= tab.viewport_size["height"]  # type: ignore[index]


@pytest.mark.parametrize("screen", [LYING, PHONE])
def test_from_home_a_tin_becomes_another_in_three_taps(page: Open, demo_url: str, screen: dict[str, Any]) -> None:
    tab = page(**screen)
    tab.goto(demo_url)
    tab.get_by_role("main").get_by_role("link", name=TIN_TO_TIN).first.click()
    tab.get_by_role("button", name="from round 20 cm", exact=True).click()
    tab.get_by_role("button", name="to square 25 cm", exact=True).click()
    expect(tab.locator("[data-told=factor]")).to_have_text("1.99")


@pytest.mark.parametrize("screen", [LYING, PHONE])
def test_from_home_a_board_is_covered_in_two_taps_and_typing(page: Open, demo_url: str, screen: dict[str, Any]) -> None:
    tab = page(**screen)
    tab.goto(demo_url)
    tab.locator(".tb-find:visible").first.click()
    expect(tab.locator("#tb-asked")).to_be_focused()
    tab.keyboard.type("cover a board")
    tab.locator(".tb-found a").first.click()
    expect(tab.locator("h1")).to_have_text("Cover a board with sugarpaste")


def test_own_tins_stand_before_others_and_cakes_are_drawn(page: Open, demo_url: str, demo: Loaded) -> None:
    tab = page(**LYING)
    tab.goto(f"{demo_url}guests/")
    owned = {own.tin.name for own in demo.book.tins if own.have}
    own, others = tab.locator("ol.tb-found").all()
    assert own.locator("li").count() and others.locator("li").count()
    for is_own, found in ((True, own), (False, others)):
        for row in found.locator("li").all():
            name = row.locator("span").last.evaluate("each => each.firstChild.textContent").replace("\u00a0", " ")
            assert set(name.split(" + ")).issubset(owned) == is_own, name
            assert row.locator(".tb-tiers i").count() == name.count(" + ") + 1
    widths = own.locator("li").first.locator("i").evaluate_all("all => all.map(each => each.offsetWidth)")
    assert widths[1] / widths[0] == pytest.approx(23 / 15, rel=0.05)
    tab.goto(f"{demo_url}portions/")
    shown = [each.strip().replace("\u00a0", " ") for each in tab.locator("tbody th a:visible").all_inner_texts()]
    assert len(shown) == len(owned) and tab.locator(".tb-others").get_attribute("open") is None
    tab.locator(".tb-others summary").click()
    assert tab.locator(".tb-portions tbody th a:visible").count() > len(owned)


def test_the_recipe_is_the_one_last_at_the_bench(page: Open, demo_url: str) -> None:
    tab, until = page(**LYING), time.monotonic() + 20
    tab.goto(f"{demo_url}guests/")
    baked = tab.get_by_label("Recipe")
    first = baked.input_value()
    tab.goto(f"{demo_url}mixtures/madeira-cake/")
    tab.goto(f"{demo_url}mixtures/american-buttercream/")  # nothing is baked from it
    tab.goto(f"{demo_url}guests/")
    assert first != "madeira-cake"
    expect(baked).to_have_value("madeira-cake")
    baked.select_option(first)
    tab.reload()
    expect(baked).to_have_value(first)
    tab.goto(f"{demo_url}mixtures/creamed-butter-sponge/")
    # what a page kept can reach the next a moment late, when Chromium gives that a process of its own
    while tab.goto(f"{demo_url}guests/") and time.monotonic() < until and baked.input_value() == first:
        pass
    expect(baked).to_have_value("creamed-butter-sponge")


@pytest.mark.parametrize("scripts", [True, False])
def test_one_plan_is_open_at_a_time(page: Open, demo_url: str, scripts: bool) -> None:
    tab = page(java_script_enabled=scripts, **LYING)
    tab.goto(f"{demo_url}portions/round/")
    assert tab.locator(".tb-cut:visible").count() == 1
    tab.get_by_role("link", name=re.compile("^round 23.cm, finger portions, 25")).click()
    expect(tab.locator(".tb-cut:visible")).to_have_count(1)
    expect(tab.locator("#round-23-cm-finger")).to_be_visible()
    expect(tab.locator(".tb-tin:visible h2")).to_have_text(re.compile("^Round 23.cm"))
    # of a tin its dessert portions
    tab.goto(f"{demo_url}portions/round/#round-20-cm")
    expect(tab.locator(".tb-cut:visible")).to_have_count(1)
    expect(tab.locator("#round-20-cm-dessert")).to_be_visible()
    if scripts:
        expect(tab.locator(".tb-which [aria-current]")).to_have_attribute("href", "#round-20-cm-dessert")


def test_pages_of_plans_are_short(page: Open, demo_url: str) -> None:
    tab = page(**UPRIGHT)
    for shape in ("round", "square", "rectangle", "heart"):
        tab.goto(f"{demo_url}portions/{shape}/")
        high = tab.evaluate("document.documentElement.scrollHeight")
        assert high <= 2400, (shape, high)
    tab.set_viewport_size(LYING["viewport"])
    tab.goto(f"{demo_url}portions/round/")
    assert box(tab, ".tb-cut:visible svg")["y"] < 260
    assert bottom(tab, ".tb-cut:visible svg") <= 820
    assert tab.evaluate(CUT, "Cutting plans") <= 1


@pytest.mark.parametrize("address", ["boards/", "covering/", "mixtures/", "techniques/", "ingredients/"])
def test_on_a_phone_what_narrows_is_one_line(page: Open, demo_url: str, address: str) -> None:
    tab = page(**PHONE)
    tab.goto(demo_url + address)
    narrow = tab.locator(".tb-narrow")
    folded = placed(narrow)
    assert folded["height"] <= 60
    tab.get_by_role("button", name="Choose", exact=True).tap()
    expect(tab.get_by_role("button", name="Choose", exact=True)).to_have_attribute("aria-expanded", "true")
    opened = placed(narrow)
    assert opened["height"] > 90


def test_no_script_moves_what_stands_in_the_page(
    page: Open, host: Callable[[Path], Host], demo_site: Path, errors: list[str]
) -> None:
    """Without the book's letters, whose coming is another matter. The three screens wait together."""
    server = host(demo_site)
    server.without = ".woff2"
    tabs = [page(**screen) for screen in (LYING, UPRIGHT, PHONE)]
    for tab in tabs:
        tab.add_init_script(SHIFTS)
    moved = {}
    for address in GLANCES:
        for tab in tabs:
            tab.goto(server.url + address)
        for tab in tabs:
            tab.wait_for_load_state("networkidle")
        for tab in tabs:
            if (far := tab.evaluate("window.moved")) > MOST_SHIFT:
                moved[address, str(tab.viewport_size)] = far
            assert not tab.evaluate(
                "[...document.fonts].some(face => face.status === 'loaded' && !face.family.endsWith('-like'))"
            )
    assert moved == {}
    assert all("woff2" in said or "font" in said.lower() for said in errors)
    errors.clear()


ANSWERS = {
    "tins/": "[data-told=factor]", "portions/": ".tb-portions td", "guests/": ".tb-found li", "boards/": ".tb-table td",
    "covering/": ".tb-table td", "measures/": ".tb-table td", "oven/": ".tb-table td", "on-hand/": ".tb-table td",
    "colours/": ".tb-hue", "portions/round/": ".tb-which td",
}  # fmt: skip


@pytest.mark.parametrize("screen", [LYING, PHONE])
def test_the_answer_stands_before_its_words(page: Open, demo_url: str, screen: dict[str, Any]) -> None:
    """In the upper half of the screen or just below it, and above it no paragraph but a caution's."""
    tab = page(**screen)
    for address, answer in ANSWERS.items():
        tab.goto(demo_url + address)
        place = box(tab, answer)
        assert place["y"] <= 0.55 * screen["viewport"]["height"], (address, place["y"])
        words = "top => [...document.querySelectorAll('main p')].filter(each => each.checkVisibility() && "
        words += "!each.closest('.tb-caution, .tb-slots, #tb-glance') && each.getBoundingClientRect().bottom < top)"
        assert tab.evaluate(words + ".map(each => each.textContent.trim()).filter(Boolean)", place["y"]) == [], address
