"""The tables of the oven, as they are asked for from outside."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.models import Mixture
from tinbook.pages.spelling.sayings import inputs_of, spell
from tinbook.plans.baking.tables import bakes, loads, times
from tinbook.plans.base.asking import AskError, Query
from tinbook.tins import read_tin

SPONGE = "creamed-butter-sponge"


def numbers(row: object, *keys: str) -> list[float]:
    assert isinstance(row, dict)
    return [float(row[key]) for key in keys]


def test_times_of_every_tin(demo: Loaded) -> None:
    made = times(demo.book, demo.facts, Query(of=SPONGE))
    assert len(made.rows) > 40
    for row in made.rows:
        check, low, high, likely = numbers(row, "check_min", "low_min", "high_min", "likely_exact_min")
        assert check <= low <= likely <= high
        halved, whole = numbers(row, "two_tins_likely_exact_min", "likely_exact_min")
        assert halved < whole
        if row["cooler_oven_c"] is not None:
            cooler, likely_cooler = numbers(row, "cooler_oven_c", "cooler_likely_exact_min")
            assert cooler < 160 and likely_cooler > likely
    assert any(row["cooler_oven_c"] for row in made.rows)
    assert any("5 of your bakes" in each for each in inputs_of(made.worked))
    assert any("p 0.87" in each for each in inputs_of(made.worked))


def test_times_as_asked(demo: Loaded) -> None:
    tins = tuple(read_tin(text) for text in ("round 20 cm x 7.5 cm", "2 round 15 cm"))
    plain = times(demo.book, demo.facts, Query(of=SPONGE, tins=tins))
    hot, cold = (
        times(demo.book, demo.facts, Query(of=SPONGE, tins=tins, **more))
        for more in ({"oven_c": 180.0}, {"start_c": 5.0})
    )
    assert [row["tin"] for row in plain.rows] == ["round 20 cm x 7.5 cm", "round 15 cm"]
    for here, hotter, colder in zip(plain.rows, hot.rows, cold.rows, strict=True):
        likely = [numbers(row, "likely_exact_min")[0] for row in (hotter, here, colder)]
        assert likely == sorted(likely)
    with pytest.raises(AskError, match="no centre reaches"):
        times(demo.book, demo.facts, Query(of=SPONGE, oven_c=90.0))


def test_a_tin_asked_for_is_its_row_of_the_table(demo: Loaded) -> None:
    """In whole eggs, as the page has it."""
    rows = {str(row["tin"]): row for row in times(demo.book, demo.facts, Query(of="mud-cake")).rows}
    for text in ("round 23 cm x 7.5 cm", "square 20 cm x 7.5 cm"):
        (asked,) = times(demo.book, demo.facts, Query(of="mud-cake", tins=(read_tin(text),))).rows
        assert asked == rows[text]


def test_only_cakes_have_times(demo: Loaded) -> None:
    for ask in (times, loads):
        with pytest.raises(AskError, match="is not baked in tins"):
            ask(demo.book, demo.facts, Query(of="american-buttercream"))


def test_the_log_as_it_was_and_as_expected(demo: Loaded) -> None:
    every = bakes(demo.book, demo.facts, Query()).rows
    mine = bakes(demo.book, demo.facts, Query(of=SPONGE)).rows
    assert len(every) == len(demo.book.bakes) > len(mine) == len(demo.book.bakes_of[SPONGE])
    for row in mine:
        was, expected, oven = numbers(row, "done_after_min", "expected_min", "oven_c")
        assert expected == pytest.approx(was, rel=0.12)
        assert oven == 165.0
    assert mine[0]["rise"] == pytest.approx(1.47, abs=0.02)


def test_loads_of_what_is_on_hand(demo: Loaded) -> None:
    rows = loads(demo.book, demo.facts, Query(of="mud-cake")).rows
    owned = {own.tin.full_name for own in demo.book.tins if own.have}
    assert {str(row["tin"]) for row in rows} <= owned
    shallow = next(row for row in rows if "rectangle" in str(row["tin"]))
    assert spell(shallow["verdict"]) == "too full" and shallow["fill_tins"] == 2
    each, most = numbers(shallow, "each_tin_g", "most_each_g")
    assert each <= most
    assert isinstance(demo.book.mixtures["mud-cake"], Mixture)
