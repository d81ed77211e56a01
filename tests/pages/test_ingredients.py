"""The page of ingredients."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.pages.ingredients import ingredients_pages
from tinbook.pages.page import Desk


def test_every_card_has_its_place_and_its_users(desk: Desk, filled: Callable[[str], str]) -> None:
    (page,) = ingredients_pages(desk)
    cards = {card.name: card for card in page.view.items}
    assert set(cards) == set(desk.book.cards)
    assert "mixtures/creamed-butter-sponge" in {user.address for user in cards["butter"].used_in}
    text = filled("ingredients")
    assert "superfine sugar" in text and "Allergens unknown" in text


def test_a_private_card_is_not_on_the_page(desk: Desk) -> None:
    cards = {name: card.model_copy(update={"private": True}) for name, card in desk.book.cards.items()}
    (page,) = ingredients_pages(Desk(replace(desk.book, cards=cards), desk.facts, {}))
    assert page.view.items == ()
