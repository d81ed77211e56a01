"""The demo's mixtures against the balance rules of their kind, which tests/facts holds to the published sheets.

A mixture that breaks one says why in `off balance`.
"""

import pytest
from tests.conftest import demo_book
from tests.every import every

from tinbook.plans.base.weighing import weigh
from tinbook.plans.mixtures.balance import OTHER, balance
from tinbook.plans.mixtures.safety import allergens

LOADED = demo_book()
MIXTURES = LOADED.book.mixtures


@every("slug", MIXTURES)
def test_each_mixture_keeps_the_rules_of_its_kind_or_says_why_not(slug: str) -> None:
    batch = weigh(slug, MIXTURES[slug], LOADED.book, LOADED.facts)
    made = balance(batch, LOADED.book, LOADED.facts)
    broken = [f"{each.rule.key}: {each.value_shown}" for each in made.standings if not each.within]
    assert not broken or batch.mixture.off_balance, broken


@every("slug", MIXTURES)
def test_nothing_heavy_is_left_out_of_the_formula(slug: str) -> None:
    """A card that says neither what it weighs as nor what it counts as would let a rule judge half a mixture."""
    batch = weigh(slug, MIXTURES[slug], LOADED.book, LOADED.facts)
    made = balance(batch, LOADED.book, LOADED.facts)
    other_g = sum(line.mass_g for line in made.lines if line.part == OTHER)
    assert not made.standings or other_g < 0.05 * batch.mass_g, [line for line in made.lines if line.part == OTHER]


def test_a_cake_off_balance_is_seen() -> None:
    """240.7 g of egg and 61.4 g of milk are 144 % of 210 g of flour, and 126 % of flour and cocoa."""
    batch = weigh("cocoa-cupcakes", MIXTURES["cocoa-cupcakes"], LOADED.book, LOADED.facts)
    broken = [each.rule.key for each in balance(batch, LOADED.book, LOADED.facts).standings if not each.within]
    assert broken == ["egg and liquid to flour, creamed", "egg and liquid to sugar, creamed"]
    plain = weigh("creamed-butter-sponge", MIXTURES["creamed-butter-sponge"], LOADED.book, LOADED.facts)
    assert not balance(plain, LOADED.book, LOADED.facts).off


def test_the_demo_is_as_large_as_a_newcomer_is_told() -> None:
    book = LOADED.book
    assert LOADED.problems == ()
    assert len(book.mixtures) >= 20
    assert len(book.techniques) >= 4
    assert len(book.cards) >= 60
    assert len(book.tins) >= 12


GLUTEN = {"wheat", "spelt", "khorasan wheat", "rye", "barley", "oats"}
FREE_OF = {
    "vegan": {"egg", "milk", "fish", "crustaceans", "molluscs"},
    "no egg": {"egg"},
    "no milk": {"milk"},
    "gluten-free": GLUTEN,
}
"""What a tag promises; the cereals are those of Regulation (EU) 1169/2011, Annex II, 1."""


@pytest.mark.parametrize("tag", FREE_OF)
def test_what_is_said_to_be_without_is_without(tag: str) -> None:
    slugs = [slug for slug, mixture in MIXTURES.items() if tag in mixture.tags]
    assert slugs
    for slug in slugs:
        strip = allergens(weigh(slug, MIXTURES[slug], LOADED.book, LOADED.facts), LOADED.book, LOADED.facts)
        labels = {LOADED.facts.allergens[key].label for key in FREE_OF[tag]}
        assert not labels & {each.allergen for each in strip.contains}, slug
        assert not strip.unknown, slug


def test_every_mixture_says_how_long_it_keeps() -> None:
    assert [slug for slug, mixture in MIXTURES.items() if not (mixture.keeps and mixture.keeps_for)] == []
