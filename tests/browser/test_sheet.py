"""A sheet in a real browser, opened as a file: complete, quiet, and saying what the book's page says."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from importlib import resources
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from click.testing import CliRunner
from PIL import Image
from playwright.sync_api import Page
from tests.browser.conftest import pictured, stays

from tinbook.cli import main
from tinbook.loading import Loaded

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
ADDRESS = "https://heronsmouth.example"
# axe-core: https://github.com/dequelabs/axe-core, as shipped by the Python package axe-playwright-python.
AXE = resources.files("axe_playwright_python").joinpath("axe.min.js").read_text("utf-8")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="module")
def sheets(once: Callable[..., Path], few: Callable[[str], list[str]]) -> dict[str, Path]:
    """Sheets of a few techniques of the demo book, with the book's address on them."""
    slugs = few("techniques/*")
    folder = once("sheets", lambda folder: write(folder, slugs))
    return {slug: folder / f"{slug}.html" for slug in slugs}


def write(folder: Path, slugs: list[str]) -> None:
    shutil.copytree(ROOT / "recipes", folder / "recipes")
    house = folder / "recipes/house/house.yaml"
    text = re.sub(r"address:.*\n", "", house.read_text("utf-8")).rstrip()
    house.write_text(f"{text}\naddress: {ADDRESS}\n", "utf-8")
    for slug in slugs:
        done = CliRunner().invoke(main, ["--book", str(folder), "sheet", slug, "-o", str(folder / f"{slug}.html")])
        assert done.exit_code == 0, done.output


@pytest.fixture(scope="module")
def richest(sheets: dict[str, Path]) -> Path:
    """The sheet with the most ticks."""
    return max(sheets.values(), key=lambda path: path.read_text("utf-8").count("checkbox"))


def opened(tab: Page, path: Path) -> list[str]:
    """Open a sheet from its folder; every address it asks for, itself left out."""
    asked: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.goto(path.as_uri())
    tab.evaluate("document.fonts.ready.then(() => null)")
    assert asked.pop(0) == path.as_uri()
    return asked


def words(text: str | None) -> str:
    return " ".join((text or "").split())


def all_words(tab: Page, selector: str) -> list[str]:
    return [words(text) for text in tab.locator(selector).all_text_contents()]


def sheet_steps(tab: Page) -> list[str]:
    """The words of the steps without their times."""
    return tab.locator(".steps .text").evaluate_all(
        """steps => steps.map(step => {
            const copy = step.cloneNode(true);
            copy.querySelectorAll(".time").forEach(time => time.remove());
            return copy.textContent.split(/\\s+/).join(" ");
        })"""
    )


def test_nothing_is_asked_for_and_nothing_complained_of(page: Callable[..., Page], sheets: dict[str, Path]) -> None:
    for path in sheets.values():
        tab = page()
        assert [url for url in opened(tab, path) if not url.startswith("data:")] == []
        fonts = tab.evaluate("[...document.fonts].map(font => [font.family, font.status])")
        assert sorted(fonts) == [["Atkinson", "loaded"], ["Besley", "loaded"]]
        assert path.stat().st_size < 2_500_000


def test_a_sheet_says_what_the_page_says(
    page: Callable[..., Page], sheets: dict[str, Path], demo_url: str, demo: Loaded
) -> None:
    ours, theirs = page(java_script_enabled=False), page(java_script_enabled=False)
    for slug, path in sheets.items():
        ours.goto(path.as_uri())
        theirs.goto(f"{demo_url}techniques/{slug}/")
        told = words(ours.locator("main").text_content())
        assert words(ours.locator("h1").text_content()) == demo.book.techniques[slug].name
        steps = all_words(theirs, ".tb-steps .tb-do")
        assert steps
        # the page has the times beside a step, the sheet below it
        for step, text in zip(steps, sheet_steps(ours), strict=True):
            # and the page has the step's drawing, with its letters, below the words
            assert step.replace(" ", "").startswith(text.replace(" ", "")), slug
        for selector in (".tb-small .tb-name", ".tb-tools li", ".tb-faults dt", ".tb-faults dd", ".tb-caution p"):
            for each in all_words(theirs, selector):
                assert each.replace(" ", "") in told.replace(" ", ""), (slug, selector, each)
        head = words(ours.locator("header").text_content())
        purpose = words(theirs.locator("article p").first.text_content())
        assert purpose in head and not re.search(r"[*_`]", purpose), slug
        for each in all_words(theirs, ".tb-allergens p"):
            assert each in told, (slug, each)
        amounts = [words(text).replace(" ", "") for text in theirs.locator(".tb-small .tb-qty").all_text_contents()]
        assert [text.replace(" ", "") for text in all_words(ours, ".amount")] == amounts
        for words_ in (*demo.book.techniques[slug].checks, *demo.book.techniques[slug].tips):
            assert words(words_) in told, (slug, words_)


