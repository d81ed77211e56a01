"""One amount in every measure: against GNU units' own arithmetic, by hand, and by law."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Book, House
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.measures.spooned import measured, spooned
from tinbook.units import measures_of

US = measures_of("US cup", "US")
METRIC = measures_of("metric cup", "metric")
NO_CUP = measures_of(None, "metric")
Batches = Callable[..., Batch]


@every(
    ("ml", "shown", "unit"),
    [(250.0, 1.0, "cup"), (500.0, 2.0, "cup"), (62.5, 0.25, "cup"), (83.4, 1 / 3, "cup"), (60.0, 4.0, "tbsp"),
     (15.0, 1.0, "tbsp"), (14.9, 3.0, "tsp"), (5.0, 1.0, "tsp"), (1.3, 0.25, "tsp"), (0.1, 0.125, "tsp")],
)  # fmt: skip
def test_cups_then_tablespoons_then_teaspoons(ml: float, shown: float, unit: str) -> None:
    got = spooned(ml, METRIC)
    assert (got.unit, got.shown) == (unit, pytest.approx(shown))


@given(ml=st.floats(0.01, 5000.0), measures=st.sampled_from([US, METRIC, NO_CUP]))
def test_a_volume_is_told_within_half_a_mark(ml: float, measures: Any) -> None:
    got = spooned(ml, measures)
    size = {"cup": measures.cup_ml or 236.5882365, "tbsp": measures.tablespoon_ml, "tsp": measures.teaspoon_ml}[
        got.unit
    ]
    assert got.exact * size == pytest.approx(ml, rel=1e-9)
    assert got.shown > 0
    # Cups to a quarter or a third, spoons to a quarter.
    assert abs(got.shown - got.exact) <= 0.1251


def test_a_house_without_a_cup_shows_the_us_cup() -> None:
    assert spooned(236.5882365, NO_CUP).shown == 1.0
    assert spooned(236.5882365, NO_CUP).unit == "cup"


def test_every_line_in_every_measure_by_hand(batch: Batches, kitchen: Book) -> None:
    """1 US cup of butter weighs 227 g and of sugar 200 g (USDA SR28); 283.5 g is 10 oz."""
    mix = ["285 g butter", "200 g caster sugar", "4 eggs", "240 ml milk", "1 lb sugarpaste", "1 pinch baking powder"]
    butter, sugar, egg, milk, paste, powder = measured(batch(mix=mix), kitchen)
    assert (butter.grams, butter.ounces) == (285.0, 10.0)
    assert butter.spoons is not None and (butter.spoons.shown, butter.spoons.unit) == (1.25, "cup")
    assert butter.spoons.exact == pytest.approx(285 / 227, rel=1e-6)
    assert sugar.spoons is not None and (sugar.spoons.shown, sugar.spoons.unit) == (1.0, "cup")
    assert (egg.pieces, egg.spoons, egg.grams) == (4.0, None, 240.0)
    assert (milk.millilitres, milk.pieces) == (240.0, None)
    assert milk.spoons is not None and milk.spoons.unit == "cup"
    assert (paste.spoons, paste.ounces, paste.grams) == (None, 16.0, 455.0)
    assert powder.spoons is not None and powder.spoons.unit == "tsp"
    assert powder.grams == 1.0


def test_cups_of_another_kitchen(batch: Batches, kitchen: Book, house: Callable[..., House]) -> None:
    made = batch(mix=["250 ml milk", "3 tsp baking powder"])
    for cup, shown in (("metric cup", 1.0), ("US cup", 1.0), ("UK cup", 1.0 - 1 / 8)):
        (milk, _) = measured(made, replace(kitchen, house=house(cup=cup)))
        assert milk.spoons is not None
        assert milk.spoons.shown == pytest.approx(shown, abs=0.126), cup
    (milk, _) = measured(made, replace(kitchen, house=house(cup="metric cup")))
    assert milk.spoons is not None and milk.spoons.exact == pytest.approx(1.0)


def test_ounces_agree_with_gnu_units_over_the_demo(demo: Loaded, gnu_units: Any) -> None:
    lines = [line for batch in weigh_all(demo.book, demo.facts).values() for line in measured(batch, demo.book)]
    exact = gnu_units([(f"{line.line.mass_g:.9f} g", "oz") for line in lines])
    assert len(lines) > 40
    for line, ounces in zip(lines, exact, strict=True):
        step = 0.125 if ounces < 1 else 0.25
        assert abs(line.ounces - ounces) <= max(step / 2, step - ounces) + 1e-9, line
