"""What a baker types into Find, and what must come first; how the dialog behaves."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import comes_true
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.finding.find import FIELDS
from tinbook.pages.finding.words import tokens
from tinbook.plugin.classic import classic_script
from tinbook.site import build_site

pytestmark = pytest.mark.browser

QUESTIONS = Path(__file__).parents[1] / "data" / "questions.csv"
"""Forty questions written before there was an answer (first), and twenty more once they were all answered: fifteen came
right at once (second), one was mended since (later), and four are answered by another page first (missed). And three of
who wants to write a file (reference)."""
SCRIPTS = Path(__file__).parents[2] / "plugins/tinbook/plugin/theme/assets/tinbook"
TABLET = {"width": 820, "height": 1180}
FIRST = "() => [...document.querySelectorAll('.tb-found a')].map(each => each.href)"


def questions(*sets: str) -> list[tuple[str, str]]:
    with QUESTIONS.open(encoding="utf-8") as file:
        return [(row["words"], row["answer"]) for row in csv.DictReader(file) if row["set"] in sets]


def opened(tab: Page, url: str) -> Page:
    tab.goto(url)
    tab.locator(".tb-find").click()
    expect(tab.locator("#tb-asked")).to_be_focused()
    expect(tab.locator(".tb-mean a")).to_be_visible(timeout=30_000)
    return tab


@pytest.fixture
def dialog(page: Callable[..., Page], demo_url: str) -> Page:
    """The first page of the demo book, Find open and ready."""
    return opened(page(viewport=TABLET), demo_url)


def finding(tab: Page, url: str) -> Callable[[str], list[str]]:
    """finding(tab, url)(words): where the results lead, best first, without the host."""

    def results(words: str) -> list[str]:
        tab.locator("#tb-asked").fill(words)
        return [link.removeprefix(url) for link in tab.evaluate(FIRST)]

    return results


@pytest.fixture(scope="module")
def find(lasting_page: Callable[..., Page], demo_url: str) -> Callable[[str], list[str]]:
    """Asks in one dialog that stays open for all who only ask."""
    return finding(opened(lasting_page(viewport=TABLET), demo_url), demo_url)


@pytest.fixture
def find_here(dialog: Page, demo_url: str) -> Callable[[str], list[str]]:
    """Asks in the dialog of this test."""
    return finding(dialog, demo_url)


def answered(found: list[str], answer: str) -> bool:
    return bool(found) and any(found[0].startswith(each) for each in answer.split("|"))


def test_forty_questions_and_more(find: Callable[[str], list[str]]) -> None:
    asked = questions("first", "second", "later", "reference")
    assert len(questions("first")) == 41 and len(asked) == 61
    wrong = {words: found[:2] for words, answer in asked if not answered(found := find(words), answer)}
    assert wrong == {}


def test_every_mixture_technique_and_ingredient_by_its_name(find: Callable[[str], list[str]], demo: Loaded) -> None:
    named = {each.name: f"mixtures/{slug}/" for slug, each in demo.book.mixtures.items()}
    named |= {each.name: f"techniques/{slug}/" for slug, each in demo.book.techniques.items()}
    wrong = {name: found[:1] for name, url in named.items() if (found := find(name))[:1] != [url]}
    assert wrong == {}
    for name in ("caster sugar", "plain flour", "bicarbonate of soda", "double cream"):
        for other in (name, *demo.book.cards[name].also):
            assert find(other)[0] == f"ingredients/{name.replace(' ', '-')}/", other


@every("words", ["8 inch", "8-inch", '8"', "8in", "20 cm", "20cm", "20 cm round", "8 in round tin"])
def test_a_size_in_either_measure_finds_the_tins(find: Callable[[str], list[str]], words: str) -> None:
    assert find(words)[0].startswith("tins/#for?to=round+20+cm&")


@every("words", ["9x13", "13 x 9", "9 by 13 inch", "23 x 33 cm", "33x23", "9×13 tin"])
def test_two_sizes_in_either_order(find: Callable[[str], list[str]], words: str) -> None:
    assert find(words)[0].startswith("tins/#for?to=rectangle+23+x+33+cm&")


def test_a_tin_found_is_chosen_where_it_leads(
    dialog: Page, find_here: Callable[[str], list[str]], demo_url: str
) -> None:
    assert find_here("20cm square")[0].startswith("tins/#for?to=square+20+cm")
    dialog.keyboard.press("Enter")
    dialog.wait_for_url(f"{demo_url}tins/**")
    comes_true(dialog, "document.body.innerText.includes('2.26')")
    dialog.locator(".tb-find").click()
    expect(dialog.locator(".tb-mean a")).to_be_visible()
    found = find_here("madeira 10 inch")
    assert found[0] == "mixtures/madeira-cake/#for?tin=round+25+cm"
    expect(dialog.locator(".tb-mean")).to_contain_text("10\u00a0in read as a tin size")
    dialog.keyboard.press("Enter")
    expect(dialog.locator(".tb-this").first).to_contain_text("25")
    # on the very page only the address would change
    dialog.locator(".tb-find").click()
    expect(dialog.locator(".tb-mean a")).to_be_visible()
    find_here("madeira 8 inch")
    dialog.keyboard.press("Enter")
    expect(dialog.locator(".tb-this").first).to_contain_text("20")


@every("words", ["in", "a", "how do i", "to the"])
def test_words_that_say_nothing_find_nothing(find: Callable[[str], list[str]], words: str) -> None:
    assert find(words) == []


def test_stop_words_change_nothing(find: Callable[[str], list[str]]) -> None:
    assert find("how do i cover a board") == find("cover board")


def test_a_slip_is_mended_and_said_and_the_words_as_typed_are_kept(
    dialog: Page, find_here: Callable[[str], list[str]]
) -> None:
    assert find_here("lighhouse")
    mean = dialog.locator(".tb-mean")
    expect(mean).to_contain_text("Showing lighthouse")
    typed = mean.get_by_role("button", name="Nothing found for lighhouse as typed")
    typed.click()
    expect(dialog.locator(".tb-found li")).to_have_count(0)
    expect(mean).to_contain_text("Nothing found for lighhouse.")
    expect(dialog.locator("#tb-asked")).to_have_value("lighhouse")
    find_here("lighthouse")
    expect(mean).to_be_empty()


@every("slip", ["lihgthouse", "lightouse", "lightthouse", "lighthoose"])
def test_each_kind_of_slip(find: Callable[[str], list[str]], slip: str) -> None:
    assert set(find(slip)[:2]) == {"cakes/lighthouse-cake/", "techniques/lighthouse-for-the-front/"}


def test_an_oven_mark_finds_the_measures(find: Callable[[str], list[str]]) -> None:
    assert find("gas mark")[0].startswith("measures/")


def test_kinds_and_found_words_are_told(dialog: Page, find_here: Callable[[str], list[str]]) -> None:
    everything = find_here("lighthouse")
    first = dialog.locator(".tb-found li").first
    expect(first.locator(".tb-kind")).to_have_text("Cake")
    expect(first.locator("mark").first).to_have_text(re.compile("^lighthouse$", re.IGNORECASE))
    assert first.locator("svg").count() == 1
    dialog.locator(".tb-kinds").get_by_role("button", name="Mixtures").press("Enter")
    expect(dialog.locator(".tb-kinds [aria-pressed=true]")).to_be_focused()
    mixtures = dialog.evaluate(FIRST)
    assert 0 < len(mixtures) < len(everything) and all("/mixtures/" in link for link in mixtures)
    expect(dialog.get_by_role("status").filter(has_text="found")).to_have_text(f"{len(mixtures)} found")


def test_many_results_open_by_a_button(dialog: Page, find_here: Callable[[str], list[str]]) -> None:
    assert len(find_here("butter")) == 20
    dialog.locator(".tb-found").get_by_role("button", name="Show all").click()
    assert len(dialog.evaluate(FIRST)) > 20
    assert dialog.evaluate("document.activeElement.closest('.tb-finder') !== null")


def test_by_keys(page: Callable[..., Page], demo_url: str) -> None:
    tab = page(viewport=TABLET)
    tab.goto(f"{demo_url}techniques/cover-a-board/")
    tab.locator("h1").click()
    tab.keyboard.press("/")
    field = tab.locator("#tb-asked")
    expect(field).to_be_focused()
    expect(field).to_have_value("")
    expect(tab.locator(".tb-mean a")).to_be_visible(timeout=30_000)
    tab.keyboard.type("a/b ganache")
    expect(field).to_have_value("a/b ganache")
    field.fill("ganache")
    links = tab.locator(".tb-found a")
    tab.keyboard.press("ArrowDown")
    expect(links.first).to_be_focused()
    tab.keyboard.press("ArrowDown")
    expect(links.nth(1)).to_be_focused()
    tab.keyboard.press("ArrowUp")
    tab.keyboard.press("ArrowUp")
    expect(field).to_be_focused()
    tab.get_by_role("button", name="Clear").press("Enter")
    expect(field).to_have_value("")
    expect(field).to_be_focused()


@pytest.mark.parametrize("close", ["Escape", "button"])
def test_the_focus_stays_inside_and_comes_back(dialog: Page, find_here: Callable[[str], list[str]], close: str) -> None:
    find_here("royal icing")
    box = dialog.get_by_role("dialog", name="Find in the book")
    expect(box).to_be_visible()
    outside = []
    for _ in range(60):
        dialog.keyboard.press("Tab")
        # between the last and the first stop the browser's own bar has the focus
        outside += dialog.evaluate(
            "[document.activeElement].filter(each => each !== document.body && !each.closest('.tb-finder')).map(each => each.outerHTML)"
        )
    assert outside == []
    if close == "Escape":
        dialog.keyboard.press("Escape")
    else:
        box.get_by_role("button", name="Close").click()
    expect(box).to_be_hidden()
    expect(dialog.locator(".tb-find")).to_be_focused()


def test_nothing_of_it_is_fetched_before_it_is_asked_for(page: Callable[..., Page], demo_url: str) -> None:
    tab, asked = page(viewport=TABLET), list[str]()
    tab.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    tab.goto(f"{demo_url}mixtures/madeira-cake/", wait_until="networkidle")
    parts = {"find.js", "find.css", "minisearch.js", "find-index.js"}
    assert not parts & set(asked) and not [name for name in asked if "search" in name]
    tab.locator(".tb-find").click()
    expect(tab.locator(".tb-mean a")).to_be_visible(timeout=30_000)
    assert parts <= set(asked)
    tab.keyboard.press("Escape")
    asked.clear()
    tab.locator(".tb-find").click()
    expect(tab.locator("#tb-asked")).to_be_focused()
    assert asked == [], "a second time all is there"


def test_without_scripts_it_is_a_link_to_everything(page: Callable[..., Page], demo_url: str, demo: Loaded) -> None:
    tab = page(viewport=TABLET, java_script_enabled=False)
    tab.goto(demo_url)
    for opener in (".tb-find", ".tb-seek"):
        tab.goto(demo_url)
        tab.locator(opener).click()
        tab.wait_for_url(f"{demo_url}find/")
        links = tab.locator("main .tb-list a")
        assert links.count() >= len(demo.book.mixtures) + len(demo.book.techniques) + len(demo.book.cards) - 1
    tab.get_by_role("link", name="Lighthouse Madeira").click()
    tab.wait_for_url(f"{demo_url}mixtures/madeira-cake/")


def test_where_it_cannot_be_fetched_the_link_leads_there_too(
    page: Callable[..., Page], demo_url: str, errors: list[str]
) -> None:
    tab = page(viewport=TABLET)
    tab.route("**/find.js", lambda route: route.abort())
    tab.goto(demo_url)
    tab.locator(".tb-find").click()
    tab.wait_for_url(f"{demo_url}find/")
    tab.unroute("**/find.js")
    tab.route("**/find-index.js", lambda route: route.abort())
    tab.goto(demo_url)
    tab.locator(".tb-find").click()
    expect(tab.locator(".tb-mean")).to_contain_text("could not be loaded")
    assert tab.locator(".tb-mean a").get_attribute("href") == f"{demo_url}find/"
    errors.clear()


@pytest.mark.parametrize("size", [(1180, 820), (820, 1180), (390, 844), (320, 640)], ids=str)
def test_nothing_is_cut_off(page: Callable[..., Page], demo_url: str, size: tuple[int, int]) -> None:
    tab = opened(page(viewport={"width": size[0], "height": size[1]}), demo_url)
    for words in ("lighthose 20", "cracks in sugarpaste", "confectioners sugar", "9x13"):
        tab.locator("#tb-asked").fill(words)
        wide: dict[str, Any] = tab.locator(".tb-finder").evaluate(
            """box => ({ over: box.scrollWidth - box.clientWidth, out: [...box.querySelectorAll(".tb-found :is(b, small)")]
              .filter(each => each.checkVisibility() && each.getBoundingClientRect().right > innerWidth + 1)
              .map(each => each.textContent) })"""
        )
        assert wide == {"over": 0, "out": []}, words
        small = tab.locator(".tb-finder :is(a, button):visible").evaluate_all(
            "all => all.filter(each => each.getBoundingClientRect().height < 43.5).map(each => each.textContent)"
        )
        assert small == [], words


def test_words_are_split_in_the_browser_as_they_are_in_the_index(
    page: Callable[..., Page], demo: Loaded, tmp_path: Path
) -> None:
    for name in ("finding_index", "finding_query"):
        (tmp_path / f"{name}.js").write_bytes((SCRIPTS / f"{name}.js").read_bytes())
    script = 'import { split } from "./finding_query.js";\nself.splitWords = split;\n'
    (tmp_path / "try.js").write_text(script, "utf-8")
    tab = page()
    tab.evaluate(f"() => {{ {classic_script(tmp_path, 'try')} }}")
    finds = build_site(demo.book, demo.facts, {}).finds
    texts = [text for each in finds for field in FIELDS for text in each.field(field)]
    texts += ["Pilot’s 8-inch", 'an 8" tin, 10 inches', "glacé", "20 cm × 7.5 cm", "½ tsp", "2 lb loaf"]
    assert len(texts) > 3000
    assert tab.evaluate("texts => texts.map(splitWords)", texts) == [tokens(text) for text in texts]
