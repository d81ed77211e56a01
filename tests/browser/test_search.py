"""What a baker types into Find, and what must come first."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tinbook.loading import Loaded
from tinbook.plans.base.weighing import weigh_all

pytestmark = pytest.mark.browser


@pytest.fixture
def find(page: Callable[..., Page], demo_url: str) -> Callable[..., list[str]]:
    """find(words): where the results lead, best first, without the host; none only where that is said to be well."""
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(demo_url)
    tab.locator(".tb-find").click()
    field = tab.locator(".md-search__input")
    expect(field).to_be_focused()
    meta = tab.locator(".md-search-result__meta")
    expect(meta).to_have_text("Type to start searching", timeout=30_000)

    def results(words: str, none: bool = False) -> list[str]:
        # the search listens to keys; one key after all the words makes it one question
        before, found = ("cake", r"^\d+ matching") if none else ("xqxq", "^No matching")
        field.fill(before)
        field.press("End")
        expect(meta).to_have_text(re.compile(found))
        was = meta.inner_text()
        field.fill(words)
        field.press("End")
        expect(meta).not_to_have_text(was)
        links: list[str] = tab.locator(".md-search-result__link").evaluate_all("all => all.map(each => each.href)")
        return [link.removeprefix(demo_url) for link in links]

    return results


def page_of(link: str) -> str:
    return link.partition("?")[0]


def test_every_mixture_and_technique_by_its_name(find: Callable[..., list[str]], demo: Loaded) -> None:
    for slug, mixture in list(demo.book.mixtures.items())[:8]:
        assert page_of(find(mixture.name)[0]) == f"mixtures/{slug}/", mixture.name
    for slug, technique in list(demo.book.techniques.items())[:4]:
        assert page_of(find(technique.name)[0]) == f"techniques/{slug}/", technique.name


def test_an_ingredient_by_its_other_names(find: Callable[..., list[str]], demo: Loaded) -> None:
    for name in ("caster sugar", "plain flour", "bicarbonate of soda"):
        other = demo.book.cards[name].also[-1]
        assert page_of(find(other)[0]) == f"ingredients/{name.replace(' ', '-')}/", other


@pytest.mark.parametrize("words", ["8 inch", "8-inch", "20 cm", "20cm"])
def test_a_size_finds_the_tins(find: Callable[..., list[str]], words: str) -> None:
    links = find(words)
    assert page_of(links[0]) == "tins/all/"
    assert any("#round-tins" in link for link in links)


def test_an_oven_mark_finds_the_measures(find: Callable[..., list[str]]) -> None:
    assert page_of(find("gas mark")[0]) == "measures/"


def test_amounts_do_not_flood_it(find: Callable[..., list[str]], demo: Loaded) -> None:
    """A figure of a table is no word of the book: what the tables hold comes late and stays out of the index."""
    batch = next(each for each in weigh_all(demo.book, demo.facts).values() if each.tins)
    weights = {f"{line.mass_g:.0f}" for line in batch.ingredients if line.mass_g >= 100}
    assert weights
    for figure in sorted(weights)[:3]:
        assert len({page_of(link) for link in find(figure, none=True)}) <= 2, figure
