"""Which rules hold, and what allergens are called."""

from __future__ import annotations

from tests.plans.labels.conftest import Kitchen

from tinbook.loading import Loaded
from tinbook.models.labels import Labelling
from tinbook.plans.labels.applying import declared, label_name, rules_for
from tinbook.plans.labels.listing import labelling_of


def test_no_nation_no_rules(demo: Loaded, kitchen: Kitchen) -> None:
    assert rules_for(Labelling(), demo.facts) == ()
    england = labelling_of(demo.book)
    assert {"packed here", "emphasis", "six colours"} <= {rule.key for rule in rules_for(england, demo.facts)}
    assert "titanium dioxide" not in {rule.key for rule in rules_for(england, demo.facts)}


def test_names_and_counts_by_nation(demo: Loaded) -> None:
    assert label_name("soya", demo.facts, "England") == "soya" and label_name("soya", demo.facts, "the USA") == "soy"
    keys = ("wheat", "barley", "milk", "mustard", "sesame")
    assert declared(keys, demo.facts, "England") == keys
    assert declared(keys, demo.facts, "the USA") == ("wheat", "milk", "sesame")
