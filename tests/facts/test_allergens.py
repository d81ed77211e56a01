"""Allergens against Regulation (EU) 1169/2011 Annex II and US law, as in tests/data/allergens.csv."""

from __future__ import annotations

import re

import pytest

# The names Annex II itself uses, group 1 and group 8 one by one.
CEREALS = {"wheat", "spelt", "khorasan wheat", "rye", "barley", "oats"}
NUTS = {"almond", "hazelnut", "walnut", "cashew", "pecan", "Brazil nut", "pistachio", "macadamia"}


@pytest.fixture
def groups(table):
    return {int(row["no"]): row for row in table("allergens")}


def test_all_fourteen_groups_are_there(facts, groups):
    assert {allergen.group for allergen in facts.allergens.values()} == set(groups) == set(range(1, 15))


def test_cereals_and_nuts_are_named_one_by_one(facts):
    by_group: dict[int, set[str]] = {}
    for key, allergen in facts.allergens.items():
        by_group.setdefault(allergen.group, set()).add(key)
    assert by_group.pop(1) == CEREALS
    assert by_group.pop(8) == NUTS
    assert all(len(keys) == 1 for keys in by_group.values())


@pytest.mark.parametrize("key", [*sorted(CEREALS), *sorted(NUTS)])
def test_each_cereal_and_nut_is_printed_in_its_group(facts, groups, key):
    allergen = facts.allergens[key]
    word = key.removesuffix(" nut").removesuffix(" wheat")
    assert word in groups[allergen.group]["eu_uk_annex_ii"]


def test_each_other_word_is_printed_in_its_group(facts, groups):
    words = {"soya": "soybeans", "sulphites": "sulphites"}
    for key, allergen in facts.allergens.items():
        if key not in CEREALS | NUTS:
            assert words.get(key, key) in groups[allergen.group]["eu_uk_annex_ii"], key


def test_the_big_nine_are_the_groups_the_usa_counts(facts, groups):
    """Sulphites fall under another rule of the FDA, which the table prints in brackets."""
    counted = {no for no, row in groups.items() if row["usa_big_9"] and not row["usa_big_9"].startswith("(")}
    flagged = {allergen.group for allergen in facts.allergens.values() if allergen.big_nine}
    assert len(counted) == 9
    assert flagged == counted


def test_of_the_cereals_the_usa_counts_only_wheat(facts, groups):
    assert groups[1]["usa_big_9"] == "wheat only"
    flagged = {key for key in CEREALS if facts.allergens[key].big_nine}
    assert flagged == {"wheat", "spelt", "khorasan wheat"}
    assert {facts.allergens[key].usa_label for key in flagged} == {"wheat"}
    assert facts.allergens["soya"].usa_label == "soy"


def test_labels_name_the_cereal_and_the_nut(facts):
    for allergen in facts.allergens.values():
        assert allergen.label not in ("gluten", "nuts", "tree nuts")
        assert not re.search(r"\bgluten\b", allergen.label)


def test_the_traps_of_the_table_are_told(facts):
    """One word or number of each trap or exemption a cake maker meets."""
    told = {
        "wheat": ("not gluten", "Glucose syrup"),
        "oats": ("USA",),
        "egg": ("albumen",),
        "fish": ("gelatine",),
        "peanut": ("apart from the nuts",),
        "soya": ("E322", "refined"),
        "milk": ("Lactose-free",),
        "almond": ("Coconut, chestnut and pine nut", "apricot kernels"),
        "sulphites": ("10 mg/kg",),
    }
    for key, words in told.items():
        for word in words:
            assert word in facts.allergens[key].note, (key, word)
