"""The page of measures as it is printed, against GNU units, scipy's constants, printed oven tables and egg standards.

What is published of the values themselves is tested with the facts; here it is the rows.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from scipy import constants

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, House
from tinbook.plans.measures.conversions import (
    conversions,
    cup_rows,
    egg_rows,
    flour_rows,
    heat_rows,
    oven_rows,
    spoon_rows,
)

GNU_NAMES = {
    "US cup": "uscup",
    "metric cup": "metriccup",
    "UK cup": "brcup",
    "metric tablespoon": "15 ml",
    "metric teaspoon": "brteaspoon",
    "US tablespoon": "ustablespoon",
    "US teaspoon": "usteaspoon",
    "Australian tablespoon": "australiatablespoon",
    "Australian teaspoon": "australiateaspoon",
    "US label cup": "legalcup",
    "Japanese cup": "japancup",
    "dessertspoon": "brdessertspoon",
    "old British tablespoon": "5|8 brfloz",
    "pinch": "0.3125 ml",
}
EGGS = {
    "UK small": ("EU/UK", "S"), "UK medium": ("EU/UK", "M"), "UK large": ("EU/UK", "L"),
    "UK very large": ("EU/UK", "XL"),
    "US small": ("USA", "Small"), "US medium": ("USA", "Medium"), "US large": ("USA", "Large"),
    "US extra large": ("USA", "Extra large"), "US jumbo": ("USA", "Jumbo"),
}  # fmt: skip
SIX_DIGITS = 1e-6
PRINTED_DIGITS = 2e-5
"""Of what the facts hold to five digits."""


def numbers(text: str) -> list[float]:
    return [float(number) for number in re.findall(r"\d+\.?\d*", text)]


def test_spoons_and_cups_against_gnu_units(kitchen: Book, facts: Facts, gnu_units: Any) -> None:
    rows = {row.measure: row for row in spoon_rows(kitchen, facts)}
    assert set(rows) == set(GNU_NAMES)
    for unit, field in (("ml", "volume_ml"), ("usfloz", "us_fl_oz"), ("brfloz", "uk_fl_oz")):
        exact = gnu_units([(GNU_NAMES[name], unit) for name in rows])
        for row, theirs in zip(rows.values(), exact, strict=True):
            digits = PRINTED_DIGITS if row.measure == "old British tablespoon" else SIX_DIGITS
            assert getattr(row, field) == pytest.approx(theirs, rel=digits), row.measure


def test_fluid_ounces_against_scipy(kitchen: Book, facts: Facts) -> None:
    for row in spoon_rows(kitchen, facts):
        m3 = row.volume_ml * 1e-6
        assert row.us_fl_oz == pytest.approx(m3 / constants.fluid_ounce_US, rel=SIX_DIGITS)
        assert row.uk_fl_oz == pytest.approx(m3 / constants.fluid_ounce_imp, rel=SIX_DIGITS)


def test_spoons_are_printed_to_a_tenth_of_a_millilitre(kitchen: Book, facts: Facts) -> None:
    for row in spoon_rows(kitchen, facts):
        assert row.shown_ml == pytest.approx(row.volume_ml, abs=0.0501)
        assert row.us_fl_oz_shown == pytest.approx(row.us_fl_oz, abs=0.00501)
        assert row.uk_fl_oz_shown == pytest.approx(row.uk_fl_oz, abs=0.00501)


@pytest.mark.parametrize(
    ("cup", "spoon", "ours"),
    [
        ("US cup", "metric", {"US cup", "metric tablespoon", "metric teaspoon"}),
        ("metric cup", "Australian", {"metric cup", "Australian tablespoon", "Australian teaspoon"}),
        (None, "US", {"US tablespoon", "US teaspoon"}),
    ],
)
def test_the_measures_of_the_house_are_marked(
    kitchen: Book, facts: Facts, house: Callable[..., House], cup: str | None, spoon: str, ours: set[str]
) -> None:
    book = replace(kitchen, house=house(cup=cup, spoon=spoon))
    marked = {row.measure for row in spoon_rows(book, facts) if row.of_the_house}
    assert marked == ours | {"pinch"}, "a pinch is a part of the house's own teaspoon"


def test_gas_marks_against_three_printed_tables(facts: Facts, table: Any) -> None:
    """oven_conversion_tables.csv names them. A printed figure is met by one of them, save 120 °C for the half mark."""
    printed = {float(row["gas_mark"]): row for row in table("oven_conversion_tables")}
    values = {"¼": 0.25, "½": 0.5}
    rows = oven_rows(facts)
    assert [values.get(row.gas_mark) or float(row.gas_mark) for row in rows] == list(printed)
    for row in rows:
        theirs = printed[values.get(row.gas_mark) or float(row.gas_mark)]
        assert row.fahrenheit_f == float(theirs["fahrenheit"])
        assert row.exact_c == pytest.approx(float(theirs["D_exact_C"]), abs=0.051)
        met = [celsius for name in ("A_C", "B_C", "C_C") for celsius in numbers(theirs[name])]
        for celsius in numbers(row.conventional_c):
            assert celsius in met or (row.gas_mark, celsius) == ("½", 120.0)
        # The fan column is common practice: 20 °C less.
        assert set(numbers(theirs["fan_C_rule"])) <= set(numbers(row.fan_c)), row.gas_mark
        assert [fan + 20 for fan in numbers(row.fan_c)] == numbers(row.conventional_c)


def test_gas_marks_against_gnu_units_and_scipy(facts: Facts, gnu_units: Any) -> None:
    rows = oven_rows(facts)
    marks = [{"¼": "0.25", "½": "0.5"}.get(row.gas_mark, row.gas_mark) for row in rows]
    exact = gnu_units([(f"gasmark({mark})", "tempC") for mark in marks])
    assert [row.exact_c for row in rows] == pytest.approx(exact, abs=1e-4)
    fahrenheit = [constants.convert_temperature(row.fahrenheit_f, "Fahrenheit", "Celsius") for row in rows]
    assert [row.exact_c for row in rows] == pytest.approx(fahrenheit, rel=SIX_DIGITS)


def test_dials_against_scipy_and_the_printed_tables(facts: Facts, table: Any) -> None:
    """The nearest mark is one whose printed °C (oven_conversion_tables.csv) is met within a notch of the dial."""
    values = {"¼": 0.25, "½": 0.5}
    printed = {float(row["gas_mark"]): float(row["D_exact_C"]) for row in table("oven_conversion_tables")}
    for row in heat_rows(facts):
        fahrenheit = constants.convert_temperature(row.conventional_c, "Celsius", "Fahrenheit")
        assert row.exact_f == pytest.approx(fahrenheit, rel=SIX_DIGITS)
        assert row.fahrenheit_f == pytest.approx(fahrenheit, abs=0.501)
        assert row.fan_low_c <= row.fan_c <= row.fan_high_c < row.conventional_c
        assert row.conventional_c - row.fan_c == 20
        mark = values.get(row.gas_mark) or float(row.gas_mark)
        off = {each: abs(celsius - row.conventional_c) for each, celsius in printed.items()}
        assert off[mark] == min(off.values())
        assert abs(row.gas_off_c) == pytest.approx(off[mark], abs=0.56)


def test_eggs_as_printed_against_both_standards(kitchen: Book, facts: Facts, table: Any) -> None:
    """EU Regulation 2023/2465 and the USDA's weight classes, as in eggs.csv; whole grams of its tenths."""
    theirs = {(row["system"], row["class"]): row for row in table("eggs")}
    rows = {row.egg_class: row for row in egg_rows(kitchen, facts)}
    assert list(rows) == list(EGGS)
    for name, row in rows.items():
        printed = theirs[EGGS[name]]
        for shown, column in (
            (row.shelled_shown_g, "shelled_g_at_11.5pct"),
            (row.white_shown_g, "white_g_58pct_of_inshell"),
            (row.yolk_shown_g, "yolk_g_30pct_of_inshell"),
        ):
            assert shown == round(shown)
            assert shown == pytest.approx(float(printed[column]), abs=0.551), (name, column)
        if row.shelled_low_g and row.shelled_high_g:
            assert row.shelled_low_g <= row.shelled_shown_g < row.shelled_high_g
        # The shell at its heaviest and lightest: Japan Poultry Association, 8.1 to 12.4 %, as in eggs.csv.
        for bound, share, ours in (
            (row.shell_low_g, 0.124, row.shelled_low_g),
            (row.shell_high_g, 0.081, row.shelled_high_g),
        ):
            assert ours is None if bound is None else ours == pytest.approx(bound * (1 - share), abs=0.501)
        if printed["in_shell_min_g"]:
            assert row.shell_low_g == float(printed["in_shell_min_g"])
        if printed["in_shell_max_g_exclusive"]:
            assert row.shell_high_g == float(printed["in_shell_max_g_exclusive"])
    assert [name for name, row in rows.items() if row.of_the_house] == ["UK large"]


