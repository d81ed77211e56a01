"""Ingredients: the list, and a page for each card."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.lists.ingredients import ingredients_pages

Filled = Callable[[str], str]


@pytest.fixture(scope="module")
def pages(desk: Desk) -> dict[str, Page]:
    return {page.address: page for page in ingredients_pages(desk)}


def test_every_card_has_a_page_and_a_line_in_the_list(desk: Desk, pages: dict[str, Page]) -> None:
    first, *rest = pages
    assert first == "ingredients"
    assert len(rest) == len(desk.book.cards) >= 60
    assert [line.address for line in pages[first].view.entries] == rest
    assert pages["ingredients/glace-cherries"].title == "Glacé cherries"


def test_only_the_list_stands_in_the_contents(pages: dict[str, Page]) -> None:
    assert [page.address for page in pages.values() if page.listed] == ["ingredients"]


def test_every_card_of_the_demo_says_what_it_is(desk: Desk) -> None:
    assert [name for name, card in desk.book.cards.items() if not card.about] == []


def test_the_list_finds_other_names_and_allergens(filled: Filled) -> None:
    text = filled("ingredients")
    assert "superfine sugar" in text
    assert 'data-narrow="ingredients"' in text
    assert 'data-tag="milk|soya"' in text and 'data-tag="unknown"' in text and 'data-tag="none named"' in text
    assert "227\u00a0g a cup" in text


def test_a_page_says_what_is_known(filled: Filled) -> None:
    text = filled("ingredients/butter")
    for words in ("four fifths", "sweet butter", "<strong>milk</strong>", "thumbprint", "Metric cup", "222–229",
                  "Salted butter for unsalted", "This swap contains milk", "/mixtures/creamed-butter-sponge#",
                  "GNU Units", "How this was worked out"):  # fmt: skip
        assert words in text, words


def test_unknown_is_never_free(filled: Filled) -> None:
    assert "Unknown does not mean “free from”" in filled("ingredients/gel-food-colour")
    assert "None of the fourteen allergens is listed on its card" in filled("ingredients/caster-sugar")


def test_cautions_stand_on_the_card(filled: Filled) -> None:
    assert "No honey for babies" in filled("ingredients/honey")
    assert "Uncooked flour" in filled("ingredients/plain-flour")
    assert "tb-caution" not in filled("ingredients/caster-sugar")


def test_no_weight_is_said_to_be_none(filled: Filled) -> None:
    assert "cannot be measured by volume: weigh it" in filled("ingredients/sugarpaste")
    assert "Weighed in this kitchen" in filled("ingredients/gluten-free-flour-blend")
    assert "One UK large egg white weighs about 39.5\u00a0g" in filled("ingredients/egg-white")


def test_an_egg_by_weight_stands_before_what_may_stand_in(pages: dict[str, Page]) -> None:
    for name in ("egg", "egg-white", "egg-yolk"):
        assert pages[f"ingredients/{name}"].view.items[0].title == "By weight"


def test_swaps_lead_both_ways(desk: Desk, pages: dict[str, Page], filled: Filled) -> None:
    flour = pages["ingredients/plain-flour"].view
    goes = {group.title: {each.address for each in group.links} for group in flour.goes}
    assert "ingredients/self-raising-flour" in goes["In swaps for"]
    assert "/ingredients/self-raising-flour#" in filled("ingredients/plain-flour")
    salt = {group.title for group in pages["ingredients/salt"].view.goes}
    assert "In swaps for" not in salt, "salt is left out of a swap, it stands in for nothing"


def test_a_mixture_leads_to_its_cards(desk: Desk, filled: Filled) -> None:
    text = filled("mixtures/creamed-butter-sponge/tables")
    for name in ("butter", "caster-sugar", "egg", "self-raising-flour"):
        assert f'href="/ingredients/{name}#"' in text


def test_used_in_is_all_and_only_where_it_is_used(desk: Desk, pages: dict[str, Page]) -> None:
    for name, address in desk.card_pages.items():
        goes = {group.title: {each.address for each in group.links} for group in pages[address].view.goes}
        used = {
            f"mixtures/{slug}"
            for slug, mixture in desk.book.mixtures.items()
            if any(desk.book.house_word(line.take.name) == name for line in mixture.mix)
        }
        assert goes.get("In mixtures", set()) == used


def test_a_private_card_has_no_page_and_no_line(desk: Desk) -> None:
    cards = {**desk.book.cards, "butter": desk.book.cards["butter"].model_copy(update={"private": True})}
    private = Desk(replace(desk.book, cards=cards), desk.facts, {})
    pages = {page.address: page for page in ingredients_pages(private)}
    assert "ingredients/butter" not in pages
    assert all(line.name != "butter" for line in pages["ingredients"].view.entries)
    goes = [group for page in pages.values() if page.address != "ingredients" for group in page.view.goes]
    assert all(each.address != "ingredients/butter" for group in goes for each in group.links)
