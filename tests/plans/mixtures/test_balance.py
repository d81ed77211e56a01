"""Bakers' percentages and balance rules, by hand and by law."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.models import Book, Card
from tinbook.plans.mixtures.balance import OTHER, Balance, Standing, balance, has_balance, part_of

Batches = Callable[..., Any]
POUND = ["200 g butter", "200 g caster sugar", "200 g egg", "200 g self-raising flour"]


@pytest.fixture
def made(batch: Batches, kitchen: Book, facts: Facts) -> Callable[..., Balance]:
    def make(**changes: Any) -> Balance:
        return balance(batch(**changes), kitchen, facts)

    return make


def standing(made: Balance, key: str) -> Standing:
    (found,) = [each for each in made.standings if each.rule.key == key]
    return found


def test_a_pound_cake_is_a_hundred_of_each(made: Callable[..., Balance]) -> None:
    """Quatre-quarts, 1:1:1:1: baking-sense.com (tests/data/formula_balance.csv, F10). It keeps every creamed rule."""
    cake = made(mix=POUND)
    assert cake.base == "flour"
    assert {share.part: share.per_100 for share in cake.parts} == dict.fromkeys(("flour", "sugar", "fat", "egg"), 100.0)
    assert [(each.value, each.side, each.within) for each in cake.standings] == [(100.0, "within", True)] * 4
    assert not cake.off


def test_the_sponge_by_hand(made: Callable[..., Balance], facts: Facts) -> None:
    """240 g each of butter, sugar and flour, 4 eggs out of the shell, 60 ml of milk, 2 tsp of vanilla."""
    cake = made()
    egg = 4 * facts.eggs["UK large"].shelled_g
    milk = 60 * facts.densities["milk"].value
    assert standing(cake, "egg to fat, creamed").value == pytest.approx(100 * egg / 240)
    assert standing(cake, "egg and liquid to flour, creamed").value == pytest.approx(100 * (egg + milk) / 240)
    assert cake.off and standing(cake, "egg and liquid to flour, creamed").side == "above"
    assert [share.name for share in cake.lines][:3] == ["butter", "caster sugar", "egg"]
    assert {share.part for share in cake.parts} == {"flour", "sugar", "fat", "egg", "liquid", OTHER}


def test_either_form_of_a_rule_is_enough(made: Callable[..., Balance]) -> None:
    """A Madeira: half as much flour again, so egg and liquid match the sugar and not the flour."""
    cake = made(kind="madeira", mix=[*POUND[:3], "300 g plain flour"])
    flour = standing(cake, "egg and liquid to flour, creamed")
    assert (flour.side, flour.within, cake.off) == ("below", True, False)
    dry = made(kind="madeira", mix=["200 g butter", "200 g caster sugar", "120 g egg", "300 g plain flour"])
    assert not standing(dry, "egg and liquid to flour, creamed").within


def test_cocoa_counts_with_the_flour(made: Callable[..., Balance]) -> None:
    cake = made(mix=[*POUND[:3], "170 g self-raising flour", "30 g cocoa powder"])
    assert standing(cake, "sugar to flour, creamed").value == pytest.approx(100.0)


def test_too_much_is_above(made: Callable[..., Balance]) -> None:
    sweet = standing(made(mix=["200 g butter", "210 g caster sugar", *POUND[2:]]), "sugar to flour, creamed")
    assert (sweet.value_shown, sweet.high_shown, sweet.side) == (105.0, 100.0, "above")


def test_what_reads_as_the_limit_keeps_it(made: Callable[..., Balance]) -> None:
    """100.4 prints as 100, so it is within 100: the words never contradict the figures."""
    cake = made(mix=["250 g butter", "251 g caster sugar", "250 g egg", "250 g self-raising flour"])
    assert standing(cake, "sugar to flour, creamed").side == "within"


def test_a_rule_with_nothing_to_compare_is_not_broken(made: Callable[..., Balance]) -> None:
    fatless = standing(made(mix=POUND[1:]), "egg to fat, creamed")
    assert (fatless.value, fatless.side, fatless.within) == (None, "none", True)


def test_without_flour_sugar_is_the_hundred(made: Callable[..., Balance]) -> None:
    icing = made(kind="buttercream", tins=None, bake=None, makes="600 g", mix=["200 g butter", "400 g caster sugar"])
    assert (icing.base, standing(icing, "sugar to fat, buttercream").value) == ("sugar", 200.0)
    assert {share.part: share.per_100 for share in icing.parts} == {"sugar": 100.0, "fat": 50.0}


def test_without_both_the_heaviest_part(made: Callable[..., Balance]) -> None:
    plain = {"kind": "ganache", "tins": None, "bake": None, "makes": "600 g"}
    assert made(**plain, mix=["400 g milk", "200 g butter", "500 g dark chocolate"]).base == "liquid"
    assert made(**plain, mix=["500 g dark chocolate"]).base == OTHER


@every(
    ("data", "part"),
    [
        ({"weighs as": "butter"}, "fat"),
        ({"each": "egg white"}, "egg"),
        ({"each": "120 g"}, OTHER),
        ({"weighs": "1 g/ml", "counts as": "liquid"}, "liquid"),
        ({"weighs as": "butter", "counts as": "sugar"}, "sugar"),
        ({}, OTHER),
    ],
)
def test_what_a_card_counts_as(data: dict[str, Any], part: str, facts: Facts) -> None:
    assert part_of(Card.model_validate(data), facts) == part


def test_what_is_no_cake_and_has_no_rule_is_left_alone(batch: Batches, facts: Facts) -> None:
    paste = batch(kind="sugarpaste", tins=None, bake=None, makes="500 g", mix=["500 g sugarpaste"])
    assert not has_balance(paste, facts)
    assert has_balance(batch(), facts)


@given(st.floats(0.1, 50))
def test_size_does_not_matter(batch: Batches, kitchen: Book, facts: Facts, times: float) -> None:
    """Law: percentages are the same for any number of batches."""
    one = balance(batch(mix=POUND), kitchen, facts)
    grams = [f"{200 * times:.6f} g {line.partition(' g ')[2]}" for line in POUND]
    more = balance(batch(tins="99 round 25 cm x 10 cm", mix=grams), kitchen, facts)
    assert [each.value for each in more.standings] == pytest.approx([each.value for each in one.standings])


@given(st.lists(st.floats(1, 1000), min_size=4, max_size=4))
def test_parts_are_made_of_their_ingredients(batch: Batches, kitchen: Book, facts: Facts, grams: list[float]) -> None:
    lines = [f"{mass:.3f} g {line.partition(' g ')[2]}" for mass, line in zip(grams, POUND, strict=True)]
    cake = balance(batch(tins="99 round 25 cm x 10 cm", mix=lines), kitchen, facts)
    assert sum(each.per_100 for each in cake.parts) == pytest.approx(sum(each.per_100 for each in cake.lines))
    for each in cake.standings:
        assert each.value is not None and each.value_shown == rounding.per_hundred(each.value)
