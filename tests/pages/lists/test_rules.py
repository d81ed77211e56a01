"""The page of cautions and rules, and what of it stands where allergens and boards are."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from html import unescape

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk, cross_contact
from tinbook.pages.lists.rules import rules_pages
from tinbook.pages.mixture.view import MixtureView
from tinbook.pages.technique.sheet import sheet_of
from tinbook.site import build_site

Filled = Callable[[str], str]


def test_every_rule_and_caution_with_its_law_and_day(filled: Filled, demo: Loaded) -> None:
    text = unescape(filled("cautions"))
    for rule in demo.facts.rules.values():
        assert f"## {rule.title}" in text
        for law in rule.laws:
            when = f"in force since {law.since}" if law.since else "the date they came into force has not been checked"
            assert f"<b>{law.nation}</b>: {law.says}. <small>{law.law}; {when}.</small>" in text
            recalled = f'#source-from-memory">{law.law}, its text given from memory</a>'
            assert recalled in text or law.source != "from memory", law.law
    for caution in demo.facts.cautions.values():
        assert f"<b>{caution.title}.</b> {caution.advice}" in text
    assert "your local authority has the last word" in text
    for key in ("registering", "Scottish-hygiene-rules", "packed-food-England"):
        assert f"#source-{key}" in text


def test_it_is_linked_where_allergens_are(filled: Filled) -> None:
    for address in ("mixtures/creamed-butter-sponge", "techniques/cover-a-board"):
        assert '<a href="/cautions#">If you sell cakes</a>' in filled(address)


@pytest.mark.parametrize("address", ["mixtures/creamed-butter-sponge", "techniques/cover-a-board", "cautions"])
def test_cross_contact_is_the_house_own_word_or_none(filled: Filled, demo: Loaded, address: str) -> None:
    desk = Desk(demo.book, demo.facts, {})
    said = cross_contact(desk)
    assert said and said in filled(address).replace("\\", "")
    quiet = demo.book.house.model_copy(update={"cross_contact": None})
    pages = build_site(replace(demo.book, house=quiet), demo.facts, {}).pages
    silent = pages[address].fill(pages[address].markdown, lambda to, anchor="": f"/{to}#{anchor}")
    assert "About this kitchen" not in silent and "may contain" not in silent.lower()


def test_cross_contact_goes_along_with_a_sheet(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, {})
    sheet = sheet_of("stack-two-tiers", desk)
    assert sheet.cross_contact == cross_contact(desk)
    assert "Lighthouse Madeira: wheat, egg and milk" in sheet.made_with
    assert not any(each.title == "wheat" for each in sheet.contains)


def test_a_private_word_of_the_house_is_nowhere(demo: Loaded) -> None:
    from tinbook.loading.private import public_book

    house = demo.book.house.model_copy(update={"private": ("cross contact",)})
    shut = public_book(replace(demo.book, house=house), ())
    assert cross_contact(Desk(shut, demo.facts, {})) == ""


def test_moving_and_carrying_stands_by_boards_and_tiers(filled: Filled) -> None:
    for address in ("boards", "guests", "techniques/stack-two-tiers"):
        assert "<b>Moving and carrying.</b>" in filled(address), address
    assert "<b>Moving and carrying.</b>" not in filled("techniques/pipe-a-border")


def test_cold_storage_stands_by_curd(filled: Filled, demo: Loaded) -> None:
    assert "<b>Keep it cold.</b>" in filled("mixtures/lemon-curd")
    desk = Desk(demo.book, demo.facts, {})
    assert [caution.key for caution in MixtureView(desk.batches["lemon-curd"], desk).cautions] == ["cold chain"]
    assert "<b>Keep it cold.</b>" not in filled("mixtures/creamed-butter-sponge")


def test_there_is_one_such_page(demo: Loaded) -> None:
    (page,) = rules_pages(Desk(demo.book, demo.facts, {}))
    assert page.address == "cautions"
    assert re.search(r"<!--tinbook:parts/laws 0-->", page.markdown)