def test_it_is_whole_without_script(page: Callable[..., Page], richest: Path) -> None:
    tab = page(java_script_enabled=False)
    opened(tab, richest)
    with_script = page()
    opened(with_script, richest)
    assert tab.locator("body").inner_text() == with_script.locator("body").inner_text()
    box = tab.locator("input").first
    box.check()
    assert box.is_checked()


def test_ticks_stay(page: Callable[..., Page], richest: Path, sheets: dict[str, Path]) -> None:
    tab = page()
    opened(tab, richest)
    seen: list[list[bool]] = []

    def ticked() -> list[bool]:
        found: list[bool] = tab.evaluate("[...document.querySelectorAll('input')].map(box => box.checked)")
        return found

    def tick() -> None:
        tab.locator("input").nth(1).check()
        if sum(ticked()) < 2:
            # the words beside a box take the finger too
            tab.locator(".steps .text").first.click()
        seen.append(ticked())

    stays(tab, tick, lambda: ticked() == seen[0])
    assert sum(seen[0]) == 2
    other = next(path for path in sheets.values() if path != richest)
    tab.goto(other.as_uri())
    assert tab.locator("input:checked").count() == 0


def test_on_a_phone_and_on_paper(page: Callable[..., Page], sheets: dict[str, Path]) -> None:
    for path in sheets.values():
        tab = page(viewport=PHONE, color_scheme="light", has_touch=True, bypass_csp=True)
        opened(tab, path)
        wide = tab.evaluate("[document.scrollingElement.scrollWidth, innerWidth]")
        assert wide[0] <= wide[1], path.stem
        tab.evaluate(AXE)
        # in the dark only colours differ
        for scheme, kind, rules in (("light", "tag", TAGS), ("dark", "rule", ["color-contrast"])):
            tab.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            run = {"runOnly": {"type": kind, "values": rules}, "resultTypes": ["violations"]}
            found: list[dict[str, Any]] = tab.evaluate("async run => (await axe.run(document, run)).violations", run)
            assert [f"{each['id']}: {node['target']}" for each in found for node in each["nodes"]] == [], path.stem
        tab.emulate_media(color_scheme="light")
        pdf = tab.pdf(prefer_css_page_size=True)
        # the templates of the cake that is chosen come after the sheet, each on a page of its own
        templates = tab.locator("section.true:not([hidden])").count()
        assert len(re.findall(rb"/Type\s*/Page\b", pdf)) - templates <= 2, path.stem
        tab.emulate_media(media="print")
        tab.set_viewport_size({"width": 688, "height": 1000})
        # the least on paper is 9 pt, of a drawing's letters too
        small: list[str] = tab.evaluate(
            """() => [...document.querySelectorAll("body *")].filter(each => [...each.childNodes].some(node =>
                node.nodeType === 3 && node.data.trim()) && each.getClientRects().length && !each.closest("title, script, style")
                && parseFloat(getComputedStyle(each).fontSize) * (each.getScreenCTM ? each.getScreenCTM().a : 1) * .75 < 8.99)
                .map(each => each.textContent)"""
        )
        assert small == [], path.stem
        assert re.search(rb"/MediaBox\s*\[\s*0 0 59[45]", pdf)


def test_the_code_can_be_scanned_in_the_light_and_in_the_dark(page: Callable[..., Page], richest: Path) -> None:
    for scheme in ("light", "dark"):
        tab = page(viewport=PHONE, color_scheme=scheme, device_scale_factor=2)
        opened(tab, richest)
        (code,) = zxingcpp.read_barcodes(Image.open(BytesIO(pictured(tab))))
        assert code.text == f"{ADDRESS}/techniques/{richest.stem}/"
