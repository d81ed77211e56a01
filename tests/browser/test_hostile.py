"""A book whose every text holds what could run, break out or overflow: it is shown as text, everywhere."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path, PurePath
from typing import Any

import pytest
import yaml
from playwright.sync_api import Page, expect
from tests.browser.conftest import few_of_each
from tests.every import check_every

from tinbook.pages.spelling import formats

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
PAYLOADS = (
    "<script>hostile(1)</script>",
    '"><img src=x onerror=hostile(2)>',
    "</script><script>hostile(3)</script>",
    "' onmouseover='hostile(4)' x='",
    "{{ 7 * 7 }} {% set x = 1 %}",
    "[see](javascript:hostile(5))",
    "<!--tinbook:parts/bench-->",
    "x" * 300,
    "\u202edesrever\u2066 \u2069",
    "🎂👩🏽‍🍳🇫🇷",
    "&lt;b&gt; &amp;amp; &#60;i&#62;",
    "`code` ${hostile(6)} **stars** __lines__",
    "{ #here onclick=hostile(7) }",
    "![x](x){: onerror=hostile(8) }",
    "<style>*{display:none!important}</style>",
    "<svg onload=hostile(9)><base href=//elsewhere.example/>",
    "\\\\ %s %(x)s \\u003cscript\\u003e </title></textarea>",
    "שלום مرحبا Привет",
)
NAME = '<s class=bad>paste</s>"Q"'
"""An ingredient. It has to be unlike what stands between signs in the steps, or the book asks whether it was meant."""
FREE = frozenset(
    (
        "name", "also", "tags", "about", "note", "notes", "part", "done", "keeps", "off balance", "purpose", "makes",
        "tips", "checks", "fault", "cure", "cautions", "alt", "shows", "do", "tool", "method", "steps", "tools",
    )
)  # fmt: skip
HEAR = "window.heard = []; window.hostile = what => { window.heard.push(what); };"
RUNS = """() => [...document.querySelectorAll("*")].flatMap(element => [...element.attributes]
  .filter(each => /^on/i.test(each.name) || /^\\s*(javascript|data|vbscript):/i.test(each.value) && /^(href|src|action)$/i.test(each.name))
  .map(each => `${element.tagName} ${each.name}=${each.value}`))"""
PLANTED = "article :is(.bad, style, base, img[src=x], script:not([type='application/json']))"
HARM = f"""() => {{
  const runs = ({RUNS})(), elements = [...document.querySelectorAll("{PLANTED}")].map(each => each.outerHTML.slice(0, 90));
  const data = [...document.querySelectorAll("script[type='application/json']")].map(each => each.textContent);
  document.querySelectorAll("details").forEach(fold => {{ fold.open = true; }});
  const far = Math.max(document.documentElement.scrollWidth, document.body.scrollWidth) - innerWidth;
  return {{ runs, heard: window.heard, elements, data, wide: Math.max(0, far) }};
}}"""
"""All that would show that a payload is more than text, and how far the page reaches over the screen."""


class Poison:
    """Adds a payload to each free text of a tree, in turn."""

    def __init__(self) -> None:
        self.count = 0

    def text(self, text: str, also: bool = False) -> str:
        self.count += 1
        while also and any(sign in PAYLOADS[self.count % len(PAYLOADS)] for sign in ("<", "hostile")):
            self.count += 1
        return f"{text.strip()} {PAYLOADS[self.count % len(PAYLOADS)]} {self.count}"

    def tree(self, data: Any, folder: str, key: str = "") -> Any:
        """What a mixture makes is a weight, what keeps or was done is a time, a tin is called by letters: those stay."""
        if isinstance(data, dict):
            return {name: self.tree(value, folder, name) for name, value in data.items()}
        if isinstance(data, list):
            return [self.tree(each, folder, key) for each in data]
        if (folder, key) in (("mixtures", "makes"), ("techniques", "keeps"), ("tins", "name"), ("house", "done")):
            return data
        return self.text(data, key == "also") if key in FREE and isinstance(data, str) else data


@pytest.fixture(scope="module")
def hostile(build: Callable[..., Path], once: Callable[..., Path]) -> Path:
    """The demo book, poisoned and built."""
    return once("hostile", lambda folder: build(folder / "site", poisoned(folder) / "mkdocs.yml")) / "site"


def poisoned(folder: Path) -> Path:
    poison = Poison()
    shutil.copytree(ROOT / "recipes", folder / "recipes")
    (folder / "book_src").mkdir()
    for file in sorted((folder / "recipes").rglob("*.yaml")):
        written = yaml.load(file.read_text("utf-8"), yaml.BaseLoader)
        data = poison.tree(written, "tins" if file.stem == "tins" else file.parent.name)
        called = {
            one.get("part"): other.get("part")
            for one, other in zip(written.get("parts", ()), data.get("parts", ()), strict=True)
        }
        for repeat in data.get("repeats", ()):  # it names the part it lies on
            repeat["on"] = called.get(repeat.get("on"), repeat.get("on"))
        for part in data.get("parts", ()):  # and its support the part it ends in
            if "rest in" in part.get("support", {}):
                part["support"]["rest in"] = called[part["support"]["rest in"]]
            for key in {"stands on", "lies on"} & set(part):
                part[key] = called[part[key]]
        if file.parent.name == "mixtures" and "mix" in data:  # a variation has none of its own
            data["mix"] += [{"take": f"5 g {NAME}", "note": PAYLOADS[1], "part": PAYLOADS[2]}]
        if file.name == "ingredients.yaml":
            data["ingredients"][NAME] = {"weighs": "no volume measure", "notes": list(PAYLOADS)}
        file.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False, width=200), "utf-8")
    shutil.copy(ROOT / "plugins/tinbook/cli/starter/mkdocs.yml", folder)
    assert poison.count > 200
    return folder


def plain(payload: str) -> str:
    """As it must be shown. Marks that turn the direction of what follows are left out: they would turn ours too."""
    return " ".join(payload.translate(formats.TURNING).split())


@pytest.fixture
def pages(hostile: Path, serve: Callable[[Path], str]) -> Iterator[tuple[str, list[str]]]:
    """The address of the book, and its pages."""
    names = sorted(file.relative_to(hostile).as_posix() for file in hostile.rglob("*.html"))
    yield serve(hostile), names


@pytest.mark.long
def test_nothing_of_it_runs_and_no_page_grows_sideways(
    page: Callable[..., Page], pages: tuple[str, list[str]], hostile: Path
) -> None:
    """A few of every kind; benches have a test of their own."""
    base = pages[0]
    tab = page(viewport={"width": 390, "height": 844}, has_touch=True)
    tab.add_init_script(HEAR)
    asked: set[str] = set()
    tab.on("request", lambda request: asked.add(request.url))

    def opened(name: str) -> None:
        tab.goto(base + name)
        harmless(tab)

    some = few_of_each(hostile)
    check_every([name for name in some if name not in benches(some)], opened)
    assert [url for url in asked if not url.startswith(base)] == []


def benches(names: list[str]) -> list[str]:
    return [name for name in names if PurePath(name).match("mixtures/*/index.html")]


def harmless(tab: Page) -> None:
    """Nothing of a payload is an element or has run, and with all folds open the page is no wider than the screen."""
    found: dict[str, Any] = tab.evaluate(HARM)
    for data in found.pop("data"):
        json.loads(data)
    assert found == {"runs": [], "heard": [], "elements": [], "wide": 0}


def test_every_text_is_shown_as_it_was_written(page: Callable[..., Page], pages: tuple[str, list[str]]) -> None:
    """The ingredient's card carries every payload in its notes."""
    tab = page()
    tab.goto(pages[0] + "ingredients/")
    tab.get_by_role("link", name=NAME).first.click()
    shown = tab.locator("main").inner_text()
    for payload in PAYLOADS:
        assert plain(payload) in shown, payload
    assert NAME in shown


