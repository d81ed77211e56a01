"""Swaps against chemistry, published tables and one another."""

import re

import pytest

from tinbook.facts import read_facts

# Standard atomic weights, IUPAC 2021, abridged.
ATOMS = {"H": 1.008, "C": 12.011, "O": 15.999, "Na": 22.990, "K": 39.098}


def molar(**atoms):
    return sum(ATOMS[atom] * count for atom, count in atoms.items())


def part(facts, swap, key):
    return next(each for each in facts.swaps[swap].parts if each.key == key)


def test_a_swap_has_a_range_for_every_figure_that_is_not_the_rest(facts):
    for key, swap in facts.swaps.items():
        ranged = [each for each in swap.parts if each.low is not None and each.high is not None]
        assert len(ranged) >= len(swap.parts) - 1, key
        for each in ranged:
            assert each.low <= each.value <= each.high


def test_self_raising_takes_its_figures_from_the_numbers(facts):
    powder = part(facts, "self-raising from plain", "baking powder")
    number = facts.numbers["baking powder in self-raising"]
    assert (powder.value, powder.low, powder.high, powder.source) == (
        number.value, number.low, number.high, number.source,
    )  # fmt: skip
    assert powder.teaspoon_g == facts.numbers["teaspoon of baking powder"].value


def test_cream_of_tartar_and_bicarbonate_leave_no_more_alkali_than_powder_may(facts):
    """One of KHC4H4O6 takes one of NaHCO3. Spoons by USDA SR28: 3 g and 4.6 g the teaspoon.

    Half a spoon to a quarter is the kitchen's rule and short of acid; its range reaches towards the balance.
    """
    tartar = molar(K=1, H=5, C=4, O=6)
    bicarbonate = molar(Na=1, H=1, C=1, O=3)
    assert (tartar, bicarbonate) == (pytest.approx(188.18, abs=0.02), pytest.approx(84.01, abs=0.02))
    acid = part(facts, "baking powder from two", "cream of tartar")
    soda = part(facts, "baking powder from two", "bicarbonate of soda")
    share = acid.value * 3.0 / (soda.value * 4.6) / (tartar / bicarbonate)
    assert 0.5 < share < 1
    assert acid.high * 3.0 / (soda.low * 4.6) / (tartar / bicarbonate) > share


def test_a_spoon_of_two_gives_as_much_gas_as_a_spoon_of_powder(facts):
    """Rule S9 of formula_balance.csv: baking powder yields 12 to 14 % of carbon dioxide; 44.01 g from 84.01 g of soda.

    The acid of the kitchen's rule frees less than all of it.
    """
    soda_g = part(facts, "baking powder from two", "bicarbonate of soda").value * 4.6
    tartar_g = part(facts, "baking powder from two", "cream of tartar").value * 3.0
    freed_g = min(soda_g, tartar_g * 84.01 / 188.18) * 44.01 / 84.01
    assert 0.5 < freed_g / (4.6 * 0.12) < 1.2


def test_milk_powder_is_the_usdas(facts, table):
    """USDA SR28, food 01092: 23 g of instant skimmed powder make one cup, 236.588 ml."""
    (row,) = [row for row in table("usda_sr28_portions") if "makes 1 cup reconstituted" in row["measure"]]
    powder = part(facts, "milk from powder", "milk powder")
    assert powder.value == pytest.approx(float(row["grams"]) / 236.588, abs=1e-4)
    water = part(facts, "milk from powder", "water")
    assert powder.value + water.value == pytest.approx(facts.densities["milk"].value, abs=0.02)


def test_tablespoons_of_acid_and_starch_are_the_kitchens_rule(facts):
    """Common practice: 15 ml made up to 250 ml; two tablespoons of cornflour in a US cup of flour."""
    assert part(facts, "buttermilk from milk", "lemon juice").value == pytest.approx(15 / 250)
    spoons_g = 2 * 14.787 * facts.densities["cornflour"].value
    flour_g = (236.588 - 2 * 14.787) * facts.densities["plain flour, spooned"].value
    starch = part(facts, "cake flour from plain", "cornflour")
    assert starch.low <= spoons_g / (spoons_g + flour_g) <= starch.high


def test_oil_and_milk_hold_as_much_fat_as_butter_must(facts):
    """Regulation (EU) 1308/2013, annex VII: butter has at least 80 % fat and at most 16 % water (from memory)."""
    oil, milk = part(facts, "oil for butter", "sunflower oil"), part(facts, "oil for butter", "milk")
    assert oil.low == 0.8
    assert milk.value == 0.16
    assert oil.value + milk.value * facts.densities["milk"].value == pytest.approx(1, abs=0.03)


def test_egg_white_powder_agrees_with_the_water_in_white(facts):
    """A hen's white is 87.6 % water (USDA food 01124, from memory), so an eighth of it is solid."""
    powder = part(facts, "white from powder", "egg white powder")
    assert powder.low <= 1 - 0.876 <= powder.high
    assert powder.value + part(facts, "white from powder", "water").value == pytest.approx(1)


def put(swap, key, value):
    def spoil(trees):
        trees["swaps"][swap][key] = value

    return spoil


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (put("self-raising from plain", "parts", {}), "needs parts and amounts"),
        (put("self-raising from plain", "amounts", []), "needs parts and amounts"),
        (put("self-raising from plain", "amounts", ["0"]), "needs parts and amounts"),
        (put("self-raising from plain", "unit", "ml"), "measured like the whole"),
        (put("self-raising from plain", "each", "egg shell"), "each"),
        (put("buttermilk from milk", "unit", "cup"), "unit"),
    ],
)
def test_a_swap_that_cannot_be_worked_out_raises(trees, spoil, words):
    spoil(trees)
    with pytest.raises(ValueError, match=words):
        read_facts(trees)


def test_a_source_that_is_not_there_raises(trees):
    trees["swaps"]["plain for cornflour"]["parts"]["plain flour"]["source"] = "hearsay"
    with pytest.raises(ValueError, match=re.escape('there is no source "hearsay"')):
        read_facts(trees)
