"""The tables of what is in a mixture, as they are answered."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import weigh_all
from tinbook.plans.mixtures import tables
from tinbook.plans.mixtures.on_hand import hand_table
from tinbook.plans.mixtures.safety import allergens


def test_unknown_allergens_are_rows_too(demo: Loaded) -> None:
    unknown = 0
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        strip = allergens(batch, demo.book, demo.facts)
        rows = tables.allergens(demo.book, demo.facts, Query(of=slug)).rows
        assert [row["from"] for row in rows if row["allergen"] == "unknown"] == list(strip.unknown)
        assert [row["allergen"] for row in rows if row["allergen"] != "unknown"] == [
            one.allergen for one in strip.contains
        ]
        unknown += len(strip.unknown)
    assert unknown, "the demo has an ingredient nobody has read the pack of"


def test_an_allergen_names_all_it_comes_from(demo: Loaded) -> None:
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        rows = tables.allergens(demo.book, demo.facts, Query(of=slug)).rows
        words = [spell(row["from"]) for row in rows if row["allergen"] != "unknown"]
        strip = allergens(batch, demo.book, demo.facts)
        assert words == [", ".join(contained.ingredients) for contained in strip.contains]


def test_a_row_for_every_choice_on_hand(demo: Loaded) -> None:
    choices = [choice for row in hand_table(demo.book, demo.facts).rows for choice in row.choices]
    rows = tables.on_hand(demo.book, demo.facts, Query()).rows
    for row, choice in zip(rows, choices, strict=True):
        assert spell(row["tin"]) == ", ".join(f"{count} {tin.name}" for count, tin in choice.tins)
    assert rows