def test_the_cup_against_gnu_units(demo: Loaded, table: Any) -> None:
    """Grams in a US cup of what GNU units knows, from The Cake Bible (units_gnu.csv); ounces beside them."""
    assert demo.book.house.cup == "US cup"
    by_row = {row["name"]: row["per_us_cup_g"] for row in table("units_gnu") if row["dimension"] == "density"}
    compared = 0
    for row in cup_rows(demo.book, demo.facts):
        card = demo.book.cards[row.ingredient]
        fact = demo.facts.densities.get(card.weighs_as or "")
        if fact is None or fact.source != "GNU units":
            continue
        cup_g = float(by_row[fact.row])
        assert row.cup_g == pytest.approx(cup_g, abs=0.501), row
        assert row.tablespoon_g == pytest.approx(cup_g / 236.588 * 15, abs=0.251), row
        assert row.teaspoon_g == pytest.approx(cup_g / 236.588 * 5, abs=0.0501), row
        assert row.cup_oz == pytest.approx(cup_g / 28.3495, abs=0.126), row
        assert (row.kind, row.source) == (fact.kind, "GNU units")
        compared += 1
    assert compared >= 12


def test_what_has_no_volume_measure_has_no_row(kitchen: Book, facts: Facts) -> None:
    rows = [row.ingredient for row in cup_rows(kitchen, facts)]
    assert rows == sorted(rows)
    assert {"butter", "water", "instant coffee"} <= set(rows)
    assert not {"egg", "sugarpaste", "dark chocolate", "lemon"} & set(rows)


