"""The page of allergens: every product, the rules with their date, and who has the last word."""

from __future__ import annotations

import re

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.labels.allergens import AllergensView, allergens_pages
from tinbook.site import build_site


def text_of(demo: Loaded) -> str:
    page = build_site(demo.book, demo.facts, {}).pages["allergens"]
    return page.fill(page.markdown, lambda to, anchor="": f"/{to}#{anchor}")


def test_every_product_has_a_row_and_a_list(demo: Loaded) -> None:
    text = text_of(demo)
    for address in (
        *(f"mixtures/{slug}" for slug in demo.book.mixtures),
        *(f"cakes/{slug}" for slug in demo.book.cakes),
    ):
        assert text.count(f'href="/{address}#"') == 2, address
    assert "<b>milk</b>" in text and "Not complete: the card for" in text


def test_it_says_which_rules_of_which_day_and_who_has_the_last_word(demo: Loaded) -> None:
    text = " ".join(text_of(demo).split())
    assert "these rules come from were last read on 1 Dec 2026" in text
    assert "sesame, lupin and molluscs. Where anything is “not known”, those are not known either" in text
    assert "ask your local authority, who has the last word" in text and "Article 21(1)" in text
    assert "no table of energy and nutrients is worked out here" in text and "free from" in text
    # no tag of a recipe is ever a claim
    assert not re.search(r"(?i)suitable for vegans|gluten[- ]free</|>vegan<", text)


def test_a_house_that_does_not_say_where_gets_no_rules(demo: Loaded) -> None:
    from dataclasses import replace

    book = replace(demo.book, others={**demo.book.others, "labels": None})
    view = AllergensView(Desk(book, demo.facts, {}))
    assert view.where == "" and view.rules == () and view.items[0].rows


def test_a_book_with_nothing_has_no_page(demo: Loaded) -> None:
    from dataclasses import replace

    assert list(allergens_pages(Desk(replace(demo.book, mixtures={}, cakes={}, cake_bases={}), demo.facts, {}))) == []
