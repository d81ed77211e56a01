"""The frame of every page: what it weighs, its head and contents, its looks, large letters, targets, a first load."""

from __future__ import annotations

import colorsys
import re
import time
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, Route, expect
from tests.browser.conftest import placed

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
TABLET: dict[str, Any] = {"viewport": {"width": 820, "height": 1180}, "has_touch": True}
LYING: dict[str, Any] = {"viewport": {"width": 1180, "height": 820}, "has_touch": True}
PHONE: dict[str, Any] = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
MOST_KB = 300
"""All that the bench loads before the search is opened, in kB of 1000 bytes, before compression."""
PAPER = "getComputedStyle(document.body).getPropertyValue('--paper').trim()"
LIGHT, DARK, MOST_LIGHT, MOST_DARK = "#fbfcfa", "#0d1a20", "#fff", "#000"


def test_the_bench_is_light_and_nothing_of_the_theme_is_loaded(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str]
) -> None:
    tab, sizes = page(**TABLET), {}
    tab.on("response", lambda got: sizes.update({urlsplit(got.url).path: len(got.body())}))
    tab.goto(demo_url + kinds["mixture in tins"], wait_until="networkidle")
    assert any(path.endswith("bench.js") for path in sizes) and any(path.endswith("besley.woff2") for path in sizes)
    assert [path for path in sizes if "/assets/javascripts/" in path or "/assets/stylesheets/" in path] == []
    assert sum(sizes.values()) <= MOST_KB * 1000, sizes


@pytest.mark.parametrize("size", [TABLET, LYING, PHONE])
def test_the_head_is_low(page: Callable[..., Page], demo_url: str, size: dict[str, Any]) -> None:
    tab = page(**size)
    tab.goto(demo_url)
    box = placed(tab.locator(".tb-head"))
    assert 44 <= box["height"] <= 48


def test_every_page_is_found_in_its_room(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(**TABLET)
    lit = tab.locator(".tb-head [aria-current]")
    rooms = {"tins/": "Tins", "guests/": "Tins", "techniques/cover-a-board/": "Techniques", "oven/": "Measures"}
    for address, room in rooms.items():
        tab.goto(demo_url + address)
        expect(lit).to_have_text(room)
    tab.goto(demo_url + "sources/")
    expect(lit).to_have_count(0)
    expect(tab.locator(".tb-foot [aria-current]")).to_have_text("Sources")


def test_contents_open_and_close_by_finger_and_stand_at_the_foot_where_nothing_can_open(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str]
) -> None:
    tab = page(**PHONE)
    tab.goto(demo_url + kinds["mixture in tins"])
    contents, opener = tab.locator("#tb-contents"), tab.locator("button.tb-contents")
    opener.tap()
    expect(contents).to_be_visible()
    expect(contents.locator("[aria-current=page]")).to_have_text(tab.locator("h1").inner_text().strip())
    contents.get_by_role("button", name="Close").tap()
    expect(contents).to_be_hidden()
    tab.set_viewport_size({"width": 820, "height": 1180})
    tab.locator(".tb-foot").get_by_role("button", name="Contents").tap()
    expect(contents).to_be_visible()
    tab.touchscreen.tap(800, 600)  # outside
    expect(contents).to_be_hidden()

    plain = page(**PHONE, java_script_enabled=False)
    plain.goto(demo_url)
    plain.locator("button.tb-contents").tap()
    expect(plain.locator("#tb-contents")).to_be_visible()

    tab.evaluate("document.querySelector('#tb-contents').removeAttribute('popover')")
    expect(contents).to_be_visible()
    place = placed(contents)
    assert place["y"] > placed(tab.locator("article"))["y"]


@pytest.mark.parametrize(
    ("scheme", "contrast", "paper"),
    [
        ("light", "no-preference", LIGHT), ("dark", "no-preference", DARK),
        ("light", "more", MOST_LIGHT), ("dark", "more", MOST_DARK),
    ],
)  # fmt: skip
def test_the_look_follows_the_device_without_a_script(
    page: Callable[..., Page], demo_url: str, scheme: str, contrast: str, paper: str
) -> None:
    tab = page(color_scheme=scheme, contrast=contrast, java_script_enabled=False)
    tab.goto(demo_url)
    ground = tab.evaluate("getComputedStyle(document.body).backgroundColor")
    assert ground == f"rgb({', '.join(str(part) for part in parts(paper))})"


def parts(colour: str) -> tuple[int, int, int]:
    digits = colour.lstrip("#")
    digits = "".join(sign * 2 for sign in digits) if len(digits) == 3 else digits
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:6], 16)


