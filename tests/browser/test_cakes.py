"""The size chooser of a technique with parts, by finger and by keyboard, on its page and in its one file."""

from __future__ import annotations

import json
import urllib.request
from collections.abc import Callable
from pathlib import Path
from typing import Any
from urllib.parse import urljoin

import pytest
from click.testing import CliRunner
from playwright.sync_api import Page
from tests.browser.conftest import placed, stays

from tinbook.cli import main

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
SCREENS = {"tablet": (1180, 820), "phone": (390, 844)}
TECHNIQUE = "lighthouse-for-the-front"
CAKES = ("round 30 cm", "round 10 cm", "round 23 cm")


@pytest.fixture(scope="module")
def table() -> dict[str, list[dict[str, Any]]]:
    """The engine's table for each cake, as the command line prints it."""
    done = CliRunner().invoke(
        main, ["--book", str(ROOT), "table", "parts", "--of", TECHNIQUE, "--format", "json"], catch_exceptions=False
    )
    assert done.exit_code == 0, done.output
    told = json.loads(done.output)
    found: dict[str, list[dict[str, Any]]] = {}
    for row in told["rows"] if isinstance(told, dict) else told:
        found.setdefault(row["cake"], []).append(row)
    return found


@pytest.fixture(scope="module")
def one_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("cakes") / "lighthouse.html"
    done = CliRunner().invoke(main, ["--book", str(ROOT), "sheet", TECHNIQUE, "-o", str(path)])
    assert done.exit_code == 0, done.output
    return path


@pytest.fixture(params=SCREENS)
def tab(request: pytest.FixtureRequest, page: Callable[..., Page]) -> Page:
    width, height = SCREENS[request.param]
    return page(viewport={"width": width, "height": height}, has_touch=True)


def choose(tab: Page, select: str, cake: str, by: str) -> None:
    """By finger: the list is touched and the device's own picker answers. By keyboard: from the first, downwards."""
    box = tab.locator(select)
    if by == "finger":
        box.tap()
        tab.keyboard.press("Escape")
        box.select_option(label=cake)
    else:
        box.focus()
        tab.keyboard.press("Home")
        names = box.locator("option").all_text_contents()
        for _ in range(names.index(cake)):
            tab.keyboard.press("ArrowDown")
    assert box.input_value() == cake


def shown(tab: Page) -> list[str]:
    """The cakes whose parts and templates show."""
    visible = "all => all.filter(each => each.checkVisibility()).map(each => each.dataset.cake)"
    return list(dict.fromkeys(tab.locator("[data-cake]").evaluate_all(visible)))


def check_figures(words: str, rows: list[dict[str, Any]]) -> None:
    """Each part's weight to what is printed, and its cutter, as the table of parts has them."""
    words = " ".join(words.replace("\N{NO-BREAK SPACE}", " ").split())
    table = words[words.index("total grams") :]
    for row in rows:
        at = table.index(f"{row['letter']} {row['part'].capitalize()} ")
        told = table[at : at + 160]
        shown_g = {f"{round(row['total_g'], places):g}" for places in (0, 1, 2)}
        assert any(each in told.split() or f"{each} g" in told for each in shown_g), (row["part"], shown_g, told)
        first = row["cutter_wanted_width_mm"]
        if first:
            assert any(f"cutter, {each:g}" in told for each in (round(first), round(first * 2) / 2, round(first, 1)))


@pytest.mark.parametrize("by", ["finger", "keyboard"])
def test_on_the_page(tab: Page, demo_url: str, table: dict[str, list[dict[str, Any]]], by: str) -> None:
    tab.goto(f"{demo_url}techniques/{TECHNIQUE}/")
    assert shown(tab) == ["round 20 cm"]
    for cake in CAKES:
        choose(tab, ".tb-cakes select", cake, by)
        assert shown(tab) == [cake]
        check_figures(tab.locator(f'[data-cake="{cake}"]').first.inner_text(), table[cake])
        links = tab.locator(".tb-true a:visible")
        hrefs = [str(each.get_attribute("href")) for each in links.all()]
        slug = cake.replace(" ", "-")
        assert [href.rpartition("/")[2] for href in hrefs] == [
            f"{TECHNIQUE}-{slug}-{on}.pdf" for on in ("a4", "letter")
        ]
        for link, href in zip(links.all(), hrefs, strict=True):
            assert urllib.request.urlopen(urljoin(tab.url, href)).read(5) == b"%PDF-"
            box = placed(link)
            assert box["height"] >= 44, "large enough for a finger"
        assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing is cut off"


@pytest.mark.parametrize("by", ["finger", "keyboard"])
def test_in_the_one_file(tab: Page, one_file: Path, table: dict[str, list[dict[str, Any]]], by: str) -> None:
    asked: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.goto(one_file.as_uri())
    assert shown(tab) == ["round 20 cm"]
    for cake in CAKES:
        choose(tab, ".cakes select", cake, by)
        assert shown(tab) == [cake]
        check_figures(tab.locator(f'div[data-cake="{cake}"]').first.inner_text(), table[cake])
        titles = tab.locator("section.true:visible title").all_text_contents()
        assert titles and all(f"for {cake}" in title for title in titles), "its own templates and no others"
        assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing is cut off"
    last = CAKES[-1]
    stays(tab, lambda: choose(tab, ".cakes select", last, by), lambda: shown(tab) == [last])
    assert set(asked) == {one_file.as_uri()}, "no network"


def test_without_a_script_the_written_cake_shows(page: Callable[..., Page], one_file: Path) -> None:
    tab = page(java_script_enabled=False)
    tab.goto(one_file.as_uri())
    assert tab.locator("div[data-cake]:visible").count() == 1 and not tab.locator(".cakes").is_visible()
