"""The tables of measures and swaps as they are answered: columns that carry their units, and what was asked."""

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import formula_of, spell
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import weigh_all
from tinbook.plans.measures import tables as kitchen
from tinbook.plans.tables import TABLES

HERE = {name: table for name, table in TABLES.items() if table.sums.__module__ == kitchen.__name__ and not table.of}


@every("name", HERE)
def test_a_table_has_rows_a_formula_and_known_sources(demo: Loaded, name: str) -> None:
    made = HERE[name].rows(demo.book, demo.facts, Query())
    assert made.rows and spell(made.title) and formula_of(made.worked)
    assert set(made.worked.sources) <= set(demo.facts.sources)
    heads = {tuple(row) for row in made.rows}
    assert len(heads) == 1, "every row has the same columns"


def test_all_that_the_page_says_can_be_asked() -> None:
    assert set(HERE) == {
        "oven", "heat", "spoons", "ounces", "grams", "pints", "lengths", "eggs", "bowl", "egg-parts", "cups", "weights",
        "flour", "swaps", "pieces", "needed", "left",
    }  # fmt: skip


def test_pieces_of_the_weight_asked(demo: Loaded) -> None:
    """1200 g less 2 % is 26 times 45 g: by hand."""
    rows = kitchen.pieces(demo.book, demo.facts, Query(weight_g=1200.0)).rows
    assert {row["batter_g"] for row in rows} == {1200.0}
    (row,) = [row for row in rows if row["each_g"] == 45]
    assert (row["count"], row["left_g"]) == (26, 6)


def test_weights_are_of_every_card_that_has_a_volume_measure(demo: Loaded) -> None:
    named = {row["ingredient"] for row in kitchen.weights(demo.book, demo.facts, Query()).rows}
    assert named == {row["ingredient"] for row in kitchen.cups(demo.book, demo.facts, Query()).rows}


def test_a_swap_is_a_row_for_each_part(demo: Loaded) -> None:
    rows = kitchen.swaps(demo.book, demo.facts, Query()).rows
    assert len(rows) == sum(len(swap.amounts) * len(swap.parts) for swap in demo.facts.swaps.values())
    (salt,) = {row["part"] for row in rows if row["leave_out"]}
    assert salt == "salt"


def test_the_written_mixture_adds_up(demo: Loaded) -> None:
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        rows = kitchen.written(demo.book, demo.facts, Query(of=slug)).rows
        assert [row["ingredient"] for row in rows] == [line.name for line in batch.ingredients]
        assert sum(float(row["exact_g"] or 0) for row in rows) == pytest.approx(batch.mass_g, abs=0.001)
        for row in rows:
            assert len([key for key in row if key.startswith("measured_") and row[key] is not None]) <= 1
            assert (row["volume_ml"] is None or row["pieces"] is not None) == all(
                row[key] is None for key in ("measured_tsp", "measured_tbsp", "measured_cups")
            )
            assert float(row["shown_oz"] or 0) * 28.349523 == pytest.approx(
                float(row["exact_g"] or 0), rel=0.6, abs=3.6
            )
