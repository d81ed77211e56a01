"""The tables of portions and guests, as they are asked for from outside."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.portions.cutting import portion_sizes
from tinbook.plans.portions.guests import GUESTS
from tinbook.plans.portions.tables import portion_grams
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin

ROUND = ((1, read_tin("round 20 cm")[1]),)


def test_every_tin_has_its_portions(demo: Loaded) -> None:
    made = TABLES["portions"].rows(demo.book, demo.facts, Query())
    rows = {row["tin"]: row for row in made.rows}
    assert rows["round 20 cm"]["dessert_count"] == 24
    assert spell(rows["round 20 cm"]["dessert_cut"]) == "strips 5+7+7+5"
    assert spell(rows["square 20 cm"]["dessert_cut"]) == "grid 8 x 4"
    assert spell(rows["ball 15 cm"]["dessert_cut"]) == "wedges 5, twice"
    assert spell(rows["standard cups"]["tea_slice_cut"]) == "one each"
    assert "portion chart" in made.worked.sources
    assert rows["round 15 cm"]["finger_count"] == 23  # of 28 by area; makers serve 20 to 25
    assert rows["square 18 cm"]["dessert_count"] == 24  # makers get 22 to 28
    assert rows["round 20 cm"]["tea_slice_count"] == 15


def test_a_size_of_ones_own(demo: Loaded) -> None:
    (row,) = TABLES["portions"].rows(demo.book, demo.facts, Query(tins=ROUND, portion=(50.0, 25.0))).rows
    assert row["asked_count"] == 24


def test_what_a_portion_of_a_mixture_weighs(demo: Loaded) -> None:
    """The weight of the cake, as the table of layers has it, over the portions."""
    cake = {row["tin"]: row for row in TABLES["layers"].rows(demo.book, demo.facts, Query(of="madeira-cake")).rows}
    rows = TABLES["portions"].rows(demo.book, demo.facts, Query(of="madeira-cake")).rows
    row = next(row for row in rows if row["tin"] == "square 20 cm")
    whole = next(row["baked_g"] for name, row in cake.items() if str(name).startswith("square 20 cm"))
    assert isinstance(whole, float)
    assert row["dessert_g"] == pytest.approx(whole / 32, abs=0.02)


def test_a_portion_of_a_kind_of_cake_weighs_by_its_batter(demo: Loaded) -> None:
    """The usual creamed batter: 0.85 g/ml, risen by half, a tenth lighter: 0.51 g/ml of cake."""
    portion = portion_sizes(demo.book, demo.facts)["dessert"]
    assert portion_grams(portion, demo.facts.kinds["creamed"], 100.0, 1.5) == pytest.approx(125 * 0.51)


def test_guests(demo: Loaded) -> None:
    made = TABLES["guests"].rows(demo.book, demo.facts, Query(guests=50, of="madeira-cake"))
    first = made.rows[0]
    assert (first["serves"], first["over"], first["tins"], first["owned"]) == (50, 0, 1, True)
    assert first["factor"] and first["batter_ml"]
    with_cups = TABLES["guests"].rows(demo.book, demo.facts, Query(guests=60, beside="cupcakes")).rows[0]
    assert spell(with_cups["beside"]).endswith("standard cups")
    usual = TABLES["guests"].rows(demo.book, demo.facts, Query()).rows
    assert [row["guests"] for row in usual] == list(GUESTS)
    own = TABLES["guests"].rows(demo.book, demo.facts, Query(guests=40, portion=(30.0, 40.0))).rows[0]
    assert own["owned"] is True
    assert isinstance(own["over"], int) and own["over"] >= 0


ROUNDS = tuple(read_tin(f"round {cm} cm")[1] for cm in (25, 20, 15))


def test_a_set_that_is_named_is_judged(demo: Loaded) -> None:
    """25, 20 and 15 cm serve 38, 24 and 11 desserts, together 73."""
    (row,) = TABLES["guests"].rows(demo.book, demo.facts, Query(stacked=ROUNDS, guests=80, of="madeira-cake")).rows
    assert (row["serves"], row["over"]) == (73, -7)
    assert spell(row["judged"]) == "7 short"
    assert row["factor"] and row["batter_ml"]
    (row,) = TABLES["guests"].rows(demo.book, demo.facts, Query(stacked=ROUNDS, keep_top=True)).rows
    assert (row["serves"], spell(row["judged"])) == (
        62,
        "the steps between the tiers are as usual, and you have every tin",
    )


@every(
    ("name", "query", "told"),
    [
        ("portions", Query(tins=((1, read_tin("round 5 cm")[1]),), portion=(80.0, 80.0)), "is larger than round 5 cm"),
        ("portions", Query(of="marzipan"), "made by weight"),
        ("portions", Query(of="madeira-cake", tins=ROUND), "every tin is shown at once"),
        ("guests", Query(guests=900), "no set of up to four tiers serves 900"),
        ("guests", Query(guests=40, of="marzipan"), "made by weight"),
        ("guests", Query(stacked=ROUNDS[::-1]), "round 20 cm cannot stand on round 15 cm"),
        ("guests", Query(stacked=ROUNDS, owned=True), "cannot be used with --owned"),
        ("guests", Query(stacked=ROUNDS[:1], keep_top=True), "cannot be both cut and kept"),
        ("guests", Query(guests=40, portion="slab"), 'there is no portion called "slab"'),
    ],
)
def test_questions_that_do_not_fit(name: str, query: Query, told: str, demo: Loaded) -> None:
    with pytest.raises(AskError, match=told):
        TABLES[name].rows(demo.book, demo.facts, query)