def test_a_weight_of_the_houses_own(kitchen: Book, facts: Facts, card: Callable[..., Card]) -> None:
    book = replace(kitchen, cards={"oats": card(weighs="90 g per US cup")})
    (row,) = cup_rows(book, facts)
    assert (row.cup_g, row.kind, row.source) == (90.0, "measured by the house", "house")
    assert (row.cup_oz, row.tablespoon_g, row.teaspoon_g) == (3.25, 5.5, 1.9)


def test_a_house_without_a_cup_shows_the_us_cup(kitchen: Book, facts: Facts, house: Callable[..., House]) -> None:
    book = replace(kitchen, house=house(cup=None))
    assert cup_rows(book, facts) == cup_rows(kitchen, facts)
    assert conversions(book, facts).cup_name == "US cup"


def test_the_sugar_cup_of_each_kitchen(
    kitchen: Book, facts: Facts, house: Callable[..., House], gnu_units: Any
) -> None:
    """1.5 US cups of sugar weigh 300 g: GNU units."""
    grams = gnu_units([(f"1 {name} sugar", "g") for name in ("uscup", "metriccup", "brcup")])
    assert grams[0] * 1.5 == pytest.approx(300, abs=0.01)
    for cup, cup_g in zip(("US cup", "metric cup", "UK cup"), grams, strict=True):
        rows = cup_rows(replace(kitchen, house=house(cup=cup)), facts)
        assert next(row for row in rows if row.ingredient == "caster sugar").cup_g == pytest.approx(cup_g, abs=0.501)


def test_self_raising_flour_adds_up_and_lies_in_the_published_range(facts: Facts, table: Any) -> None:
    """Spoons of powder to plain flour, rows S1 to S4 of formula_balance.csv: 1 tsp per 110 g to 2 tsp per 150 g."""
    published = []
    for row in table("formula_balance"):
        if row["id"] in ("S1", "S2", "S3", "S4"):
            spoons, flour = re.findall(r"([\d.]+) (?:tsp|g)", row["rule"])[:2]
            published.append(float(spoons) / float(flour))
    assert len(published) == 4
    for row in flour_rows(facts):
        assert row.plain_g + row.powder_g == row.self_raising_g
        assert min(published) <= row.powder_tsp / row.plain_g <= max(published), row
        assert row.powder_g / row.plain_g == pytest.approx(0.05, abs=0.5 / row.plain_g + 0.001)


def test_every_source_of_the_page_is_known(demo: Loaded) -> None:
    page = conversions(demo.book, demo.facts)
    assert page.spoons == spoon_rows(demo.book, demo.facts)
    assert page.oven == oven_rows(demo.facts)
    for row in page.cups:
        assert row.source == "house" or row.source in demo.facts.sources
