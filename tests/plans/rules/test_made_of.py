"""What a card says a thing is made of, against its allergens and the classes of additives."""

from __future__ import annotations

from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Card, read_model
from tinbook.plans.rules.made_of import made_of_flaws
from tinbook.units import METRIC


def flaws_of(made_of: str, allergens: object, facts: Facts) -> list[tuple[str, str, bool]]:
    data = {"made of": made_of} | ({} if allergens is None else {"allergens": allergens})
    card, wrong = read_model(Card, data, "the card", METRIC)
    assert card is not None, wrong
    return [(flaw.message, flaw.hint, flaw.note) for flaw in made_of_flaws("stuff", card, facts)]


@every(
    ("made_of", "allergens", "message", "hint"),
    [
        ("wheat flour", "none", "is made of wheat, but its allergens do not say so", "[wheat]"),
        ("wheat flour, egg", ["egg"], "is made of wheat", "[egg, wheat]"),
        ("milk powder", None, "is made of milk", "[milk]"),
        ("lecithin (soya)", "none", "is made of soya", "[soya]"),
        ("soy sauce", "none", "is made of soya", "[soya]"),
        ("fortified wheat flour", "none", "is made of wheat", "[wheat]"),
        ("soya milk", "none", "is made of soya", "[soya]"),
        ("almond milk", "none", "is made of almond", "[almond]"),
        ("ground almonds, hazelnuts", ["hazelnut"], "is made of almond", "[hazelnut, almond]"),
        ("sesame seeds", "none", "is made of sesame", "[sesame]"),
        ("walnuts", "none", "is made of walnut", "[walnut]"),
        ("peanut butter", "none", "is made of peanut", "[peanut]"),
        ("mustard flour", "none", "is made of mustard", "[mustard]"),
        ("celery salt", "none", "is made of celery", "[celery]"),
        ("fish gelatine", "none", "is made of fish", "[fish]"),
        ("preservative: sulphur dioxide", "none", "is made of sulphites", "[sulphites]"),
        ("rye flour, wheat flour", ["wheat"], "is made of rye", "[wheat, rye]"),
        ("oatmeal", "none", "is made of oats", "[oats]"),
        ("sugar", ["milk"], "say milk, but nothing it is made of does", "(milk)"),
        ("cocoa butter", ["milk"], "say milk, but nothing it is made of does", "(milk)"),
        ("sugar, lupin flour", ["lupin", "egg"], "say egg, but nothing", "(egg)"),
        ("E471, sugar", "none", "E471 stands without its class", "emulsifier: E471"),
        ("emulsifer: lecithin", "none", 'no class of additives called "emulsifer"', 'did you mean "emulsifier"?'),
        ("filling: sugar", "none", 'no class of additives called "filling"', "filling (...)"),
        ("raising agents", "none", "is a class of additives, and names none", "raising agents: ..."),
        ("sugar, colour", "none", "is a class of additives, and names none", "colour: ..."),
    ],
)
def test_what_does_not_agree(made_of: str, allergens: object, message: str, hint: str, demo: Loaded) -> None:
    found = [flaw for flaw in flaws_of(made_of, allergens, demo.facts) if not flaw[2]]
    assert len(found) == 1 and message in found[0][0] and hint in found[0][1], found


@every(
    ("made_of", "allergens"),
    [
        ("cocoa butter, sugar", "none"), ("coconut milk", "none"), ("cream of tartar", "none"), ("buckwheat", "none"),
        ("nutmeg", "none"), ("itself", ["milk"]), ("butter", ["milk"]), ("spelt flour", ["spelt"]),
        ("emulsifier: E471", "none"), ("raising agents (E450, E500), salt", "none"), ("soya lecithin", ["soya"]),
        ("groundnut oil", ["peanut"]), ("eggplant", "none"),
    ],
)  # fmt: skip
def test_what_agrees(made_of: str, allergens: object, demo: Loaded) -> None:
    assert flaws_of(made_of, allergens, demo.facts) == []


def test_what_usually_hides_an_allergen_is_only_a_note(demo: Loaded) -> None:
    ((message, hint, note),) = flaws_of("whey powder", "none", demo.facts)
    assert note and "usually made of milk" in message and "unless the packet says" in hint


def test_what_is_no_allergen_is_told_where_allergens_are_read(demo: Loaded) -> None:
    assert flaws_of("sugar", ["driftwood"], demo.facts) == []
