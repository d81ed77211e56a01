"""Rules of balance against the sheets they come from: tests/data/formula_balance.csv, which names them row by row."""

from __future__ import annotations

import re

import pytest


@pytest.fixture
def printed(table):
    """What is printed for a rule, by its number: shares of one."""
    rows = {row["id"]: row for row in table("formula_balance")}

    def shares(number: str, column: str = "value") -> list[float]:
        text = rows[number][column]
        scale = 100 if "%" in text else 1
        return [float(found) / scale for found in re.findall(r"\d+\.?\d*", text)]

    return shares


def test_sugar_is_never_more_than_the_flour(facts, printed):
    assert [facts.balance["sugar to flour, creamed"].high] == printed("F1")


@pytest.mark.parametrize(
    ("key", "number"),
    [
        ("egg to fat, creamed", "F2"),
        ("egg and liquid to flour, creamed", "F3"),
        ("egg and liquid to sugar, creamed", "F3"),
    ],
)
def test_what_should_be_equal_may_be_off_by_what_the_sheets_are_off(facts, printed, key, number):
    rule, (wanted,) = facts.balance[key], printed(number)
    assert rule.low < wanted < rule.high
    assert (rule.low + rule.high) / 2 == pytest.approx(wanted)
    assert rule.high - wanted <= 0.15


def test_the_two_forms_of_a_rule_name_each_other(facts):
    for rule in facts.balance.values():
        if rule.other_form:
            assert facts.balance[rule.other_form].other_form == rule.key


def test_high_ratio_rules(facts, printed):
    low, _, most = printed("F4")
    sugar = facts.balance["sugar to flour, high-ratio"]
    assert (sugar.low, sugar.high) == (low, most)
    for key, number in (("egg to fat, high-ratio", "F5"), ("egg and liquid to sugar, high-ratio", "F6")):
        assert [facts.balance[key].low] == printed(number)
        assert facts.balance[key].high is None


def test_fruit_and_whisked_rules_are_those_remembered(facts, printed, table):
    """F12 and F13 are marked from memory in the table too. F13: 100 to 150 % in a light cake, to 200 %."""
    light, _, most = (share / 100 for share in map(float, re.findall(r"\d+", _row(table, "F13"))))
    fruit = facts.balance["fruit to the rest, rich fruit"]
    assert (fruit.low, fruit.high, fruit.kind) == (light, most, "from memory")
    flour = facts.balance["flour to sugar and egg, whisked"]
    assert flour.low < 1 / 3 < flour.high  # F12: "flour 1/3 of sugar+egg"
    most_sugar = max(float(share) for share in re.findall(r"(\d+)-(\d+) %", _row(table, "F12"))[0]) / 100
    assert facts.balance["sugar to egg, whisked"].high == most_sugar


def _row(table, number):
    (text,) = [row["rule"] for row in table("formula_balance") if row["id"] == number]
    return text.split(":")[-1] if number == "F12" else text.split(";")[0]


def test_ganache_takes_in_every_row_of_the_chart(facts, table):
    """How much ganache do I need, named in the head of tests/data/ganache_uk.csv: dark and white, by size."""
    rule, ratios = facts.balance["chocolate to cream, ganache"], []
    for row in table("ganache_uk"):
        ratios += [float(row[f"{one}_choc_g"]) / float(row[f"{one}_cream_ml"]) for one in ("dark", "white")]
    assert len(ratios) > 20
    assert rule.low <= min(ratios) and max(ratios) <= rule.high
    assert min(ratios) == pytest.approx(2, abs=0.02) and max(ratios) == pytest.approx(3, abs=0.03)


def test_a_published_sponge_keeps_the_rules(facts, table):
    """afternoontea4two.com, 2013/07/20, four tins: medium eggs, as a British recipe of the time means."""
    egg_g = facts.eggs["UK medium"].shelled_g
    fat, sugar = facts.balance["egg to fat, creamed"], facts.balance["sugar to flour, creamed"]
    for row in table("recipe_sponge_by_tin"):
        flour_g, sugar_g = float(row["self_raising_flour_g"]), float(row["caster_sugar_g"])
        assert sugar.low <= sugar_g / flour_g <= sugar.high
        assert fat.low <= int(row["eggs_n"]) * egg_g / float(row["butter_g"]) <= fat.high


def test_a_published_mud_cake_is_not_a_creamed_one(facts, table):
    """the-wedding-information-site.com/chocolate-mud-cake.html: its sugar breaks the creamed rule, not its own."""
    creamed, mud = facts.balance["sugar to flour, creamed"], facts.balance["sugar to flour, high-ratio"]
    for row in table("recipe_mud_by_tin"):
        flour_g = float(row["self_raising_flour_g"]) + float(row["plain_flour_g"])
        share = float(row["caster_sugar_g"]) / flour_g
        assert share > creamed.high
        assert mud.low <= share


def test_every_cake_has_a_rule(facts):
    ruled = {kind for rule in facts.balance.values() for kind in rule.kinds}
    assert {key for key, kind in facts.kinds.items() if kind.group == "cake"} <= ruled
