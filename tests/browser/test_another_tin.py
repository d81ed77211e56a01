"""Another tin, typed at the bench: as long as the house's tins are sold, as the command reads it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import pytest
from playwright.sync_api import Page
from tests.books import new_book

from tinbook.loading import Loaded, load_book
from tinbook.pages.spelling import formats
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.tins import Tin, read_tin

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
SPONGES = {"cm": "creamed-butter-sponge", "inches": "plain-sponge"}
TYPED = (("8", "inches"), ("20", "cm"), ("6.0", "inches"), ("8.3", "inches"), ("21", "cm"), ("12", "inches"))


class Told(NamedTuple):
    """A book, its sponge and where that stands."""

    loaded: Loaded
    sponge: Batch
    url: str


@pytest.fixture(scope="module", params=["cm", "inches"])
def told(
    request: pytest.FixtureRequest, build: Callable[..., Path], demo_site: Path, once: Callable[..., Path]
) -> tuple[Path, Path]:
    """The demo, and a new book whose tins are sold in inches: its recipes and its site."""
    if request.param == "cm":
        return ROOT / "recipes", demo_site

    def make(folder: Path) -> None:
        new_book(folder)
        house = folder / "recipes" / "house" / "house.yaml"
        said = house.read_text("utf-8").replace("tins sold in: cm", f"tins sold in: {request.param}")
        house.write_text(said, "utf-8")
        build(folder / "site", folder / "mkdocs.yml")

    folder = once(f"book in {request.param}", make)
    return folder / "recipes", folder / "site"


@pytest.fixture
def bench(told: tuple[Path, Path], request: pytest.FixtureRequest, serve: Callable[[Path], str]) -> Iterator[Told]:
    recipes, site = told
    loaded = load_book(recipes)
    assert loaded.book.house.tins_sold_in == request.node.callspec.params["told"]
    slug = SPONGES[loaded.book.house.tins_sold_in]
    yield Told(loaded, weigh_all(loaded.book, loaded.facts)[slug], f"{serve(site)}mixtures/{slug}/")


def lines(bench: Told, tin: Tin, count: int) -> list[str]:
    answer = scale(bench.sponge, bench.loaded.book, bench.loaded.facts, Query(tins=((count, tin),)))
    return [formats.figure(each) for each in answer.whole.amounts]


def test_a_typed_tin_is_the_tin_the_command_reads(page: Callable[..., Page], bench: Told) -> None:
    tab, sold = page(viewport={"width": 820, "height": 1180}), bench.loaded.book.house.tins_sold_in
    tab.goto(bench.url)
    form, count = tab.locator(".tb-any"), bench.sponge.tins[0][0]
    for number, unit in TYPED:
        tab.locator(".tb-other > summary").click()
        form.locator("select").nth(1).select_option(unit)
        form.get_by_label("Width").fill(number)
        form.get_by_role("button").click()
        _, tin = read_tin(f"round {number} {unit}", sold=sold)
        assert tab.locator(".tb-lines .tb-qty b").all_text_contents() == lines(bench, tin, count), (number, unit)
    said = tab.locator(".tb-this").text_content() or ""
    # the last one, 12 inches, by its name in centimetres, whichever is true
    assert "round 30" in said.replace("\xa0", " ") and "cm" in said, said
