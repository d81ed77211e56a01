"""Cards found as notes spell them, and never by a near miss."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.notes.cards import Cards, alike, key_of


@every(
    ("name", "wanted", "card"),
    [
        ("butter", (), "butter"),
        ("self raising flour", (), "self-raising flour"),
        ("S.R. flour", (), "self-raising flour"),
        ("flour", ("self raising",), "self-raising flour"),
        ("Flour", ("plain",), "plain flour"),
        ("sugar", ("caster",), "caster sugar"),
        ("butter", ("salted",), "salted butter"),
        ("softened butter", (), "butter"),
        ("golden caster sugar", (), "caster sugar"),
        ("large free-range eggs", (), "egg"),
        ("eggs", ("large",), "egg"),
        ("egg whites", (), "egg white"),
        ("walnut pieces", (), "chopped walnuts"),
        ("boiling water", (), "water"),
        ("golden syrup", (), "golden syrup"),
        ("ground almonds", (), "ground almonds"),
    ],
)
def test_what_is_found(demo: Loaded, name: str, wanted: tuple[str, ...], card: str) -> None:
    assert Cards(demo.book).read(name, wanted)[0] == card


@every(
    ("name", "wanted"),
    [
        ("medium eggs", ()), ("eggs", ("medium",)), ("duck eggs", ()), ("flour", ()), ("sugar", ()), ("brown sugar", ()),
        ("almonds", ()), ("ginger", ()), ("cream", ()), ("bread flour", ()), ("chocolate", ()), ("yeast", ("fresh",)),
        ("peanut butter", ()), ("butter beans", ()), ("cornflower", ()), ("", ()), ("goose egg whites", ()),
    ],
)  # fmt: skip
def test_what_is_no_card_of_the_house(demo: Loaded, name: str, wanted: tuple[str, ...]) -> None:
    assert Cards(demo.book).read(name, wanted)[0] is None


def test_the_class_of_eggs_stays_in_the_name(demo: Loaded) -> None:
    assert Cards(demo.book).read("eggs", ("medium", "beaten")) == (None, "medium eggs", ["beaten"])


def test_how_it_is_wanted_is_kept(demo: Loaded) -> None:
    assert Cards(demo.book).read("finely chopped dark chocolate", ()) == (
        "dark chocolate",
        "dark chocolate",
        ["finely", "chopped"],
    )


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("self-raising flour", "Flour self raising"),
        ("cherries", "cherry"),
        ("tomatoes", "tomato"),
        ("egg whites", "white, egg"),
    ],
)
def test_spellings_of_one_name(one: str, other: str) -> None:
    assert key_of(one) == key_of(other)


@pytest.mark.parametrize(("one", "other"), [("molasses", "molass"), ("glass", "glas"), ("egg", "eggnog")])
def test_names_that_differ(one: str, other: str) -> None:
    assert key_of(one) != key_of(other)


def test_what_is_offered_has_the_words_or_is_spelled_alike() -> None:
    names = ["water", "caster sugar", "golden caster sugar", "plain flour"]
    assert alike("caster", names) == "caster sugar"
    assert alike("plane flour", names) == "plain flour"
    assert alike("samphire", names) is None
