"""The pages of reference: they say of every key what the models and the schemas say."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from html import unescape

import pytest
from tests.models.test_keys import MODELS

from tinbook.loading import Loaded
from tinbook.models import CakeVariation, StepChange, Variation
from tinbook.models.json_schema import schema_of
from tinbook.models.keys import LEFT_OUT, keys_of
from tinbook.models.orders import OrderChange
from tinbook.models.register import SeenBy, kinds
from tinbook.models.written_forms import FORMS
from tinbook.pages.base.page import Page
from tinbook.pages.reference.groups import slug
from tinbook.pages.reference.view import CAKES, FORMS_PAGE, HOUSE, KITCHEN, ORDERS, RECIPES, TECHNIQUES, TITLE_OF
from tinbook.pages.reference.words import title_of
from tinbook.site import build_site

ADDRESSES = (RECIPES, TECHNIQUES, CAKES, ORDERS, HOUSE, KITCHEN)
Filled = Callable[[str], str]


def plain(html: str) -> str:
    """What is read, without marks."""
    return " ".join(unescape(re.sub(r"<[^>]+>", "", html)).split())


@pytest.fixture(scope="module")
def html(filled: Filled) -> dict[str, str]:
    return {address: filled(address) for address in TITLE_OF}


def rows_of(html: str) -> dict[str, str]:
    """Every row of a page, by its anchor."""
    return dict(re.findall(r'<tr id="([^"]+)">(.*?)</tr>', html, re.DOTALL))


def test_every_group_is_on_a_page_with_all_of_its_keys(html: dict[str, str]) -> None:
    rows = {anchor for address in ADDRESSES for anchor in rows_of(html[address])}
    for model in MODELS:
        own = model in (Variation, StepChange, CakeVariation, OrderChange)
        anchors = [f"{slug(title_of(model))}-{slug(key.name)}" for key in keys_of(model, own=own)]
        assert [each for each in anchors if each not in rows] == []


def test_page_and_schema_say_the_same(html: dict[str, str]) -> None:
    """Meaning, what happens without it, default and examples: as the schema of the file has them, word for word."""
    rows = {anchor: plain(row) for address in ADDRESSES for anchor, row in rows_of(html[address]).items()}
    compared = 0
    for name in kinds():
        for model, schema in schema_of(name)["$defs"].items():
            group = next((each for each in schema.get("anyOf", [schema]) if "properties" in each), None)
            title = next((title_of(each) for each in MODELS if each.__name__ == model), "")
            for key, said in group["properties"].items() if group else ():
                anchor = f"{slug(title)}-{slug(key)}"
                if anchor not in rows:
                    assert model in (
                        "Variation",
                        "StepChange",
                        "CakeVariation",
                        "OrderChange",
                    )  # the other keys are of a recipe, step, cake
                    continue
                meaning, _, left_out = said["description"].replace("`", "").partition(f" {LEFT_OUT} ")
                assert meaning in rows[anchor], anchor
                assert left_out.removesuffix(".").lower() in rows[anchor].lower(), anchor
                assert said.get("default", "") in rows[anchor], anchor
                compared += 1
    assert compared > 250


def test_anchors_are_unique_and_every_way_within_a_page_leads_somewhere(html: dict[str, str]) -> None:
    headings = {address: re.findall(r"\{ #([a-z0-9-]+) \}", text) for address, text in html.items()}
    for address, text in html.items():
        ids = [*re.findall(r' id="([^"]+)"', text), *headings[address]]
        assert [each for each, count in Counter(ids).items() if count > 1] == []
        assert set(re.findall(r'href="#([^"]+)"', text)) <= set(ids)
        for page, anchor in re.findall(r'href="/(reference/[a-z]+)#([^"]+)"', text):
            assert anchor in headings[page]


def test_every_way_to_write_a_value_has_its_section(html: dict[str, str]) -> None:
    text = html[FORMS_PAGE]
    assert "## How a tin is written { #a-tin }" in text
    for form in FORMS:
        name = form.name
        assert f"## How {name} is written" in text or f"## How to write {name} {{" in text
        for example in form.examples:
            assert f"<code>{example}</code>" in text


def test_the_houses_page_shows_each_file_and_says_what_is_private(html: dict[str, str]) -> None:
    text, kitchens = plain(html[HOUSE]), plain(html[KITCHEN])
    for kind in kinds().values():
        with_stock = kind.seen_by is SeenBy.KITCHEN or kind.name in ("supplies", "labels")
        assert (f"recipes/{kind.path}" in text) == (kind.room == "house" and not with_stock)
        assert (f"recipes/{kind.path}" in kitchens) == (kind.room == "house" and with_stock)
    assert "This file is private: no page ever shows what is in it." in text


def test_the_list_of_them(page: Callable[[str], Page], filled: Filled) -> None:
    text = filled("reference/index")
    assert all(f'href="/{address}#"' in text and title in unescape(text) for address, title in TITLE_OF.items())
    assert page(RECIPES).section == ("Reference", "Writing recipes")


def test_a_public_book_has_them_too_and_no_word_of_the_house_is_in_them(demo: Loaded, html: dict[str, str]) -> None:
    bare = type(demo.book)(house=kinds()["house"].nothing)
    pages = build_site(bare, demo.facts, {}).pages
    for address, text in html.items():
        made = pages[address]
        assert made.fill(made.markdown, lambda to, anchor="": f"/{to}#{anchor}") == text
