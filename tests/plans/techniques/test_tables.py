"""The tables of parts, as they are asked for from outside."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin


def test_rows_for_every_cake_and_for_one(demo: Loaded) -> None:
    every = TABLES["parts"].rows(demo.book, demo.facts, Query(of="lighthouse-for-the-front"))
    assert {row["cake"] for row in every.rows} >= {"round 10 cm", "round 20 cm", "round 30 cm"}
    square = Query(of="lighthouse-for-the-front", tins=((1, read_tin("square 25 cm")[1]),))
    rows = TABLES["parts"].rows(demo.book, demo.facts, square).rows
    assert {(row["cake"], row["factor"]) for row in rows} == {("square 25 cm", 1.25)}


def test_colours_sum_to_the_parts(demo: Loaded) -> None:
    one = Query(of="boat-on-the-shingle", tins=((1, read_tin("round 20 cm")[1]),))
    parts = TABLES["parts"].rows(demo.book, demo.facts, one).rows
    colours = {row["colour"]: row["exact_g"] for row in TABLES["colours"].rows(demo.book, demo.facts, one).rows}
    assert sum(colours.values()) == pytest.approx(sum(row["total_g"] for row in parts), rel=1e-6)  # type: ignore[arg-type, misc]
    (marks,) = TABLES["marks"].rows(demo.book, demo.facts, one).rows
    assert marks["count"] == pytest.approx(marks["by_area"], rel=0.03)


def test_a_technique_without_parts(demo: Loaded) -> None:
    with pytest.raises(AskError) as told:
        TABLES["parts"].rows(demo.book, demo.facts, Query(of="boat-on-the-shingel"))
    assert told.value.hint == 'did you mean "boat-on-the-shingle"?'
