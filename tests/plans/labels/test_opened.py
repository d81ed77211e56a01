"""A card opened for a list."""

from __future__ import annotations

from datetime import date

from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Card, read_model
from tinbook.plans.labels.opened import Listed, class_of, colour_named, flour_law, keys_in, opened
from tinbook.units import METRIC

DAY = date(2026, 12, 1)


def card(**data: object) -> Card:
    found, flaws = read_model(Card, {key.replace("_", " "): value for key, value in data.items()}, "a card", METRIC)
    assert found is not None, flaws
    return found


def told(listed: Listed) -> str:
    says = f" [{', '.join(listed.says)}]" if listed.says else ""
    parts = f" ({', '.join(map(told, listed.parts))})" if listed.parts else ""
    return f"{listed.name}{says}{parts}"


@every(
    ("name", "data", "wanted"),
    [
        ("butter", {"allergens": ["milk"], "made_of": "itself"}, "butter [milk]"),
        ("milk", {"allergens": ["milk"], "made_of": "itself"}, "milk"),
        ("caster sugar", {"allergens": "none", "made_of": "sugar"}, "sugar"),
        ("chips", {"allergens": ["milk", "soya"], "made_of": "sugar, whey powder, emulsifier: lecithin (soya)"},
         "chips (sugar, whey powder [milk], emulsifier (lecithin [soya]))"),
        ("mystery", {"allergens": ["milk", "egg"]}, "mystery [milk, egg]"),
        ("biscuits", {"allergens": ["wheat", "sesame"], "made_of": "wheat flour, sugar"},
         "biscuits [sesame] (wheat flour, sugar)"),
        ("cream powder", {}, "cream powder [milk]"),
        ("oil", {"allergens": ["soya"], "made_of": "vegetable oil (soya, palm)"}, "vegetable oil (soya, palm)"),
        ("loaf", {"allergens": ["wheat"], "made_of": "fortified wheat flour"},
         "wheat flour (wheat flour, calcium carbonate, iron, niacin, thiamin)"),
    ],
)  # fmt: skip
def test_opened(name: str, data: dict[str, object], wanted: str, demo: Loaded) -> None:
    assert told(opened(name, card(**data), demo.facts, DAY)) == wanted


def test_colours_come_with_their_pot(demo: Loaded) -> None:
    pot = card(allergens="none", made_of="glucose syrup, water")
    found = opened("gel", pot, demo.facts, DAY, ("E129", "E133"))
    assert told(found) == "gel (glucose syrup, water, colours (allura red, brilliant blue))"
    assert told(opened("gel", None, demo.facts, DAY, ("E133",))) == "gel (colour (brilliant blue))"


def test_every_allergen_of_a_card_is_in_it(demo: Loaded) -> None:
    for name, each in demo.book.cards.items():
        assert set(each.known_allergens or ()) <= set(keys_in(opened(name, each, demo.facts, DAY), demo.facts)), name


def test_the_law_of_flour_by_day(demo: Loaded) -> None:
    assert "folic acid" not in flour_law(demo.facts, date(2026, 12, 12)).adds
    assert "folic acid" in flour_law(demo.facts, date(2026, 12, 13)).adds
    assert flour_law(demo.facts, date(1990, 1, 1)).adds == flour_law(demo.facts, DAY).adds


def test_classes_and_colours_by_their_words(demo: Loaded) -> None:
    assert class_of("Raising agents", demo.facts) == "raising agent" and class_of("flour", demo.facts) is None
    numbered, named = colour_named("e 129", demo.facts), colour_named("Carmoisine", demo.facts)
    assert numbered is not None and numbered.key == "E129" and named is not None and named.key == "E122"
    assert colour_named("sugar", demo.facts) is None and colour_named("E999", demo.facts) is None
