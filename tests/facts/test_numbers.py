"""Single numbers against the tables they come from (each table in tests/data opens with its source)."""

from __future__ import annotations

import math
import re
import statistics

import pytest


@pytest.fixture
def rules(table):
    """Rules of balance and of raising agents by their number in tests/data/formula_balance.csv."""
    return {row["id"]: row for row in table("formula_balance")}


def percents(text: str) -> list[float]:
    return [float(number) / 100 for number in re.findall(r"(\d+\.?\d*) %", text)]


def test_self_raising_is_the_middle_of_the_rules_that_agree(facts, rules):
    """Rules S1 to S6, of which S5 is marked an outlier; shares of the plain flour."""
    shares = [percents(rules[rule]["value"])[0] for rule in ("S1", "S2", "S3", "S4", "S5", "S6")]
    number = facts.numbers["baking powder in self-raising"]
    assert number.value == pytest.approx(statistics.median(shares), abs=0.005)
    assert (number.low, number.high) == (0.04, 0.06)
    inside = [share for share in shares if number.low <= share <= number.high + 0.0015]
    assert len(inside) == len(shares) - 1


def test_self_raising_yields_the_gas_the_law_asked_for(facts, rules):
    """Rule S9, from memory: at least 0.4 % of carbon dioxide, from powder that yields 12 %."""
    gas, _, poorest, _ = percents(rules["S9"]["rule"].replace("12-14 %", "12 % to 14 %"))
    assert facts.numbers["baking powder in self-raising"].low * poorest >= gas


def test_teaspoon_of_baking_powder(facts, rules, gnu_units):
    number = facts.numbers["teaspoon of baking powder"]
    (program,) = gnu_units([("usteaspoon baking_powder", "g")])
    assert number.value == pytest.approx(program, rel=1e-6)
    printed = [float(grams) for grams in re.findall(r"(\d\.?\d*) g\b", rules["R4"]["value"])]
    assert min(printed) == 4.0
    assert all(number.low <= grams <= number.high for grams in (4.0, 4.6, 4.9))


@pytest.mark.parametrize(("inches", "rule"), [(12, "P2"), (14, "P3")])
def test_wide_tins_take_less_powder(facts, rules, inches, rule):
    """The Cake Bible, as quoted on realbakingwithrose.com and recipeswap.org: teaspoons to one base mix."""
    level_2 = float(rules["P1"]["value"].split()[0])
    teaspoons = float(rules[rule]["value"].split()[0])
    number = facts.numbers[f"wide tin raising {inches} in"]
    assert number.value == pytest.approx(teaspoons / level_2, abs=0.005)
    assert number.high == facts.numbers["wide tin raising 10 in"].value == 1


def test_small_tins_take_more_powder(facts, rules):
    share = float(rules["P4"]["value"].split()[0]) / float(rules["P1"]["value"].split()[0])
    number = facts.numbers["wide tin raising 6 in"]
    assert number.value == pytest.approx(share, abs=0.001)
    assert number.kind == rules["P4"]["kind"] == "from memory"


def test_geometry_to_brim_is_the_middle_of_published_tins(facts, table):
    """Baking Pan Substitution Chart, craftybaking.com, 2000: what tins hold, over straight-sided geometry.

    The 8 x 3 in springform is left out: the chart's own two figures for it disagree.
    """
    shares = []
    for row in table("pan_volume_us"):
        sizes_mm = [float(inches) * 25.4 for inches in row["size_in"].split("x")]
        if row["shape"] in ("round", "springform"):
            geometry_ml = math.pi / 4 * sizes_mm[0] ** 2 * sizes_mm[1] / 1000
        elif row["shape"] == "square":
            geometry_ml = math.prod(sizes_mm) / 1000
        else:
            continue
        if (row["shape"], row["size_in"]) != ("springform", "8x3"):
            shares.append(float(row["volume_us_cups_brim"]) * 236.588 / geometry_ml)
    number = facts.numbers["geometry to brim"]
    assert len(shares) > 10
    assert number.value == pytest.approx(statistics.median(shares), abs=0.01)
    assert number.low <= min(shares) and max(shares) <= number.high


def test_parts_of_an_egg_add_up(facts):
    shares = [facts.numbers[f"{part} share of egg"] for part in ("shell", "white", "yolk")]
    assert sum(share.value for share in shares) == pytest.approx(1, abs=0.01)
    assert sum(share.low for share in shares) < 1 < sum(share.high for share in shares)


def test_shell_agrees_with_the_usdas_refuse(facts, table):
    """USDA SR28, food 01123: 12 % of a hen's egg is shell."""
    refuse = {float(row["refuse_pct"]) / 100 for row in table("usda_sr28_portions") if row["ndb_no"] == "01123"}
    number = facts.numbers["shell share of egg"]
    assert refuse == {0.12}
    assert number.value == pytest.approx(0.12, abs=0.01)
    assert number.low <= 0.12 <= number.high


def test_fan_difference_is_that_of_the_oven_table(facts, table):
    for row in table("oven_conversion_tables"):
        conventional = [float(celsius) for celsius in row["C_C"].split("-")]
        fan = [float(celsius) for celsius in row["fan_C_rule"].split("-")]
        for oven, fanned in zip(conventional, fan, strict=True):
            assert oven - fanned == facts.numbers["fan difference"].value


def test_water_for_cocoa_is_the_printed_one(facts, rules):
    water = facts.numbers["water for cocoa"]
    assert [water.low, water.high] == [float(share) for share in rules["F7"]["value"].split("-")]


def test_what_the_house_chose_says_so(facts):
    for key in ("egg tolerance", "rim limit", "oven clearance"):
        assert facts.numbers[key].kind == facts.numbers[key].source == "our own judgement"
