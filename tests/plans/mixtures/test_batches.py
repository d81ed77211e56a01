"""A mixture by eggs, cups, weight and batches, and flour for flour."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.mixtures.batches import swaps, weight_table
from tinbook.tins import read_tin

Batches = Callable[..., Batch]
MADE = {"tins": None, "bake": None, "kind": "buttercream", "makes": "790 g",
        "mix": ["250 g butter", "500 g caster sugar", "2 tbsp milk", "2 tsp vanilla extract"]}  # fmt: skip


def by(batch: Batch, facts: Facts, word: str) -> dict[float, Any]:
    return {row.value: row.version for row in weight_table(batch, facts).rows if row.asked_by == word}


def test_a_cake_is_asked_for_by_the_egg(batch: Batches, facts: Facts) -> None:
    """240 g each to 4 eggs is 60 g each to one, and 300 g each to 5."""
    made = batch()
    assert {row.asked_by for row in weight_table(made, facts).rows} == {"eggs"}
    rows = by(made, facts, "eggs")
    assert list(rows) == list(range(1, 13))
    assert [got.shown for got in rows[5].amounts[:3]] == [300.0, 300.0, 5.0]
    for eggs, version in rows.items():
        assert version.amounts[2].shown == eggs and version.amounts[2].unit == ""
        assert version.amounts[0].exact == pytest.approx(60 * eggs)
        assert version.off == 0.0


def test_a_cake_without_eggs_is_asked_for_by_nothing(batch: Batches, facts: Facts) -> None:
    assert weight_table(batch(mix=["500 g butter"]), facts).rows == ()


def test_a_filling_by_weight_and_batches(batch: Batches, facts: Facts) -> None:
    made = batch(**MADE)
    assert {row.asked_by for row in weight_table(made, facts).rows} == {"batches", "g"}
    for grams, version in by(made, facts, "g").items():
        # What comes out goes by what it makes, so 790 g is the batch as written.
        assert version.factor == pytest.approx(grams / 790)
        assert version.mass_g == pytest.approx(made.mass_g * grams / 790)
    for share, version in by(made, facts, "batches").items():
        assert version.amounts[0].exact == pytest.approx(250 * share)
    assert [got.shown for got in by(made, facts, "batches")[2.0].amounts] == [500.0, 1000.0, 4.0, 4.0]


def test_cup_cakes_by_the_cup(batch: Batches, facts: Facts) -> None:
    made = batch(tins="24 standard cups", kind="cupcake")
    cups = by(made, facts, "cups")
    assert by(made, facts, "eggs")
    # 4 eggs to 24: 2 to 12, 6 to 36, and 3 to 18; 1 to 6.
    for count, eggs in ((6, 1), (12, 2), (18, 3), (24, 4), (36, 6), (48, 8)):
        assert cups[count].amounts[2].shown == eggs
        assert cups[count].factor == pytest.approx(count / 24, rel=1e-9)
    # Of 5 eggs, 12 cups take 2 1/2: they are beaten and weighed.
    five = by(batch(tins="24 standard cups", kind="cupcake", mix=["240 g butter", "5 eggs"]), facts, "cups")
    assert five[12].amounts[1].unit == "g"
    assert five[12].amounts[1].exact == pytest.approx(2.5 * 68 * 0.885)


def test_every_row_of_the_demo_tells_true_errors(demo: Loaded) -> None:
    count = 0
    for made in weigh_all(demo.book, demo.facts).values():
        for row in weight_table(made, demo.facts).rows:
            weights = [abs(got.shown / got.exact - 1) for got in row.version.amounts if got.unit in ("g", "ml", "")]
            assert row.version.weight_error == pytest.approx(max(weights), abs=1e-9)
            assert row.version.mass_g == pytest.approx(made.mass_g * row.version.factor, rel=0.01)
            count += 1
    assert count > 40


def test_flour_for_flour_by_hand(batch: Batches, kitchen: Book, facts: Facts) -> None:
    """240 g at 5 %: 228.6 g plain and 11.4 g powder, 2 1/2 tsp of 4.6 g."""
    (swap,) = swaps(batch(), kitchen, facts)
    assert (swap.name, swap.plain) == ("self-raising flour", "plain flour")
    assert (swap.self_raising_g, swap.plain_g, swap.powder_g, swap.powder_tsp) == (240.0, 230.0, 11.0, 2.5)


def test_no_flour_no_swap(batch: Batches, kitchen: Book, facts: Facts) -> None:
    assert swaps(batch(mix=["500 g butter"]), kitchen, facts) == ()


def test_how_it_was_worked_out(batch: Batches, facts: Facts) -> None:
    worked = weight_table(batch(), facts).worked
    assert "1031 g" in inputs_of(worked)[0]
    assert set(worked.sources) <= set(facts.sources)


def test_the_tin_of_the_cups_is_the_written_one(batch: Batches, facts: Facts) -> None:
    made = batch(tins="12 jumbo cups", kind="cupcake", mix=["600 g butter"])
    assert by(made, facts, "cups")[6].factor == pytest.approx(0.5)
    assert made.tins == ((12, read_tin("jumbo cups")[1]),)