def test_a_look_is_chosen_remembered_and_given_back(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(color_scheme="light", contrast="no-preference")
    tab.goto(demo_url)
    more = tab.get_by_role("button", name="More contrast")
    expect(more).to_have_attribute("aria-pressed", "false")
    more.click()
    tab.goto(demo_url + "tins/")
    expect(more).to_have_attribute("aria-pressed", "true")
    assert tab.evaluate(PAPER) == MOST_LIGHT
    tab.get_by_role("button", name="Dark", exact=True).click()
    assert tab.evaluate(PAPER) == MOST_DARK
    more.click()
    tab.reload()
    assert tab.evaluate(PAPER) == DARK
    tab.get_by_role("button", name="Automatic").click()
    assert tab.evaluate(PAPER) == LIGHT
    tab.emulate_media(contrast="more")
    expect(more).to_have_attribute("aria-pressed", "true")
    more.click()
    tab.reload()
    assert tab.evaluate(PAPER) == LIGHT, "the reader's word stands above the device's"
    more.click()
    tab.emulate_media(contrast="no-preference")
    tab.reload()
    assert tab.evaluate(PAPER) == LIGHT


@pytest.mark.parametrize(
    ("colour", "paper"),
    [
        ('{"media": "(prefers-color-scheme: dark)", "scheme": "slate"}', DARK),
        ('{"media": "", "scheme": "contrast"}', MOST_LIGHT),
        ('{"media": "(prefers-color-scheme)", "scheme": "default"}', LIGHT),
    ],
)
def test_a_look_chosen_in_an_earlier_book_stays(
    page: Callable[..., Page], demo_url: str, colour: str, paper: str
) -> None:
    tab = page(color_scheme="light")
    tab.goto(demo_url)
    tab.evaluate(f"localStorage.clear(); localStorage.setItem('/.__palette', JSON.stringify({{ color: {colour} }}))")
    tab.reload()
    expect(tab.locator("html:not(.no-js)")).to_have_count(1)
    tab.wait_for_load_state("networkidle")
    assert tab.evaluate(PAPER) == paper


SHAPE = """element => {
  const said = (of, pseudo) => {
    const style = getComputedStyle(of, pseudo);
    return [style.backgroundColor, style.borderTopWidth, style.borderTopStyle, style.borderBottomColor, style.fontWeight,
      style.textDecorationLine, style.boxShadow, style.backgroundImage, style.content, style.width, style.outlineStyle].join("|");
  };
  return [said(element), said(element, "::before"), ...[...element.children].map(child => said(child))].join("//");
}"""


def test_in_forced_colours_chosen_done_and_now_differ_by_shape(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str]
) -> None:
    tab = page(**LYING, forced_colors="active", color_scheme="dark")
    tab.goto(demo_url + kinds["mixture in tins"])
    for said in (".tb-chip", ".tb-switch button"):
        chosen = tab.locator(f"{said}[aria-pressed=true]:visible").first
        other = tab.locator(f"{said}[aria-pressed=false]:visible").first
        assert chosen.evaluate(SHAPE) != other.evaluate(SHAPE), said
    bars = tab.locator(".tb-chip:visible").evaluate_all(
        """chips => chips.map(chip => [chip.getAttribute("aria-pressed"), getComputedStyle(chip).borderBottomColor])"""
    )
    paper = tab.evaluate("getComputedStyle(document.body).backgroundColor")
    seen = {pressed: {colour for each, colour in bars if each == pressed} for pressed in ("true", "false")}
    assert seen["false"] <= {"rgba(0, 0, 0, 0)", paper} and not seen["true"] & {"rgba(0, 0, 0, 0)", paper}
    ticks = tab.locator(".tb-lines .tb-tick")
    ticks.first.check()
    shapes = [tick.evaluate(SHAPE) for tick in ticks.all()[:3]]
    assert len(set(shapes)) == 3, "done, now, to come"
    colours = set(
        tab.evaluate(
            """() => [...document.querySelectorAll("main *, header *")].flatMap(each => {
                const style = getComputedStyle(each);
                return [style.color, style.backgroundColor, style.borderTopColor];
            })"""
        )
    )
    ink = tab.evaluate("getComputedStyle(document.body).color")
    assert colours <= {ink, paper, "rgba(0, 0, 0, 0)"}, colours


