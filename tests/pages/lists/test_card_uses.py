"""Where each ingredient is used."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked
from tinbook.pages.lists.card_uses import CardUses, card_uses


@pytest.fixture(scope="module")
def uses(desk: Desk) -> CardUses:
    return card_uses(desk)


def addresses(links: tuple[Linked, ...]) -> set[str]:
    return {link.address for link in links}


def test_every_line_of_a_mixture_leads_to_it(desk: Desk, uses: CardUses) -> None:
    for slug, mixture in desk.book.mixtures.items():
        names = {desk.book.house_word(line.take.name) for line in mixture.mix}
        assert {name for name, links in uses.mixtures.items() if f"mixtures/{slug}" in addresses(links)} == names


def test_every_material_of_a_technique_that_has_a_card_leads_to_it(desk: Desk, uses: CardUses) -> None:
    assert uses.techniques
    for slug, technique in desk.book.techniques.items():
        named = {desk.book.house_word(material.take.name) for material in technique.materials} - {None}
        assert {name for name, links in uses.techniques.items() if f"techniques/{slug}" in addresses(links)} == named


def test_a_part_of_a_swap_stands_in_but_not_what_is_left_out(uses: CardUses) -> None:
    assert "ingredients/self-raising-flour" in addresses(uses.stands_in["plain flour"])
    assert "salt" not in uses.stands_in


def test_links_go_by_name_and_stand_once(uses: CardUses) -> None:
    for links in (*uses.mixtures.values(), *uses.techniques.values(), *uses.stands_in.values()):
        assert [link.name for link in links] == sorted((link.name for link in links), key=str.lower)
        assert len(addresses(links)) == len(links)


def test_nothing_stands_in_for_a_private_card(desk: Desk, uses: CardUses) -> None:
    assert "ingredients/self-raising-flour" in addresses(uses.stands_in["plain flour"])
    flour = desk.book.cards["self-raising flour"].model_copy(update={"private": True})
    private = Desk(replace(desk.book, cards={**desk.book.cards, "self-raising flour": flour}), desk.facts, {})
    assert "ingredients/self-raising-flour" not in addresses(card_uses(private).stands_in.get("plain flour", ()))
