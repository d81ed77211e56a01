"""The rules of labels: each names its law and the day it was read, and none is about a nation or a sale nobody knows."""

from __future__ import annotations

from datetime import date

from tinbook.loading import load_facts
from tinbook.models.labels import GREAT_BRITAIN, NATIONS, SALES


def test_each_rule_names_its_law_and_when_it_was_read() -> None:
    facts = load_facts()
    for key, rule in facts.label_rules.items():
        assert rule.law and rule.says and rule.read_on >= date(2026, 12, 1), key
        assert set(rule.nations) <= set(NATIONS) and set(rule.sales) <= set(SALES), key


def test_every_nation_and_sale_has_rules() -> None:
    facts = load_facts()
    for nation in NATIONS:
        for sale in SALES:
            assert any(rule.applies(nation, sale) for rule in facts.label_rules.values()), (nation, sale)
    assert not facts.label_rules["titanium dioxide"].applies("England", "packed here")
    assert facts.label_rules["titanium dioxide"].applies("Northern Ireland", "packed here")
    assert not facts.label_rules["packed here"].applies("the EU", "packed here")
    assert all(facts.label_rules["packed here"].applies(nation, "packed here") for nation in GREAT_BRITAIN)


def test_flour_has_folic_acid_from_the_thirteenth_of_december() -> None:
    laws = sorted(load_facts().flour_laws.values(), key=lambda law: law.since)
    assert laws[-1].since == date(2026, 12, 13) and laws[-1].adds[-1] == "folic acid"
    assert laws[-1].adds[:-1] == laws[0].adds == ("calcium carbonate", "iron", "niacin", "thiamin")


def test_every_allergen_has_words_that_name_it() -> None:
    facts = load_facts()
    assert set(facts.list_words) == set(facts.allergens)
    named = [word.lower() for row in facts.list_words.values() for word in row.names]
    assert len(named) == len(set(named))
