"""Which words of a list name an allergen, which hide one, and which only look like it."""

from __future__ import annotations

from tests.every import every

from tinbook.loading import Loaded
from tinbook.plans.labels.naming import hidden_in, is_name, named_in


@every(
    ("text", "wanted"),
    [
        ("wheat flour", [("wheat", "wheat")]), ("khorasan wheat", [("khorasan wheat", "khorasan wheat")]),
        ("soya milk", [("soya", "soya")]), ("almond milk", [("almond", "almond")]), ("coconut milk", []),
        ("buckwheat", []), ("peanut butter", [("peanut", "peanut")]), ("Whole Milk powder", [("milk", "Milk")]),
        ("brazil nuts, walnut", [("Brazil nut", "brazil nuts"), ("walnut", "walnut")]), ("nutmeg", []), ("oat milk", [("oats", "oat")]),
        ("egg-free mayonnaise", [("egg", "egg")]), ("eggplant", []), ("milk thistle", []),
    ],
)  # fmt: skip
def test_named(text: str, wanted: list[tuple[str, str]], demo: Loaded) -> None:
    assert [(each.key, text[each.start : each.end]) for each in named_in(text, demo.facts)] == wanted


@every(
    ("text", "wanted"),
    [("whey powder", ("milk",)), ("cocoa butter", ()), ("butter", ("milk",)), ("albumen", ("egg",)), ("tahini", ("sesame",)),
     ("cream of tartar", ()), ("semolina", ("wheat",)), ("barley malt", ("barley",)), ("milk", ())],
)  # fmt: skip
def test_hidden(text: str, wanted: tuple[str, ...], demo: Loaded) -> None:
    assert hidden_in(text, demo.facts) == wanted


def test_a_name_is_all_there_is(demo: Loaded) -> None:
    assert is_name("soya", demo.facts) == "soya" and is_name("Milk", demo.facts) == "milk"
    assert is_name("soya oil", demo.facts) is None and is_name("spelt (wheat)", demo.facts) == "spelt"
