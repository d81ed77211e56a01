"""Cups and spoons as they are printed, against GNU units and scipy's constants."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from scipy import constants

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, House
from tinbook.pages.spelling.sayings import inputs_of, spell
from tinbook.plans.measures.cups import cup_name, cup_rows, cups_worked, spoon_rows, spoons_worked

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
SIX_DIGITS = 1e-6
PRINTED_DIGITS = 2e-5
"""Of what the facts hold to five digits."""


def test_spoons_and_cups_against_gnu_units(kitchen: Book, facts: Facts, gnu_units: Any) -> None:
    rows = {spell(row.measure): row for row in spoon_rows(kitchen, facts)}
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
        assert row.shown_us_fl_oz == pytest.approx(row.us_fl_oz, abs=0.00501)
        assert row.shown_uk_fl_oz == pytest.approx(row.uk_fl_oz, abs=0.00501)


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
    marked = {spell(row.measure) for row in spoon_rows(book, facts) if row.of_the_house}
    assert marked == ours | {"pinch"}, "a pinch is a part of the house's own teaspoon"


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
        assert row.tablespoon_g == pytest.approx(cup_g / 236.588 * 15, abs=0.501), row
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
    assert (row.cup_g, spell(row.kind), row.source) == (90.0, "measured by the house", "house")
    assert (row.cup_oz, row.tablespoon_g, row.teaspoon_g) == (3.25, 5.7, 1.9)


def test_a_house_without_a_cup_shows_the_us_cup(kitchen: Book, facts: Facts, house: Callable[..., House]) -> None:
    book = replace(kitchen, house=house(cup=None))
    assert cup_rows(book, facts) == cup_rows(kitchen, facts)
    assert cup_name(book) == "US cup"
    assert "no cup of its own (a US cup is shown)" in inputs_of(cups_worked(book, facts))[0]


def test_the_sugar_cup_of_each_kitchen(
    kitchen: Book, facts: Facts, house: Callable[..., House], gnu_units: Any
) -> None:
    """1.5 US cups of sugar weigh 300 g: GNU units."""
    grams = gnu_units([(f"1 {name} sugar", "g") for name in ("uscup", "metriccup", "brcup")])
    assert grams[0] * 1.5 == pytest.approx(300, abs=0.01)
    for cup, cup_g in zip(("US cup", "metric cup", "UK cup"), grams, strict=True):
        rows = cup_rows(replace(kitchen, house=house(cup=cup)), facts)
        assert next(row for row in rows if row.ingredient == "caster sugar").cup_g == pytest.approx(cup_g, abs=0.501)


def test_every_source_is_known(demo: Loaded) -> None:
    assert set(spoons_worked(demo.book, demo.facts).sources) <= set(demo.facts.sources)
    for row in cup_rows(demo.book, demo.facts):
        assert row.source == "house" or row.source in demo.facts.sources
