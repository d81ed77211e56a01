"""An ingredient by every cup and spoon, against GNU units and USDA SR28."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Card, House
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.measures.ingredients import HOUSE, weights

CUPS = {"US cup": "uscup", "metric cup": "metriccup", "UK cup": "brcup", "metric tablespoon": "15 ml",
        "US tablespoon": "ustablespoon", "Australian tablespoon": "australiatablespoon", "metric teaspoon": "5 ml",
        "US teaspoon": "usteaspoon"}  # fmt: skip


@pytest.mark.parametrize(("name", "cup_g"), [("butter", 227), ("caster sugar", 200), ("milk", 244)])
def test_every_measure_against_gnu_units(kitchen: Book, facts: Facts, gnu_units: Any, name: str, cup_g: int) -> None:
    """Grams to the cup of USDA SR28; GNU units knows how the measures go by each other."""
    made = weights(kitchen.cards[name], kitchen, facts)
    rows = {spell(row.measure): row for row in made.measures}
    assert set(rows) == set(CUPS)
    exact = gnu_units([(f"{CUPS[measure]} * {cup_g} g/uscup", "g") for measure in rows])
    ounces = gnu_units([(f"{CUPS[measure]} * {cup_g} g/uscup", "oz") for measure in rows])
    for row, grams, oz in zip(rows.values(), exact, ounces, strict=True):
        assert row.exact_g == pytest.approx(grams, rel=1e-6)
        assert row.shown_g == pytest.approx(grams, abs=0.501 if grams >= 10 else 0.0501)
        assert row.shown_oz == pytest.approx(oz, abs=0.126)


def test_the_range_holds_the_other_publication(kitchen: Book, facts: Facts, table: Any) -> None:
    """GNU units, from The Cake Bible: a US cup of butter is 226.8 g, of plain flour spooned in 120.5 g."""
    gnu = {row["name"]: float(row["per_us_cup_g"]) for row in table("units_gnu") if row["dimension"] == "density"}
    for name, food in (("butter", "butter"), ("caster sugar", "sugar"), ("plain flour", "flour_spooned")):
        row = weights(kitchen.cards[name], kitchen, facts).measures[0]
        assert row.low_g is not None and row.high_g is not None
        assert row.low_g <= gnu[food] <= row.high_g
        assert row.low_g <= row.shown_g <= row.high_g


def test_the_houses_own_measures_are_marked(kitchen: Book, facts: Facts, house: Callable[..., House]) -> None:
    book = replace(kitchen, house=house(cup="metric cup", spoon="Australian"))
    ours = [spell(row.measure) for row in weights(kitchen.cards["milk"], book, facts).measures if row.of_the_house]
    assert ours == ["metric cup", "Australian tablespoon", "metric teaspoon"]


def test_a_weight_of_the_houses_own_has_no_range(kitchen: Book, facts: Facts, card: Callable[..., Card]) -> None:
    made = weights(card(weighs="140 g per US cup"), kitchen, facts)
    assert made.measures[0].shown_g == 140
    assert made.measures[0].low_g is made.measures[0].high_g is None
    assert (made.kind, made.source) == (HOUSE, "")
    assert made.worked is not None and made.worked.sources == ("GNU units",)
    assert spell(HOUSE) == "weighed in this kitchen"


def test_round_weights_come_back_to_themselves(kitchen: Book, facts: Facts) -> None:
    made = weights(kitchen.cards["butter"], kitchen, facts)
    ml = {"cup": 236.588, "tbsp": 15.0, "tsp": 5.0}
    for row in made.rounds:
        assert row.spoons.exact * ml[row.spoons.unit] * 0.9586 == pytest.approx(row.grams, rel=1e-3)


@pytest.mark.parametrize(("name", "grams"), [("egg", 60.0), ("egg white", 39.5), ("egg yolk", 20.5), ("lemon", 120.0)])
def test_by_the_piece(kitchen: Book, facts: Facts, name: str, grams: float) -> None:
    """UK large by eggs.csv: 60.2, 39.4 and 20.4 g; to half a gram."""
    made = weights(kitchen.cards[name], kitchen, facts)
    assert made.piece_g == grams
    assert made.g_per_ml is None and made.measures == ()


def test_what_has_no_volume_measure(kitchen: Book, facts: Facts) -> None:
    made = weights(kitchen.cards["sugarpaste"], kitchen, facts)
    assert (made.g_per_ml, made.measures, made.piece_g) == (None, (), None)
