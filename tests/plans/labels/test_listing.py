"""The order of a list, what it leaves open, and its shares; the rules themselves are in test_rules_by_hand."""

from __future__ import annotations

from datetime import date

from tests.plans.labels.conftest import Kitchen

from tinbook.loading import Loaded
from tinbook.plans.labels.listing import in_order, labelling_of, leaves, list_of
from tinbook.plans.labels.makeup import of_mixture
from tinbook.plans.labels.opened import Listed

DAY = date(2026, 12, 1)


def test_heaviest_first_and_what_nobody_weighed_last() -> None:
    listed = [Listed(name="a", mass_g=None), Listed(name="b", mass_g=1.0), Listed(name="c", mass_g=2.0)]
    assert [each.name for each in in_order(listed)] == ["c", "b", "a"]


def test_everything_at_any_depth() -> None:
    deep = Listed(name="a", parts=(Listed(name="b", parts=(Listed(name="c"),)),))
    assert [each.name for each in leaves([deep, Listed(name="d")])] == ["a", "b", "c", "d"]


def test_a_house_that_says_nothing_sells_nowhere(demo: Loaded, kitchen: Kitchen) -> None:
    assert labelling_of(demo.book).sold_in == "England"
    assert labelling_of(kitchen("200 g flour", labels="").book).sold_in is None


def test_two_cards_of_one_thing_are_one_entry(kitchen: Kitchen) -> None:
    cards = "  caster: {weighs: no volume measure, allergens: none, made of: sugar}\n"
    loaded = kitchen("200 g sugar", "100 g caster", "150 g butter", cards=cards)
    found = list_of(of_mixture("cake", loaded.book, loaded.facts), loaded.book, loaded.facts, DAY)
    assert [(each.name, each.mass_g, each.cards) for each in found.listed] == [
        ("sugar", 300.0, ("sugar", "caster")), ("butter", 150.0, ("butter",)),
    ]  # fmt: skip


def test_a_list_is_complete_when_every_card_says(kitchen: Kitchen) -> None:
    cards = "  riddle: {weighs: no volume measure}\n"
    loaded = kitchen("200 g sugar", "100 g riddle", cards=cards)
    found = list_of(of_mixture("cake", loaded.book, loaded.facts), loaded.book, loaded.facts, DAY)
    assert not found.complete and found.unknown == ("riddle",)
    assert [gap.what.key for gap in found.gaps] == ["gap_allergens", "gap_made_of"]
    assert list_of(
        of_mixture("cake", (whole := kitchen("200 g sugar")).book, whole.facts), whole.book, whole.facts, DAY
    ).complete


def test_what_it_is_named_for_is_in_it(kitchen: Kitchen) -> None:
    loaded = kitchen("200 g sugar", "100 g walnuts", more="named for: [walnuts, pecans]\n")
    (problem,) = loaded.errors
    assert 'there is no "pecans" in this mix' in problem.message and problem.hint == "choose from: sugar, walnuts"
    assert problem.place.file.endswith("mixtures/cake.yaml") and problem.place.text.startswith("named for")
