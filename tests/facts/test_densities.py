"""Densities against two publications: GNU units, whose file takes them from The Cake Bible, and USDA SR28."""

from __future__ import annotations

import statistics

import pytest

from tinbook.facts import Fact

MEASURES_ML = {"cup": 236.5882365, "tbsp": 14.78676478, "tsp": 4.928921594}

# A row of ours read from the USDA, and what GNU units calls the same thing, filled the same way.
COMPARED = {
    "butter": "butter",
    "shortening": "shortening",
    "oil": "oil",
    "sugar": "sugar",
    "caster sugar": "sugar",
    "powdered sugar": "powdered_sugar",
    "icing sugar": "powdered_sugar",
    "light brown sugar": "brownsugar_light",
    "dark brown sugar": "brownsugar_dark",
    "honey": "honey",
    "molasses": "molasses",
    "black treacle": "molasses",
    "corn syrup": "cornsyrup",
    "plain flour, spooned": "flour_spooned",
    "cornflour": "cornstarch",
    "cocoa, spooned": "cocoa_spooned",
    "Dutch cocoa, spooned": "dutchcocoa_spooned",
    "milk": "milk",
    "double cream": "heavycream",
    "soured cream": "sourcream",
    "baking powder": "baking_powder",
    "salt": "salt",
}

# A row of ours read from GNU units; the food (ndb_no) and measure of the USDA that comes nearest to it.
NEAREST = {
    "bread flour, spooned": ("20083", "cup"),
    "cake flour, scooped": ("20084", "cup unsifted, dipped"),
}

# The same comparison where it fails the 8 %, and why.
EXCEPTIONS = {
    "plain flour, sifted": ("20081", "cup", "the USDA does not sift, and sifting lets air in"),
    "plain flour, scooped": ("20081", "cup", "dipping the cup packs flour tighter than the USDA's way"),
    "bread flour, sifted": ("20083", "cup", "the USDA does not sift"),
    "bread flour, scooped": ("20083", "cup", "dipping the cup packs flour"),
    "cake flour, sifted": ("20084", "cup unsifted, dipped", "the USDA dips unsifted flour"),
    "cake flour, spooned": ("20084", "cup unsifted, dipped", "the USDA dips the cup, which packs it"),
    "cocoa, sifted": ("19165", "cup", "the USDA does not sift"),
    "cocoa, scooped": ("19165", "cup", "dipping the cup packs cocoa"),
    "Dutch cocoa, sifted": ("19166", "cup", "the USDA does not sift"),
    "Dutch cocoa, scooped": ("19166", "cup", "dipping the cup packs cocoa"),
}

# Read from GNU units, and no row of the USDA table is the same food by volume.
ALONE = {"clarified butter"}


@pytest.fixture
def portions(table):
    return {(row["ndb_no"], row["measure"]): row for row in table("usda_sr28_portions") if row["amount"] == "1.0"}


def cup_error(fact: Fact, row: dict[str, str]) -> float:
    """Our grams over the USDA's for one measure, less 1."""
    measure_ml = MEASURES_ML[row["measure"].split()[0].strip(",")]
    return fact.value * measure_ml / float(row["grams"]) - 1


def test_every_gnu_row_is_what_the_program_answers(facts, gnu_units):
    rows = [fact for fact in facts.densities.values() if fact.source == "GNU units"]
    assert len(rows) >= 13
    for fact, answer in zip(rows, gnu_units([(fact.row, "g/ml") for fact in rows]), strict=True):
        assert fact.value == pytest.approx(answer, rel=1e-6), fact.key


def test_every_gnu_row_is_what_the_stored_table_says(facts, table):
    stored = {row["name"]: row for row in table("units_gnu") if row["dimension"] == "density"}
    for fact in facts.densities.values():
        if fact.source == "GNU units":
            assert fact.value == float(stored[fact.row]["value"]), fact.key


