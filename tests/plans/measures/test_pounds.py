"""Ounces, pounds, pints against scipy's constants and GNU units."""

from typing import Any

import pytest
from scipy import constants

from tinbook.facts import Facts
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.measures.pounds import pounds


def test_ounces_and_grams_against_scipy(facts: Facts) -> None:
    made = pounds(facts)
    for row in made.ounces:
        assert row.exact_g == pytest.approx(row.ounces_oz * constants.ounce * 1000, rel=1e-9)
        assert row.shown_g == pytest.approx(row.exact_g, abs=0.501)
    for gram in made.grams:
        assert gram.exact_oz == pytest.approx(gram.grams_g / 1000 / constants.ounce, rel=1e-9)
        assert gram.shown_oz == pytest.approx(gram.exact_oz, abs=0.126)


def test_a_pound_is_sixteen_ounces(facts: Facts) -> None:
    """Exactly 453.59237 g, the agreement of 1959."""
    assert next(row for row in pounds(facts).ounces if row.ounces_oz == 16).exact_g == pytest.approx(453.59237)


def test_print_holds_the_exact_weight_and_the_trades_pound(facts: Facts) -> None:
    """Books print 450 g for a pound, and 225 g for half of one: common practice."""
    rows = {row.ounces_oz: row for row in pounds(facts).ounces}
    for row in rows.values():
        assert row.print_low_g < row.exact_g < row.print_high_g
    for ounces, printed in ((16, 450), (8, 225), (4, 110), (1, 25), (1, 30)):
        assert rows[ounces].print_low_g <= printed <= rows[ounces].print_high_g


def test_pints_against_gnu_units_and_scipy(facts: Facts, gnu_units: Any) -> None:
    rows = pounds(facts).pints
    for unit, name in (("brfloz", "uk_ml"), ("usfloz", "us_ml")):
        exact = gnu_units([(f"{row.fluid_oz} {unit}", "ml") for row in rows])
        assert [getattr(row, name) for row in rows] == pytest.approx(exact, rel=1e-6)
    for row in rows:
        assert row.uk_ml == pytest.approx(row.fluid_oz * constants.fluid_ounce_imp * 1e6, rel=1e-6)
        assert row.us_ml == pytest.approx(row.fluid_oz * constants.fluid_ounce_US * 1e6, rel=1e-6)
        assert (row.uk_shown_ml, row.us_shown_ml) == (
            pytest.approx(row.uk_ml, abs=0.501), pytest.approx(row.us_ml, abs=0.501),
        )  # fmt: skip


def test_the_names_of_so_many_fluid_ounces(facts: Facts, gnu_units: Any) -> None:
    named = {
        "US ½ cup": ("0.5 uscup", "usfloz"), "UK ¼ pint": ("0.25 brpint", "brfloz"), "US cup": ("uscup", "usfloz"),
        "UK ½ pint": ("0.5 brpint", "brfloz"), "US pint": ("uspint", "usfloz"), "UK pint": ("brpint", "brfloz"),
        "US quart": ("usquart", "usfloz"), "UK quart": ("brquart", "brfloz"),
    }  # fmt: skip
    told = {spell(row.name): row.fluid_oz for row in pounds(facts).pints if row.name}
    assert set(told) == set(named)
    assert list(told.values()) == pytest.approx(gnu_units([named[name] for name in told]))
