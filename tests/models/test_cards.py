"""Ingredient cards, read from plain data; weights by volume against GNU units."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from tests.every import every
from tests.models.test_house import flaws_of

from tinbook.models import Card, Each, Larder, read_model


@every(
    ("text", "gnu"),
    [
        ("0.85 g/ml", "0.85"),
        ("200 g per US cup", "200 g / uscup"),
        ("200 g per cup", "200 g / uscup"),
        ("12 g per tbsp", "12 g / 15 ml"),
        ("1 oz per 2 tbsp", "1 oz / 30 ml"),
        ("125 g per metric cup", "125 g / 250 ml"),
        ("1 lb per 1 1/2 cup", "1 lb / 1.5 uscup"),
    ],
)
def test_a_weight_by_volume_is_what_gnu_units_says(
    card: Callable[..., Card], gnu_units: Any, text: str, gnu: str
) -> None:
    (expected,) = gnu_units([(gnu, "g/ml" if "g" in gnu or "lb" in gnu or "oz" in gnu else "1")])
    weighs = card(weighs=text).weighs
    assert weighs is not None
    assert (weighs.g_per_ml, weighs.written) == (pytest.approx(expected, rel=1e-6), text)


def test_no_volume_measure_is_said(card: Callable[..., Card]) -> None:
    weighs = card(weighs="no volume measure").weighs
    assert weighs is not None and weighs.g_per_ml is None
    assert card().weighs is None


@every(
    ("text", "wrong"),
    [
        ("heavy", "heavy"),
        ("200 g", "200 g"),
        ("200 gr per US cupp", "US"),
        ("20 zz per US cup", "zz"),
        ("200 g per 2 zz", "zz"),
        ("200 g per zz", "zz"),
    ],
)
def test_a_weight_by_volume_is_pointed_at_where_it_is_wrong(text: str, wrong: str) -> None:
    (flaw,) = flaws_of(Card, {"weighs": text})
    assert flaw.path == ("weighs",)
    assert text[flaw.start : flaw.end].startswith(wrong)


def test_what_one_weighs(card: Callable[..., Card]) -> None:
    assert card(each="egg yolk").each == Each("egg yolk", None)
    assert card(each="2 oz").each == Each("", pytest.approx(56.69904625))
    (flaw,) = flaws_of(Card, {"each": "whole eg"})
    assert "whole egg" in flaw.hint
    flaws_of(Card, {"each": "58 ml"})


@every(
    ("written", "known"),
    [("none", ()), (["none"], ()), ("milk", ("milk",)), (["milk", "egg"], ("milk", "egg")), ([], None), (None, None)],
)
def test_allergens_named_none_or_unknown(card: Callable[..., Card], written: Any, known: Any) -> None:
    """`None` is unknown: an empty list says nothing, so it never counts as free."""
    made = card() if written is None else card(allergens=written)
    assert made.known_allergens == known


@pytest.mark.parametrize(("text", "answer"), [("yes", True), ("no", False), ("Yes", True), ("true", True)])
def test_yes_and_no(card: Callable[..., Card], text: str, answer: bool) -> None:
    assert card(raises=text).raises is answer
    flaws_of(Card, {"raises": text + "!"})


def test_private_as_a_whole_or_by_the_key(card: Callable[..., Card]) -> None:
    assert card(private="yes").private is True
    assert card(private=["notes", "also"]).private == ("notes", "also")
    assert card().private is False
    flaws_of(Card, {"private": "notes"})


def test_a_larder_is_cards_by_name() -> None:
    larder, flaws = read_model(Larder, {"ingredients": {"butter": {"weighs as": "butter"}, "water": {}}}, "it")
    assert larder is not None, flaws
    assert list(larder.ingredients) == ["butter", "water"]
    (flaw,) = flaws_of(Larder, {"ingredients": {"egg": {"each": "3 ml"}}})
    assert flaw.path == ("ingredients", "egg", "each")