def test_every_usda_row_is_what_the_table_says(facts, table):
    """The grams of the portion named in `row`, over its measure. USDA SR28, www.ars.usda.gov/ba/bhnrc/ndl."""
    portions = {
        f"{row['ndb_no']}, {float(row['amount']):g} {row['measure']}": row for row in table("usda_sr28_portions")
    }
    rows = [fact for fact in facts.densities.values() if fact.source == "USDA SR28" and fact.key != "mixed spice"]
    assert len(rows) > 40
    for fact in rows:
        row = portions[fact.row]
        measure_ml = float(row["amount"]) * MEASURES_ML[row["measure"].split()[0].strip(",")]
        assert fact.value == pytest.approx(float(row["grams"]) / measure_ml, abs=6e-5), fact.key


def test_mixed_spice_is_the_middle_of_its_spices(facts, portions):
    spices = [float(portions[ndb, "tsp"]["grams"]) for ndb in ("02001", "02010", "02011", "02021", "02025")]
    middle = statistics.median(spices) / MEASURES_ML["tsp"]
    assert facts.densities["mixed spice"].value == pytest.approx(middle, abs=6e-5)


@pytest.fixture
def gnu(table):
    """The file of GNU units, which has them from the printed book The Cake Bible: g/ml."""
    return {row["name"]: float(row["value"]) for row in table("units_gnu") if row["dimension"] == "density"}


def test_the_usdas_cups_agree_with_gnu_units_within_8_percent(facts, gnu):
    assert len(COMPARED) >= 20
    for key, name in COMPARED.items():
        fact = facts.densities[key]
        assert fact.source == "USDA SR28", f"{key}: a row of GNU units proves nothing here"
        assert abs(fact.value / gnu[name] - 1) < 0.08, key


def test_cups_of_gnu_units_agree_with_the_usda_within_8_percent(facts, portions):
    for key, name in NEAREST.items():
        fact = facts.densities[key]
        assert fact.source == "GNU units", f"{key}: a USDA row proves nothing here"
        assert abs(cup_error(fact, portions[name])) < 0.08, key


@pytest.mark.parametrize(("food", "word"), [("20081", "flour"), ("19165", "cocoa"), ("19166", "dutchcocoa")])
def test_the_usdas_cup_lies_nearest_to_a_spooned_one(gnu, portions, food, word):
    """The USDA does not say how it fills its cups of plain flour and cocoa; GNU units knows the three ways apart."""
    theirs = float(portions[food, "cup"]["grams"]) / MEASURES_ML["cup"]
    off = {way: abs(gnu[f"{word}_{way}"] / theirs - 1) for way in ("sifted", "spooned", "scooped")}
    assert min(off, key=off.__getitem__) == "spooned", off


def test_the_exceptions_are_exceptions_and_err_the_way_their_reason_says(facts, portions):
    for key, (ndb, measure, reason) in EXCEPTIONS.items():
        error = cup_error(facts.densities[key], portions[ndb, measure])
        lighter = "sift" in reason or "the USDA dips" in reason
        assert 0.08 < abs(error) < 0.3, key
        assert (error < 0) == lighter, key


def test_no_gnu_row_is_left_out_of_the_comparison(facts):
    read = {key for key, fact in facts.densities.items() if fact.source == "GNU units"}
    assert read == set(NEAREST) | set(EXCEPTIONS) | ALONE
    assert {key for key, fact in facts.densities.items() if "GNU units" in fact.also} == set(COMPARED)


def test_the_range_reaches_the_other_publication(facts, gnu):
    """Where a row names both, its range holds both."""
    for key, name in COMPARED.items():
        fact = facts.densities[key]
        assert fact.low <= gnu[name] <= fact.high, key


@pytest.mark.parametrize("flour", ["plain flour", "cake flour", "bread flour", "cocoa", "Dutch cocoa"])
def test_sifted_is_lighter_than_spooned_than_scooped(facts, flour):
    sifted, spooned, scooped = (facts.densities[f"{flour}, {way}"].value for way in ("sifted", "spooned", "scooped"))
    assert sifted < spooned < scooped


def test_golden_syrup_weighs_what_its_sugar_does(facts, gnu_units):
    """GNU units knows the density of sugar solutions: 80 to 84 % by weight."""
    low, high = gnu_units([("brix(80)", "g/ml"), ("brix(84)", "g/ml")])
    assert low <= facts.densities["golden syrup"].value <= high * 1.01
