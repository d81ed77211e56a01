"""The tables of weights, supports, loads and what is made ahead, as they are asked for by name."""

from __future__ import annotations

from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result
from tinbook.plans.tables import TABLES

WEDDING = "estuary-wedding-cake"


def ask(demo: Loaded, name: str, of: str = WEDDING, **asked: Any) -> Result:
    return TABLES[name].rows(demo.book, demo.facts, Query(of=of, **asked))


def test_one_question_has_one_answer(demo: Loaded) -> None:
    """What a tier weighs, and what the whole does, is the same in the table of the cake."""
    weights, cake = ask(demo, "cake-weights").rows, ask(demo, "cake").rows
    assert [row["weight_g"] for row in weights if row["tier"] != weights[-2]["tier"]] == [
        row["weight_g"] for row in cake
    ]
    assert cake[-1]["board_weight_g"] == weights[-2]["weight_g"]
    assert cake[-1]["bakes_count"] == ask(demo, "cake-loads").rows[-1]["load_count"]
    assert sum(int(row["dowels_count"] or 0) for row in cake[:-1]) == sum(
        int(row["pieces_count"] or 0) for row in ask(demo, "cake-supports").rows if row["held_by"] == "dowels"
    )


def test_a_size_and_guests_are_heard(demo: Loaded) -> None:
    small, whole = ask(demo, "cake-weights", size="-1").rows[-1], ask(demo, "cake-weights").rows[-1]
    assert float(small["weight_g"]) < float(whole["weight_g"])  # type: ignore[arg-type]
    many = ask(demo, "cake-weights", guests=100).rows[-1]
    assert float(many["weight_g"]) > float(whole["weight_g"])  # type: ignore[arg-type]
    with pytest.raises(AskError, match="changes nothing here"):
        ask(demo, "cake-loads", keep_top=True)


def test_where_weights_come_from_is_named(demo: Loaded) -> None:
    assert "manual handling guide" in ask(demo, "cake-weights").worked.sources


def test_the_last_row_says_how_long_it_keeps(demo: Loaded) -> None:
    rows = ask(demo, "cake-ahead").rows
    assert rows[-1]["keeps"] and rows[-1]["least"]
    assert spell(rows[-1]["part"]) == "in all"  # type: ignore[arg-type]
