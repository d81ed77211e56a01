"""The tables of a mixture in other amounts and of the tins, as they are answered: they agree with the plans."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, read_take
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import Query
from tinbook.plans.base.result import Result, Row
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh, weigh_all
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin

TIN = (2, read_tin("round 20 cm x 7.5 cm")[1])


def ask(demo: Loaded, name: str, **asked: Any) -> Result:
    return TABLES[name].rows(demo.book, demo.facts, Query(**asked))


def exact_g(row: Row) -> float:
    return sum(float(cell) for key, cell in row.items() if key.endswith("_exact_g") and cell is not None)


def test_tins_agree_with_the_plan(demo: Loaded) -> None:
    checked = 0
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        if not batch.tins:
            continue
        result = ask(demo, "tins", of=slug)
        assert spell(result.title) == f"{batch.mixture.name}, every tin"
        table = tin_table(batch, demo.book, demo.facts)
        for row, planned in zip(result.rows, table.rows, strict=True):
            assert row["tin"] == planned.tin.name
            assert row["factor"] == pytest.approx(planned.whole.factor, abs=1e-6)
            assert row["mixture_g"] == pytest.approx(planned.whole.mass_g, abs=0.001)
            assert float(row["each_tin_g"] or 0) * int(row["fill_tins"] or 0) == pytest.approx(
                planned.whole.mass_g, abs=0.01 * int(row["fill_tins"] or 0)
            )
            shown = [cell for key, cell in row.items() if _is_shown(key)]
            assert shown == [got.shown for got in planned.whole.amounts]
            checked += 1
    assert checked > 100


def _is_shown(key: str) -> bool:
    own = {"each_tin_g", "mixture_g"}
    return key.endswith(("_g", "_ml", "_tsp", "_tbsp", "_pieces")) and not key.endswith("_exact_g") and key not in own


def test_scaled_tells_both_versions(demo: Loaded) -> None:
    rows = ask(demo, "scaled", of="creamed-butter-sponge", plus=0.25).rows
    assert [spell(row["version"]) for row in rows] == ["exact", "whole eggs"]
    # A quarter more of 5 eggs and 300 g: 6.25, so 6 of them, 4 % less.
    assert (rows[0]["factor"], rows[1]["factor"]) == (1.25, 1.2)
    assert rows[1]["off_percent"] == pytest.approx(100 * (1.2 / 1.25 - 1), abs=1e-4)
    assert rows[1]["egg_pieces"] == 6.0
    assert [row["butter_g"] for row in rows] == [375.0, 360.0]


def test_a_mixture_without_eggs_has_one_version(demo: Loaded) -> None:
    rows = ask(demo, "scaled", of="american-buttercream", weight_g=1580.0).rows
    assert [spell(row["version"]) for row in rows] == ["exact"]


def test_what_is_left_is_used_up(demo: Loaded) -> None:
    (exact, _) = ask(
        demo, "scaled", of="creamed-butter-sponge", left=read_take("450 g butter", demo.book.house.spoons)
    ).rows
    assert exact["butter_exact_g"] == 450.0
    assert exact["factor"] == 1.5


def test_fits_share_the_mixture(demo: Loaded) -> None:
    targets = (TIN, (1, read_tin("square 15 cm x 7.5 cm")[1]), (12, read_tin("standard cups")[1]))
    rows = ask(demo, "fits", of="creamed-butter-sponge", tins=targets).rows
    (exact, whole) = ask(demo, "scaled", of="creamed-butter-sponge", tins=targets).rows
    shared = sum(float(row["each_tin_g"] or 0) * int(row["fill_tins"] or 0) for row in rows)
    assert shared == pytest.approx(float(whole["mixture_g"] or 0), abs=0.1)
    assert [row["count"] for row in rows] == [2, 1, 12]
    assert spell(exact["version"]) == "exact"


def test_two_lines_of_one_name_keep_apart(
    batch: Callable[..., Batch], kitchen: Book, facts: Facts, mixture: Callable[..., Any]
) -> None:
    """Else the second would hide the first, and the sum of the cells would be short of the mixture."""
    twice = mixture(mix=["100 g butter", "50 g butter", {"take": "7 g butter", "part": "top"}, "3 g butter", "4 eggs"])
    book = replace(kitchen, mixtures={"twice": twice})
    (row, _) = TABLES["scaled"].rows(book, facts, Query(of="twice", batches=2)).rows
    assert exact_g(row) == pytest.approx(2 * weigh("twice", twice, kitchen, facts).mass_g, abs=0.001)
    assert sorted(float(cell or 0) for key, cell in row.items() if "butter" in key and key.endswith("_exact_g")) == [
        6.0, 14.0, 100.0, 200.0,
    ]  # fmt: skip


def test_factors_from_every_tin_or_from_one(demo: Loaded) -> None:
    every = ask(demo, "factors").rows
    one = ask(demo, "factors", tins=((1, TIN[1]),)).rows
    assert len(every) == len(one) ** 2
    by_pair = {(row["from"], row["to"]): float(row["factor"] or 0) for row in every}
    for (there, here), factor in by_pair.items():
        assert factor * by_pair[here, there] == pytest.approx(1.0, rel=5e-4)  # six decimals
    assert by_pair["round 20 cm", "round 40 cm"] == pytest.approx(4.0)
    for row in one:
        assert row["factor"] == pytest.approx(by_pair["round 20 cm", str(row["to"])], abs=1e-6)


def test_a_measured_tin_is_measured_in_every_table(demo: Loaded) -> None:
    """The house owns a 23 cm tin that it has filled with water."""
    (own,) = [each for each in demo.book.tins if each.measured and each.tin.shape == "round"]
    asked = ask(demo, "factors", tins=((1, own.tin),)).rows
    every = [row for row in ask(demo, "factors").rows if row["from"] == own.tin.name]
    assert [row["factor"] for row in asked] == [row["factor"] for row in every]
    (row,) = [row for row in ask(demo, "sizes").rows if row["tin"] == own.tin.name]
    assert (row["brim_ml"], row["measured"], row["owned"]) == (own.measured, True, True)


def test_a_remark_of_a_tin_is_said(demo: Loaded) -> None:
    """The sponge rises over the rim of a tin of 25 mm; nothing is remarked of one it was written for."""
    low, own = read_tin("round 20 cm x 2.5 cm")[1], demo.book.mixtures["creamed-butter-sponge"].tins[0]
    (shallow,) = ask(demo, "fits", of="creamed-butter-sponge", tins=((1, low),)).rows
    assert spell(shallow["remark"]).startswith(f"too shallow for all the batter: fill {shallow['fill_tins']}")
    (plain,) = ask(demo, "fits", of="creamed-butter-sponge", tins=(own,)).rows
    assert plain["remark"] == ""
