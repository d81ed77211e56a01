"""Egg classes against the two standards and the USDA's portions (tests/data/eggs.csv names them)."""

from __future__ import annotations

import itertools

import pytest

PRINTED = {
    "UK small": ("EU/UK", "S"),
    "UK medium": ("EU/UK", "M"),
    "UK large": ("EU/UK", "L"),
    "UK very large": ("EU/UK", "XL"),
    "US small": ("USA", "Small"),
    "US medium": ("USA", "Medium"),
    "US large": ("USA", "Large"),
    "US extra large": ("USA", "Extra large"),
    "US jumbo": ("USA", "Jumbo"),
}


@pytest.fixture
def printed(table):
    rows = {(row["system"], row["class"]): row for row in table("eggs")}
    return {key: rows[name] for key, name in PRINTED.items()}


def test_the_classes_are_those_of_both_standards(facts):
    assert list(facts.eggs) == list(PRINTED)


@pytest.mark.parametrize("key", PRINTED)
def test_parts_agree_with_the_table(facts, printed, key):
    """Shell 11.5 %, white 58 % and yolk 30 % of the egg in its shell, to the table's tenth of a gram."""
    egg, row = facts.eggs[key], printed[key]
    assert egg.row == PRINTED[key][1]
    typical_g = float(row["typical_in_shell_g"].removesuffix(" (guess)"))
    assert egg.typical_g == pytest.approx(typical_g, abs=0.05)
    assert egg.shelled_g == pytest.approx(float(row["shelled_g_at_11.5pct"]), abs=0.051)
    assert egg.white_g == pytest.approx(float(row["white_g_58pct_of_inshell"]), abs=0.051)
    assert egg.yolk_g == pytest.approx(float(row["yolk_g_30pct_of_inshell"]), abs=0.051)


def test_a_guess_is_marked_where_the_table_marks_one(facts, printed):
    for key, egg in facts.eggs.items():
        assert egg.guess == ("guess" in printed[key]["typical_in_shell_g"]), key
        if egg.guess:
            assert egg.shell_low_g is None or egg.shell_high_g is None


def test_bounds_of_the_uk_classes(facts, printed):
    for key, row in printed.items():
        if key.startswith("UK"):
            egg = facts.eggs[key]
            assert egg.shell_low_g == (float(row["in_shell_min_g"]) if row["in_shell_min_g"] else None)
            high = row["in_shell_max_g_exclusive"]
            assert egg.shell_high_g == (float(high) if high else None)


def test_bounds_of_the_us_classes_are_a_twelfth_of_the_dozen(facts, printed, gnu_units):
    for key, row in printed.items():
        if key.startswith("US"):
            ounces = row["pack_minimum"].split()[0]
            (each,) = gnu_units([(f"{ounces} oz / 12", "g")])
            assert facts.eggs[key].shell_low_g == pytest.approx(each, abs=0.001), key


@pytest.mark.parametrize("system", ["UK", "US"])
def test_classes_leave_no_gap(facts, system):
    classes = [egg for key, egg in facts.eggs.items() if key.startswith(system)]
    for smaller, larger in itertools.pairwise(classes):
        assert smaller.shell_high_g == larger.shell_low_g
    assert classes[-1].shell_high_g is None


@pytest.mark.parametrize(
    ("key", "measure"),
    [
        ("US small", "small"),
        ("US medium", "medium"),
        ("US large", "large"),
        ("US extra large", "extra large"),
        ("US jumbo", "jumbo"),
    ],
)
def test_us_eggs_agree_with_the_usdas_shelled_eggs(facts, table, key, measure):
    """USDA SR28, food 01123, to half a gram."""
    rows = {row["measure"]: float(row["grams"]) for row in table("usda_sr28_portions") if row["ndb_no"] == "01123"}
    assert facts.eggs[key].shelled_g == pytest.approx(rows[measure], abs=0.5)


def test_white_and_yolk_of_a_us_large_egg(facts, table):
    """USDA SR28, foods 01124 and 01125: 33 g and 17 g."""
    large = {row["ndb_no"]: float(row["grams"]) for row in table("usda_sr28_portions") if row["measure"] == "large"}
    egg = facts.eggs["US large"]
    assert egg.white_g == pytest.approx(large["01124"], abs=0.2)
    assert egg.yolk_g == pytest.approx(large["01125"], abs=0.2)


def test_white_and_yolk_make_the_shelled_egg_within_1_percent(facts):
    for egg in facts.eggs.values():
        assert egg.white_g + egg.yolk_g == pytest.approx(egg.shelled_g, rel=0.01)
