"""What a guest must not have, against every crumb of an order."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, Worked

from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.orders.free_from import FreeFrom, held_against, meant


def told(book: Book, name: str, *allergens: str) -> Book:
    """The book with an ingredient of which these allergens are known."""
    card = book.cards[name].model_copy(update={"allergens": allergens or ("none",)})
    return replace(book, cards={**book.cards, name: card})


def held(worked: Worked, demo: Loaded, data: dict[str, object], word: str, book: Book | None = None) -> FreeFrom:
    (found,) = held_against(worked({**data, "must be free from": [word]}), book or demo.book, demo.facts)
    return found


@pytest.mark.parametrize(
    ("word", "groups"),
    [("nuts", {8}), ("gluten", {1}), ("almond", {8}), ("Milk", {7}), ("dairy", {7}), ("eggs", {3}), ("sesame", {11}),
     ("peanut", {5}), ("soy", {6}), ("sulphites", {12})],
)  # fmt: skip
def test_people_ask_in_their_own_words(word: str, groups: set[int], demo: Loaded) -> None:
    """The numbers are those of Annex II of Regulation (EU) 1169/2011; the words are common practice, no source."""
    found = meant(word, demo.book, demo.facts)
    assert isinstance(found, frozenset) and {demo.facts.allergens[key].group for key in found} == groups


def test_all_nuts_are_meant_by_nuts_and_one_by_its_name(demo: Loaded) -> None:
    assert meant("nuts", demo.book, demo.facts) == {
        key for key, each in demo.facts.allergens.items() if each.group == 8
    }
    assert meant("walnut", demo.book, demo.facts) == {"walnut"}
    assert meant("caster sugar", demo.book, demo.facts) == "caster sugar"
    assert meant("kelp", demo.book, demo.facts) is None


def test_what_it_comes_from_is_named_and_what_has_none_of_it_offered(worked: Worked, demo: Loaded) -> None:
    found = held(worked, demo, CUPS, "milk")
    assert ("butter", "milk") in found.sources and not found.clear
    ((recipe, instead),) = found.instead
    assert recipe == demo.book.mixtures["cupcakes"].name and "vegan-vanilla-sponge" in instead
    for slug in instead:
        names = [demo.book.house_word(line.take.name) for line in demo.book.mixtures[slug].mix]
        known = [demo.book.cards[name or ""].known_allergens for name in names]
        assert all(keys is not None and "milk" not in keys for keys in known)


def test_an_unknown_stands_in_the_way_until_a_card_says(worked: Worked, demo: Loaded) -> None:
    found = held(worked, demo, LIGHT, "sesame")
    assert found.unknown and not found.sources and not found.clear
    book = demo.book
    for name in found.unknown:
        book = told(book, name)
    assert held(worked, demo, LIGHT, "sesame", book).clear
    poppy = told(book, found.unknown[0], "sesame")
    assert held(worked, demo, LIGHT, "sesame", poppy).sources == ((found.unknown[0], "sesame"),)


@pytest.mark.parametrize(
    "where",
    [{"coat": "dark-ganache"}, {"filling": "marzipan"}, {"cover": "marzipan"}, {"decorations": []}],
    ids=["coat", "filling", "cover", "nothing on it"],
)
def test_every_crumb_counts(where: dict[str, object], worked: Worked, demo: Loaded) -> None:
    """An allergen planted on each ingredient of a cake in turn is found, wherever it is used."""
    order = worked({"cake": "lighthouse-cake", "change": where, "must be free from": ["lupin"]})
    (cake,) = order.cakes
    named = {line.name for total in cake.mixtures for line in total.batch.ingredients}
    named |= {line.name for tier in cake.every_tier if tier.baked for line in tier.baked.batch.ingredients}
    named |= {line.name for paste in cake.pastes if paste.batch for line in paste.batch.ingredients}
    named |= {name for paste in cake.pastes for name, _, _ in paste.pots}
    assert len(named) > 5
    for name in sorted(named & set(demo.book.cards)):
        (found,) = held_against(order, told(demo.book, name, "lupin"), demo.facts)
        assert (name, "lupin") in found.sources