@pytest.mark.long
def test_it_is_text_at_the_bench_and_in_the_tray(
    page: Callable[..., Page], pages: tuple[str, list[str]], hostile: Path
) -> None:
    base = pages[0]
    tab = page(viewport={"width": 390, "height": 844}, has_touch=True)
    tab.add_init_script(HEAR)
    asked: set[str] = set()
    tab.on("request", lambda request: asked.add(request.url))

    def at_work(name: str) -> None:
        tab.goto(base + name)
        harmless(tab)
        assert any(plain(payload) in tab.locator("h1").inner_text() for payload in PAYLOADS)
        lines = tab.locator(".tb-lines").all_inner_texts()
        assert any(NAME in text and PAYLOADS[1] in text for text in lines)
        recipe = json.loads(tab.locator("#tb-recipe").text_content() or "")
        assert recipe["lines"][-1]["name"] == NAME
        for start in tab.locator(".tb-start").all()[:3]:
            start.click()
        tab.locator("#tb-pencil").fill(PAYLOADS[2])
        tab.locator(".tb-measure button").nth(1).click()

    check_every(few_of_each(hostile, "mixtures/*/index.html"), at_work)
    expect(tab.locator("#tb-tray")).to_be_visible()
    tab.goto(base)
    assert tab.locator("#tb-recent li").count() > 0
    assert tab.evaluate("heard") == [] and tab.evaluate(RUNS) == []
    harmless(tab)
    assert [url for url in asked if not url.startswith(base)] == []


def test_search_shows_it_as_text(page: Callable[..., Page], pages: tuple[str, list[str]]) -> None:
    tab = page(viewport={"width": 390, "height": 844})
    tab.add_init_script(HEAR)
    tab.goto(pages[0])
    tab.locator(".tb-find").click()
    expect(tab.locator(".tb-mean a")).to_be_visible(timeout=30_000)
    results, shown = tab.locator(".tb-found"), ""
    for query in ("cake", "ganache", "buttercream", "board", "hostile", "onerror", "<script>hostile(1)</script>"):
        tab.locator("#tb-asked").fill(query)
        tab.wait_for_timeout(200)
        if (more := results.locator("> li > button")).count():
            more.click()
        shown += tab.locator(".tb-finder").inner_text()
        assert tab.evaluate("heard") == [] and tab.evaluate(RUNS) == []
        assert results.locator("img, script, style, svg[onload]").count() == 0
    assert sum(payload in shown for payload in PAYLOADS) >= 5
