"""Every page of the demo book, without any server."""

import re
from html import unescape
from urllib.parse import parse_qs

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import PART, Page
from tinbook.problems import Place, Problem
from tinbook.site import build_site


@pytest.fixture(scope="module")
def pages(demo: Loaded) -> dict[str, Page]:
    return dict(build_site(demo.book, demo.facts, {}).pages)


@pytest.fixture(scope="module")
def texts(pages: dict[str, Page]) -> dict[str, str]:
    """Every page, filled."""
    return {address: filled(page, pages) for address, page in pages.items()}


def filled(page: Page, pages: dict[str, Page]) -> str:
    def link(address: str, anchor: str = "") -> str:
        assert address in pages or address.startswith(("pictures/", "true-size/")), f"{page.address} links to {address}"
        return f"/{address}#{anchor}"

    return page.fill(page.markdown, link)


def test_every_source_has_its_page(demo: Loaded, pages: dict[str, Page]) -> None:
    wanted = {f"mixtures/{slug}" for slug in demo.book.mixtures} | {
        f"techniques/{slug}" for slug in demo.book.techniques
    }
    assert wanted <= set(pages)
    assert {"index", "tins", "measures", "ingredients", "sources", "tags", "mixtures/index"} <= set(pages)


def test_every_page_fills_and_links_only_to_pages_of_the_book(pages: dict[str, Page], texts: dict[str, str]) -> None:
    assert set(texts) == set(pages)
    for address, text in texts.items():
        assert not PART.search(text)
        assert text.count("\n# ") + text.count("<h1>") == 1, address


def test_every_template_that_is_handed_out_is_made(demo: Loaded, texts: dict[str, str]) -> None:
    linked = {path for text in texts.values() for path in re.findall(r'href="/(true-size/[^"#]+)#"', text)}
    assert linked == set(build_site(demo.book, demo.facts, {}).templates) and len(linked) > 100


def test_every_anchor_that_is_linked_is_there(texts: dict[str, str]) -> None:
    for address, text in texts.items():
        for target, anchor in re.findall(r'href="/([^"#]+)#([^"]+)"', text):
            there = texts[target]
            if anchor.startswith("for?"):
                continue
            assert f'id="{anchor}"' in there or f"{{ #{anchor} " in there, (address, target, anchor)


def test_every_page_that_is_opened_set_knows_what_it_is_set_to(texts: dict[str, str]) -> None:
    """The bench has that tin, the technique that cake, and the cake to go back to is there in that size."""
    ways = {
        (target, unescape(anchor).removeprefix("for?"))
        for text in texts.values()
        for target, anchor in re.findall(r'href="/([^"#]+)#(for\?[^"]+)"', text)
    }
    assert len(ways) > 50
    for target, asked in ways:
        said = {name: values[0] for name, values in parse_qs(asked).items()}
        assert f'data-size="{said["size"]}"' in texts[f"cakes/{said['cake']}"], (target, said)
        if target.startswith("mixtures/"):
            named = f'"{said["tin"]}"' if "tin" in said else '"makes_g"'
            assert named in texts[target], (target, said)
        else:
            assert f">{said['tin']}</option>" in texts[target], (target, said)


def test_every_table_on_a_page_says_how_it_was_worked_out(texts: dict[str, str]) -> None:
    for address in ("mixtures/creamed-butter-sponge/tables", "mixtures/dark-ganache/tables", "tins", "measures"):
        assert "How this was worked out" in texts[address]


def test_a_broken_page_shows_its_problem_as_text(demo: Loaded) -> None:
    place = Place(file="recipes/mixtures/lost-cake.yaml", line=3, column=5, width=4, text="kind: <b>")
    problem = Problem(code="unknown word", message="the kind <b> is not known", place=place, hint="write one")
    site = build_site(demo.book, demo.facts, {"mixtures/lost-cake": (problem,)})
    text = filled(site.pages["mixtures/lost-cake"], dict(site.pages))
    assert "recipes/mixtures/lost-cake.yaml:3:5" in text
    assert "&lt;b&gt;" in text and "<b> is" not in text
