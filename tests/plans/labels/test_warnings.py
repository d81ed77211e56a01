"""What stands beside a list; the wordings themselves are in test_rules_by_hand."""

from __future__ import annotations

from tests.plans.labels.conftest import Kitchen
from tests.plans.labels.test_rules_by_hand import listed

from tinbook.loading import Loaded
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.labels.makeup import of_cake
from tinbook.plans.labels.warnings import warned_colours


def test_colours_of_the_house_and_of_what_is_bought(demo: Loaded) -> None:
    made = of_cake(
        whole_cake("lighthouse-cake", demo.book.cakes["lighthouse-cake"], demo.book, demo.facts), demo.book, demo.facts
    )
    assert [each.key for each in warned_colours((), made, demo.facts)] == ["E129"]


def test_in_the_usa_none_of_it_is_asked_for(kitchen: Kitchen) -> None:
    cards = '  strands: {weighs: no volume measure, allergens: none, made of: "sugar, colour: E102"}\n'
    for nation, count in (("England", 1), ("the USA", 0)):
        labels = f"sold in: {nation}\nsold: packed here\n"
        assert len(listed(kitchen("200 g sugar", "5 g strands", cards=cards, labels=labels)).warnings) == count


def test_several_sweeteners(kitchen: Kitchen) -> None:
    cards = '  sweet: {weighs: no volume measure, allergens: none, made of: "sugar, sweeteners (sucralose, E950)"}\n'
    (said,) = listed(kitchen("80 g sugar", "20 g sweet", cards=cards)).warnings
    assert said.key == "with_sweeteners" and dict(said.figures) == {"count": 2}


def test_a_syrup_of_a_polyol_is_one_too(kitchen: Kitchen) -> None:
    cards = '  syrup: {weighs: no volume measure, allergens: none, made of: "maltitol syrup, water"}\n'
    found = listed(kitchen("80 g sugar", "20 g syrup", cards=cards)).warnings
    assert [said.key for said in found] == ["laxative"]
