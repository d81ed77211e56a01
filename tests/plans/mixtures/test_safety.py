"""Allergens and cautions: nothing unknown is shown as free, and what is told depends on the heat it has seen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.mixtures.safety import allergens, card_notes, cautions

Batches = Callable[..., Batch]
NOT_BAKED = {"tins": None, "bake": None, "kind": "buttercream", "makes": "500 g"}
CARD_SAYS = {"none": "none", "unknown": None, "empty": [], "milk": ["milk"], "two": ["egg", "hazelnut"]}


def keys(batch: Batch, book: Book, facts: Facts) -> set[str]:
    return {caution.key for caution in cautions(batch, book, facts)}


def test_allergens_name_where_they_come_from(batch: Batches, kitchen: Book, facts: Facts) -> None:
    strip = allergens(batch(), kitchen, facts)
    assert {each.allergen: each.ingredients for each in strip.contains} == {
        "wheat": ("self-raising flour",),
        "egg": ("egg",),
        "milk": ("butter", "milk"),
    }
    assert strip.unknown == ()


def test_allergens_stand_in_the_order_of_the_law(batch: Batches, kitchen: Book, facts: Facts) -> None:
    """Annex II of Regulation (EU) 1169/2011: cereals 1, eggs 3, soya 6, milk 7."""
    made = batch(mix=["100 g dark chocolate", "4 eggs", "100 g plain flour", "50 g butter"])
    labels = [each.allergen for each in allergens(made, kitchen, facts).contains]
    groups = [next(row.group for row in facts.allergens.values() if row.label == label) for label in labels]
    assert groups == sorted(groups) == [1, 3, 6, 7]


@pytest.mark.parametrize("said", CARD_SAYS)
def test_what_nobody_has_said_is_unknown(
    batch: Batches, kitchen: Book, facts: Facts, card: Callable[..., Card], said: str
) -> None:
    extra = {} if CARD_SAYS[said] is None else {"allergens": CARD_SAYS[said]}
    book = replace(kitchen, cards={**kitchen.cards, "filling": card(**extra)})
    strip = allergens(batch(book=book, mix=["100 g butter", "100 g filling"]), book, facts)
    assert ("filling" in strip.unknown) == (said in ("unknown", "empty"))
    named = {each.allergen for each in strip.contains if "filling" in each.ingredients}
    assert bool(named) == (said in ("milk", "two"))


@settings(max_examples=60)
@given(said=st.lists(st.sampled_from(list(CARD_SAYS)), min_size=1, max_size=6))
def test_every_ingredient_is_declared_unknown_or_free_on_its_card(
    batch: Batches, kitchen: Book, facts: Facts, card: Callable[..., Card], said: list[str]
) -> None:
    cards = {f"thing {number}": card(**({} if CARD_SAYS[one] is None else {"allergens": CARD_SAYS[one]}))
             for number, one in enumerate(said)}  # fmt: skip
    book = replace(kitchen, cards=cards)
    strip = allergens(batch(book=book, mix=[f"10 g {name}" for name in cards], tins="round 20 cm"), book, facts)
    told = {name for each in strip.contains for name in each.ingredients} | set(strip.unknown)
    assert set(cards) - told == {name for name, one in zip(cards, said, strict=True) if one == "none"}


def test_an_ingredient_used_twice_is_named_once(batch: Batches, kitchen: Book, facts: Facts) -> None:
    made = batch(mix=["100 g butter", {"take": "20 g butter", "part": "top"}, "50 g sugarpaste", "50 g sugarpaste"])
    strip = allergens(made, kitchen, facts)
    assert [each.ingredients for each in strip.contains] == [("butter",)]
    assert strip.unknown == ("sugarpaste",)


def test_raw_egg_and_flour_by_what_heat_they_have_seen(batch: Batches, kitchen: Book, facts: Facts) -> None:
    """Eaten uncooked: the raw egg and raw flour cautions. Baked: no tasting of the batter. Boiled: neither."""
    mix = ["3 eggs", "200 g caster sugar", "20 g plain flour"]
    uncooked = keys(batch(mix=mix, **NOT_BAKED), kitchen, facts)
    cooked = keys(batch(mix=mix, cooked="yes", **NOT_BAKED), kitchen, facts)
    baked = keys(batch(mix=mix), kitchen, facts)
    assert uncooked == {"raw egg", "raw flour"}
    assert cooked == set()
    assert baked == {"raw batter"}


def test_egg_without_flour_is_still_raw_batter(batch: Batches, kitchen: Book, facts: Facts) -> None:
    assert keys(batch(mix=["4 egg whites", "200 g caster sugar"]), kitchen, facts) == {"raw batter"}
    assert keys(batch(mix=["4 egg whites", "200 g caster sugar"], **NOT_BAKED), kitchen, facts) == {"raw egg"}
    assert keys(batch(mix=["200 g butter", "200 g caster sugar"]), kitchen, facts) == set()


def test_curd_is_kept_cold_whatever_is_in_it(batch: Batches, kitchen: Book, facts: Facts, demo: Loaded) -> None:
    """Egg and butter set by heat: no ingredient's card says it, the kind of mixture does."""
    mix = ["3 eggs", "200 g caster sugar", "100 g butter"]
    curd = {**NOT_BAKED, "kind": "curd", "cooked": "yes"}
    assert keys(batch(mix=mix, **curd), kitchen, facts) == {"cold chain"}
    assert keys(batch(mix=mix, **{**curd, "kind": "buttercream"}), kitchen, facts) == set()
    batches = weigh_all(demo.book, demo.facts)
    cold = {slug for slug, made in batches.items() if "cold chain" in keys(made, demo.book, demo.facts)}
    assert {"lemon-curd", "dark-ganache"} <= cold and "american-buttercream" not in cold


