"""The balance of a mixture, drawn."""

import re
from collections.abc import Callable

from tinbook.loading import Loaded
from tinbook.pages.mixture.balance import WIDE, BalanceView
from tinbook.plans.base.weighing import weigh
from tinbook.plans.mixtures.balance import balance

Filled = Callable[[str], str]


def view(demo: Loaded, slug: str) -> BalanceView:
    batch = weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts)
    return BalanceView(balance(batch, demo.book, demo.facts), demo.facts)


def test_everything_drawn_lies_on_the_line(demo: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        if demo.facts.kinds[mixture.kind].group != "cake":
            continue
        for rule in view(demo, slug).rules:
            assert 0 < rule.band_at < rule.band_at + rule.band_wide <= WIDE, slug
            assert rule.point is None or 0 < rule.point < WIDE, slug


def test_a_point_lies_in_its_band_where_the_words_say_so(demo: Loaded) -> None:
    rules = view(demo, "cocoa-cupcakes").rules
    inside = [rule.band_at <= (rule.point or 0) <= rule.band_at + rule.band_wide for rule in rules]
    assert inside == [rule.stands == "this is in that range" for rule in rules] == [True, True, False, False]


def test_a_rule_without_a_limit_runs_to_the_end(demo: Loaded) -> None:
    (rule,) = [each for each in view(demo, "mud-cake").rules if each.title == "Egg to fat"]
    assert rule.usual == "100% or more" and rule.band_at + rule.band_wide == WIDE


def test_the_page_says_where_it_sits_and_why(filled: Filled) -> None:
    text = filled("mixtures/cocoa-cupcakes/tables")
    assert "It meets 2 of the 4 balance rules for its kind." in text and "Cocoa soaks up nearly its own weight" in text
    assert (
        "usually 85 to 115%; this is above that" in text
        and 'aria-label="Egg and liquid to flour: 126%, usually 85 to 115%"' in text
    )
    assert re.search(r'<a href="/sources#source-balance-rules">', text)


def test_the_other_form_of_a_rule_is_said(filled: Filled) -> None:
    assert "below that, but meets the other form of the rule" in filled("mixtures/madeira-cake/tables")


def test_what_has_no_rules_says_nothing(filled: Filled) -> None:
    assert "tb-usual" in filled("mixtures/madeira-cake/tables")
    assert "tb-usual" not in filled("mixtures/modelling-paste/tables")