def test_there_is_no_third_hue() -> None:
    """Sea ink and magenta: 160 to 205 and 315 to 340 degrees. Greys have none."""
    found = set()
    for file in (ROOT / "plugins/tinbook/plugin/theme/assets/tinbook").glob("*.css"):
        for colour in re.findall(
            r"#[0-9a-fA-F]{6}\b|#[0-9a-fA-F]{3}\b", re.sub(r"[#.][\w-]+(?=[^;{}]*\{)", "", file.read_text("utf-8"))
        ):
            red, green, blue = (part / 255 for part in parts(colour))
            hue, *_ = colorsys.rgb_to_hls(red, green, blue)
            if max(red, green, blue) - min(red, green, blue) > 0.03:
                found.add((colour, round(hue * 360)))
    assert len(found) > 8
    assert [each for each in found if not (145 <= each[1] <= 205 or 315 <= each[1] <= 340)] == []


MOVED = """window.moved = 0; new PerformanceObserver(list => {
  for (const each of list.getEntries()) if (!each.hadRecentInput) window.moved += each.value;
}).observe({ type: "layout-shift", buffered: true });"""


@pytest.mark.parametrize("size", [PHONE, LYING])
@pytest.mark.parametrize("late_s", [0.0, 1.0])
def test_a_page_of_words_does_not_move_as_it_comes(
    page: Callable[..., Page], demo_url: str, size: dict[str, Any], late_s: float
) -> None:
    """Also where the book's own letters come after the words."""
    for address in ("", "changes/"):
        tab = page(**size)
        tab.add_init_script(MOVED)

        def late(route: Route) -> None:
            time.sleep(late_s)
            route.continue_()

        tab.route("**/*.woff2", late)
        tab.goto(demo_url + address, wait_until="load")
        tab.evaluate("document.fonts.ready.then(() => {})")
        tab.wait_for_timeout(500)
        assert tab.evaluate("window.moved") <= 0.02, address


def test_a_page_that_is_not_there_helps(page: Callable[..., Page], demo_url: str, errors: list[str]) -> None:
    tab = page(**TABLET)
    answer = tab.goto(demo_url + "no-such-page/")
    assert answer and answer.status == 404
    expect(tab.locator("h1")).to_have_text("There is no such page")
    for room in ("Mixtures", "Techniques", "Cakes", "Tins", "Measures"):
        expect(tab.locator("main").get_by_role("link", name=room, exact=True)).to_be_visible()
    seek = tab.locator("main").get_by_role("button", name="Recipe, technique, ingredient or tin")
    place = placed(seek)
    assert place["height"] >= 44 and place["y"] + place["height"] <= 600
    seek.tap()
    expect(tab.locator("#tb-asked")).to_be_focused()
    tab.keyboard.type("heron")
    expect(tab.locator(".tb-finder .tb-found a").first).to_be_visible()
    tab.keyboard.press("Escape")
    expect(seek).to_be_focused()
    tab.locator("main").get_by_role("link", name="Tins").click()
    expect(tab.locator("h1")).to_have_text("Tins at a glance")
    plain = page(**TABLET, java_script_enabled=False)
    plain.goto(demo_url + "no-such-page/")
    plain.locator("main").get_by_role("link", name="Recipe, technique, ingredient or tin").click()
    assert plain.url == f"{demo_url}find/"
    errors.clear()  # the browser itself complains of the answer


def test_each_page_is_described_and_named(demo_site: Path) -> None:
    said = []
    for file in demo_site.rglob("index.html"):
        text = file.read_text("utf-8")
        said += [re.findall(r'<meta name="description" content="([^"]+)">', text)]
        assert len(re.findall(r"<title>[^<]+</title>", text.partition("</head>")[0])) == 1
    assert all(len(each) == 1 for each in said) and len({each[0] for each in said}) == len(said)


class Words(HTMLParser):
    """The words of a page, without what is data or to be typed."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.inside, self.words = 0, ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.inside += tag in ("script", "style", "code", "pre", "title", "option", "textarea")

    def handle_endtag(self, tag: str) -> None:
        self.inside -= tag in ("script", "style", "code", "pre", "title", "option", "textarea")

    def handle_data(self, data: str) -> None:
        self.words += data if not self.inside else "|"


def test_no_page_of_the_book_parts_them(demo_site: Path) -> None:
    """Looked for by other means than the build has: a parser, and the units a kitchen writes most."""
    parted = re.compile(r"\d (?:g|ml|cm|mm|°C|min|kg|lb|oz|tsp|tbsp)\b")
    pages = sorted(demo_site.rglob("*.html"))
    kept = 0
    for page in pages:
        words = Words(page.read_text("utf-8")).words
        assert parted.findall(words) == [], page
        kept += words.count("\N{NO-BREAK SPACE}")
    assert len(pages) > 100 and kept > 1000
