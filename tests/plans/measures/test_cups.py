"""Cups and spoons as they are printed, against GNU units, scipy's constants and USDA SR28."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from scipy import constants

from tinbook.facts import Facts
from tinbook.loading import Loaded, load_book
from tinbook.models import Book, Card, House
from tinbook.pages.spelling.measures import FILLED
from tinbook.pages.spelling.sayings import formula_of, inputs_of, spell
from tinbook.plans.measures.cups import cup_name, cup_rows, cups_worked, spoon_rows, spoons_worked
from tinbook.plans.measures.ingredients import weights

ROOT = Path(__file__).parents[3]
PACKAGE = ROOT / "plugins" / "tinbook"
STARTER = PACKAGE / "cli" / "starter" / "recipes"
FACTS = PACKAGE / "facts" / "data" / "densities.yaml"
WITHIN = 0.02
"""Of what the USDA prints."""
MEASURES = {"cup": "US cup", "tbsp": "US tablespoon", "tsp": "US teaspoon"}
USDA = {
    "butter": ("01145", "cup"),
    "white vegetable fat": ("04031", "cup"),
    "salted butter": ("01001", "cup"),
    "vegan baking block": ("04073", "tsp"),
    "sunflower oil": ("04044", "cup"),
    # Of white sugar the USDA has one row by the cup that is not milled.
    "caster sugar": ("19335", "cup"),
    "granulated sugar": ("19335", "cup"),
    "icing sugar": ("19336", "cup unsifted"),
    "light brown sugar": ("19334", "cup packed"),
    "dark brown sugar": ("19334", "cup packed"),
    "black treacle": ("19304", "cup"),
    "golden syrup": ("19350", "cup"),
    "glucose syrup": ("19350", "cup"),
    "honey": ("19296", "cup"),
    # It does not say how the cup is filled; the test of the facts shows that it is nearest to a spooned one.
    "plain flour": ("20081", "cup"),
    "self-raising flour": ("20082", "cup"),
    "cocoa powder": ("19165", "cup"),
    "cornflour": ("20027", "cup"),
    "baking powder": ("18369", "tsp"),
    "bicarbonate of soda": ("18372", "tsp"),
    "cream of tartar": ("18373", "tsp"),
    "dried yeast": ("18375", "tsp"),
    "salt": ("02047", "cup"),
    "milk": ("01077", "cup"),
    "buttermilk": ("01088", "cup"),
    "double cream": ("01053", "cup, fluid (yields 2 cups whipped)"),
    "plain yogurt": ("01116", "cup (8 fl oz)"),
    "soft cheese": ("01017", "cup"),
    "milk powder": ("01091", "cup"),
    "egg white": ("01124", "cup"),
    "egg yolk": ("01125", "cup"),
    "egg white powder": ("01136", "tbsp"),
    "vanilla extract": ("02050", "tbsp"),
    "lemon zest": ("09156", "tbsp"),
    "lemon juice": ("09152", "cup"),
    "ground cinnamon": ("02010", "tsp"),
    "ground ginger": ("02021", "tsp"),
    "currants": ("09085", "cup"),
    "raisins": ("09298", "cup (not packed)"),
    "sultanas": ("09298", "cup (not packed)"),
    "ground almonds": ("12061", "cup, ground"),
    "ground hazelnuts": ("12120", "cup, ground"),
    "chopped walnuts": ("12155", "cup, chopped"),
    "grated carrot": ("11124", "cup grated"),
    "apricot jam": ("19297", "tbsp"),
}
"""A card of the demo or the starter, and the food and measure of USDA SR28 that is the same thing so filled."""
ALONE = {"soya drink", "mixed spice"}
"""Taken as milk, and as the middle of five spices: no row of their own."""

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


@pytest.mark.parametrize("whose", ["demo", "starter"])
def test_every_card_against_the_usda(demo: Loaded, table: Any, whose: str) -> None:
    """Each card beside the row of USDA SR28 that is filled as the book says: spooned in, not sifted, and levelled."""
    loaded = demo if whose == "demo" else load_book(STARTER)
    printed = {(row["ndb_no"], row["measure"]): row for row in table("usda_sr28_portions") if row["amount"] == "1.0"}
    told, off = [], {}
    for name, card in loaded.book.cards.items():
        fact = loaded.facts.densities.get(card.weighs_as or "")
        if name not in USDA:
            by_usda = fact is not None and fact.source == "USDA SR28" and name not in ALONE
            if by_usda and fact:  # a card of the starter's larder: its fact names the row itself
                assert whose == "starter" and tuple(fact.row.split(", 1 ")) in printed, f"{name}: which row is it?"
            continue
        measure = USDA[name][1]
        theirs_g = float(printed[USDA[name]]["grams"])
        rows = {spell(row.measure): row for row in weights(card, loaded.book, loaded.facts).measures}
        row = rows.get(MEASURES[measure.split()[0].strip(",")])
        if not rows:  # a card that has no weight by volume
            assert whose == "starter" and card.weighs_as is None, name
            continue
        if row is None:  # the starter's own spoons are metric, 15 and 5 ml to the US 14.787 and 4.929
            row = rows["metric teaspoon" if "tsp" in measure else "metric tablespoon"]
            assert row.exact_g * 14.786765 / 15.0 == pytest.approx(theirs_g, rel=WITHIN), name
            continue
        off[name] = row.exact_g / theirs_g - 1
        told.append(f"{name:24} {measure:36} {theirs_g:6g} g {row.shown_g:6g} g {off[name]:+.2%}")
        assert row.shown_g == pytest.approx(theirs_g, rel=WITHIN, abs=0.5 if theirs_g >= 10 else 0.05), name
    print("\n".join(told))
    assert len(off) >= (45 if whose == "demo" else 9)
    assert max(map(abs, off.values())) <= WITHIN, "\n".join(told)


def test_a_cup_is_printed_as_the_usda_prints_it(demo: Loaded, table: Any) -> None:
    """Grams in a US cup, and ounces beside them; spoons of the house are metric."""
    assert demo.book.house.cup == "US cup"
    by_row = {f"{row['ndb_no']}, 1 {row['measure']}": float(row["grams"]) for row in table("usda_sr28_portions")}
    compared = 0
    for row in cup_rows(demo.book, demo.facts):
        fact = demo.facts.densities.get(demo.book.cards[row.ingredient].weighs_as or "")
        if fact is None or fact.source != "USDA SR28" or ", 1 cup" not in fact.row:
            continue
        cup_g = by_row[fact.row]
        assert row.cup_g == pytest.approx(cup_g, abs=0.501), row
        assert row.tablespoon_g == pytest.approx(cup_g / 236.588 * 15, abs=0.501), row
        assert row.teaspoon_g == pytest.approx(cup_g / 236.588 * 5, abs=0.0501), row
        assert row.cup_oz == pytest.approx(cup_g / 28.3495, abs=0.126), row
        assert (row.kind, row.source) == (fact.kind, "USDA SR28")
        compared += 1
    assert compared >= 30


def test_the_way_of_filling_is_said_where_cups_are(demo: Loaded) -> None:
    assert FILLED in formula_of(cups_worked(demo.book, demo.facts))
    for text in (FACTS, STARTER / "house" / "ingredients.yaml", ROOT / "recipes" / "house" / "ingredients.yaml"):
        assert FILLED in " ".join(text.read_text("utf-8").replace("\n#", " ").split()), text


def test_what_has_no_volume_measure_has_no_row(kitchen: Book, facts: Facts) -> None:
    rows = [row.ingredient for row in cup_rows(kitchen, facts)]
    assert rows == sorted(rows)
    assert {"butter", "water", "instant coffee"} <= set(rows)
    assert not {"egg", "sugarpaste", "dark chocolate", "lemon"} & set(rows)


def test_a_weight_of_the_houses_own(kitchen: Book, facts: Facts, card: Callable[..., Card]) -> None:
    book = replace(kitchen, cards={"oats": card(weighs="90 g per US cup")})
    (row,) = cup_rows(book, facts)
    assert (row.cup_g, spell(row.kind), row.source) == (90.0, "measured in this kitchen", "house")
    assert (row.cup_oz, row.tablespoon_g, row.teaspoon_g) == (3.25, 5.7, 1.9)


def test_a_house_without_a_cup_shows_the_us_cup(kitchen: Book, facts: Facts, house: Callable[..., House]) -> None:
    book = replace(kitchen, house=house(cup=None))
    assert cup_rows(book, facts) == cup_rows(kitchen, facts)
    assert cup_name(book) == "US cup"
    assert "no cup chosen (a US cup is shown)" in inputs_of(cups_worked(book, facts))[0]


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
