"""The demo's mixtures against the balance rules of their kind, which tests/facts holds to the published sheets.

A mixture that breaks one says why in `off balance`.
"""

from pathlib import Path

import pytest

from tinbook.loading import load_book
from tinbook.plans.balance import OTHER, balance
from tinbook.plans.weighing import weigh

LOADED = load_book(Path(__file__).parents[2] / "recipes")
MIXTURES = LOADED.book.mixtures


@pytest.mark.parametrize("slug", MIXTURES)
def test_each_mixture_keeps_the_rules_of_its_kind_or_says_why_not(slug: str) -> None:
    batch = weigh(slug, MIXTURES[slug], LOADED.book, LOADED.facts)
    made = balance(batch, LOADED.book, LOADED.facts)
    broken = [f"{each.rule.key}: {each.value_shown}" for each in made.standings if not each.within]
    assert not broken or batch.mixture.off_balance, broken


@pytest.mark.parametrize("slug", MIXTURES)
def test_nothing_heavy_is_left_out_of_the_formula(slug: str) -> None:
    """A card that says neither what it weighs as nor what it counts as would let a rule judge half a mixture."""
    batch = weigh(slug, MIXTURES[slug], LOADED.book, LOADED.facts)
    made = balance(batch, LOADED.book, LOADED.facts)
    other_g = sum(line.mass_g for line in made.lines if line.part == OTHER)
    assert not made.standings or other_g < 0.05 * batch.mass_g, [line for line in made.lines if line.part == OTHER]


def test_a_cake_off_balance_is_seen() -> None:
    batch = weigh("creamed-butter-sponge", MIXTURES["creamed-butter-sponge"], LOADED.book, LOADED.facts)
    broken = [each.rule.key for each in balance(batch, LOADED.book, LOADED.facts).standings if not each.within]
    assert broken == ["egg to fat, creamed"]


def test_the_demo_is_as_large_as_a_newcomer_is_told() -> None:
    book = LOADED.book
    assert LOADED.problems == ()
    assert len(book.mixtures) >= 8
    assert len(book.techniques) >= 4
    assert len(book.cards) >= 25
    assert len(book.tins) >= 12
