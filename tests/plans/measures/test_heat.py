"""The oven as it is printed, against GNU units, scipy's constants and printed tables.

What is published of the values themselves is tested with the facts; here it is the rows.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import pytest
from scipy import constants

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Oven
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.oven import dial
from tinbook.plans.measures.heat import heat_rows, heat_worked, mark_for, oven_rows, oven_worked

SIX_DIGITS = 1e-6


def numbers(text: str) -> list[float]:
    return [float(number) for number in re.findall(r"\d+\.?\d*", text)]


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
        assert set(numbers(theirs["fan_C_rule"])) <= set(numbers(spell(row.fan_c))), row.gas_mark
        assert [fan + 20 for fan in numbers(spell(row.fan_c))] == numbers(row.conventional_c)


def test_a_heat_has_one_mark_wherever_it_is_asked(facts: Facts, demo: Loaded) -> None:
    """Two of three printed tables (oven_conversion_tables.csv) give mark 3 for 170 °C: so say dials and a gas oven."""
    house = demo.book.house.model_copy(update={"oven": Oven.model_validate({"kind": "gas"})})
    book = replace(demo.book, house=house)
    marks = {row.conventional_c: row.gas_mark for row in heat_rows(facts)}
    assert marks[170.0] == mark_for(170.0, facts).mark == "3"
    for celsius, mark in marks.items():
        assert spell(dial(celsius, book, facts)) == f"gas mark {mark}"


def test_gas_marks_against_gnu_units_and_scipy(facts: Facts, gnu_units: Any) -> None:
    rows = oven_rows(facts)
    marks = [{"¼": "0.25", "½": "0.5"}.get(row.gas_mark, row.gas_mark) for row in rows]
    exact = gnu_units([(f"gasmark({mark})", "tempC") for mark in marks])
    assert [row.exact_c for row in rows] == pytest.approx(exact, abs=1e-4)
    fahrenheit = [constants.convert_temperature(row.fahrenheit_f, "Fahrenheit", "Celsius") for row in rows]
    assert [row.exact_c for row in rows] == pytest.approx(fahrenheit, rel=SIX_DIGITS)


def test_dials_against_scipy_and_the_printed_tables(facts: Facts, table: Any) -> None:
    """The mark is one for which a table prints this °C (oven_conversion_tables.csv), or the nearest by its exact °C."""
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
        theirs = [each for each in table("oven_conversion_tables") if float(each["gas_mark"]) == mark]
        met = [celsius for name in ("A_C", "B_C", "C_C") for celsius in numbers(theirs[0][name])]
        assert row.conventional_c in met or off[mark] == min(off.values())
        assert abs(row.gas_off_c) == pytest.approx(off[mark], abs=0.56)


def test_every_source_is_known(demo: Loaded) -> None:
    for worked in (oven_worked(demo.facts), heat_worked(demo.facts)):
        assert worked.sources and set(worked.sources) <= set(demo.facts.sources)