@pytest.mark.parametrize("heat", [{}, NOT_BAKED, {**NOT_BAKED, "cooked": "yes"}])
def test_some_cautions_no_heat_takes_away(batch: Batches, kitchen: Book, facts: Facts, heat: dict[str, Any]) -> None:
    """Honey for babies: no oven makes it safe."""
    told = keys(batch(mix=["100 g honey", "400 g butter"], **heat), kitchen, facts)
    always = {key for key, row in facts.cautions.items() if "honey" in row.traits and row.when == "always"}
    assert always and always <= told


def test_every_trait_fires_and_only_where_it_stands(
    batch: Batches, kitchen: Book, facts: Facts, card: Callable[..., Card]
) -> None:
    for trait in facts.traits:
        book = replace(kitchen, cards={**kitchen.cards, "thing": card(care=[trait], allergens="none")})
        told = set()
        for heat in ({}, NOT_BAKED):
            found = cautions(batch(book=book, mix=["100 g thing"], **heat), book, facts)
            assert all(trait in caution.traits for caution in found)
            told |= {caution.key for caution in found}
        assert told == {key for key, row in facts.cautions.items() if trait in row.traits}, trait


def test_notes_follow_their_ingredient(batch: Batches, kitchen: Book) -> None:
    made = batch(mix=["4 eggs", "250 g butter", "2 eggs, for the glaze", "100 g caster sugar"])
    notes = [(note.ingredient, note.text) for note in card_notes(made, kitchen)]
    assert notes == [("egg", "At room heat."), ("egg", "Fresh."), ("butter", "Soft.")]


# Private cards: words are held back, what safety needs is not


@pytest.fixture(scope="module")
def sealed(demo: Loaded) -> Book:
    """The demo book with every card private, as a site may show it."""
    from tinbook.loading.private import public_book

    cards = {name: card.model_copy(update={"private": True}) for name, card in demo.book.cards.items()}
    return public_book(replace(demo.book, cards=cards), ())


def test_a_private_card_keeps_its_allergens_and_cautions(demo: Loaded, sealed: Book) -> None:
    open_, shut = (weigh_all(book, demo.facts) for book in (demo.book, sealed))
    assert shut
    for slug, batch in shut.items():
        assert allergens(batch, sealed, demo.facts) == allergens(open_[slug], demo.book, demo.facts)
        assert cautions(batch, sealed, demo.facts) == cautions(open_[slug], demo.book, demo.facts)


def test_a_private_card_keeps_its_weight_and_loses_its_words(demo: Loaded, sealed: Book) -> None:
    open_, shut = (weigh_all(book, demo.facts) for book in (demo.book, sealed))
    assert set(shut) == set(open_)
    for slug, batch in shut.items():
        assert batch.ingredients == open_[slug].ingredients
        assert card_notes(batch, sealed) == ()
    assert any(card_notes(batch, demo.book) for batch in open_.values())


def test_a_line_that_uses_another_name_of_a_private_card_is_still_weighed(
    batch: Batches, kitchen: Book, facts: Facts, mixture: Callable[..., Any]
) -> None:
    from tinbook.loading.private import public_book

    for private in (True, ("also",), ("notes",)):
        card = kitchen.cards["butter"].model_copy(update={"private": private})
        written = mixture(mix=["250 g sweet butter", "4 eggs"])
        book = replace(kitchen, cards={**kitchen.cards, "butter": card}, mixtures={"plain": written})
        assert weigh_all(public_book(book, ()), facts)["plain"].mass_g == pytest.approx(250 + 4 * 68 * 0.885)
