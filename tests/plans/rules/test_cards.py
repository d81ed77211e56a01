"""Rules between the fields of cards. The words a baker is shown are in tests/source/bad."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, Card, Flaw
from tinbook.plans.rules.cards import alias_flaws, card_flaws


def only(flaws: Iterable[Flaw]) -> Flaw:
    (flaw,) = flaws
    assert flaw.message and flaw.hint
    return flaw


@every(
    ("keys", "path", "cure"),
    [
        ({"weighs_as": "suger"}, "weighs as", '"sugar"'),
        ({"weighs_as": "sugar", "weighs": "1 g/ml"}, "weighs", "weighs as"),
        ({"allergens": ["milk", "wheet"]}, "allergens", '"wheat"'),
        ({"allergens": ["none", "milk"]}, "allergens", "none"),
        ({"care": ["raw eg"]}, "care", '"raw egg"'),
        ({"plain": "plain flur"}, "plain", '"plain flour"'),
    ],
)
def test_a_word_on_a_card_that_nobody_knows(
    card: Callable[..., Card], kitchen: Book, facts: Facts, keys: Any, path: str, cure: str
) -> None:
    flaw = only(card_flaws("thing", card(**keys), list(kitchen.cards), facts))
    assert flaw.path[0] == path
    assert cure in flaw.hint


def test_a_sound_card_breaks_no_rule(kitchen: Book, facts: Facts) -> None:
    for name, card in kitchen.cards.items():
        assert not tuple(card_flaws(name, card, list(kitchen.cards), facts)), name


def test_one_name_leads_to_one_card(card: Callable[..., Card]) -> None:
    cards = {
        "butter": card(also=["sweet butter"]),
        "margarine": card(also=["Sweet Butter"]),
        "lard": card(also=["butter"]),
    }
    flaws = tuple(alias_flaws(cards))
    assert [flaw.path[:3] for flaw in flaws] == [("ingredients", "margarine", "also"), ("ingredients", "lard", "also")]
    assert not tuple(alias_flaws({"butter": card(also=["sweet butter", "SWEET butter", "Butter"])}))


@pytest.mark.parametrize(
    ("allergens", "words", "cure"),
    [
        (["Nothing"], "is not an allergen", 'write "allergens: none"'),
        (["nil", "milk"], "is not an allergen", '"none" goes on its own'),
        (["nuts", "milk"], "is a group of allergens", "almond"),
        (["wheet"], 'the allergen "wheet" is not known', '"wheat"'),
    ],
)
def test_what_is_no_allergen(
    card: Callable[..., Card], facts: Facts, allergens: list[str], words: str, cure: str
) -> None:
    flaw = only(card_flaws("thing", card(allergens=allergens), [], facts))
    assert flaw.path == ("allergens", 0)
    assert words in flaw.message and cure in flaw.hint
