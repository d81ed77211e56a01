"""The tables of finishing, as they are asked for from outside."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin


@pytest.mark.parametrize(
    ("name", "of", "keys"),
    [
        ("layers", "madeira-cake", {"layers", "layer_mm", "stack_mm", "coated_mm", "baked_g"}),
        ("coats", "american-buttercream", {"filling_g", "crumb_coat_g", "final_coat_g", "made_g", "batches", "over_g"}),
        ("covers", "marzipan", {"on_the_cake_g", "roll_out_g", "rolled_width_mm", "some_makers_allow_g"}),
        (
            "boards",
            None,
            {"usual_width_mm", "wide_length_mm", "wide_whole_board_g", "wide_ribbon_mm", "wide_box_height_mm"},
        ),
    ],
)
def test_each_has_its_rows(name: str, of: str | None, keys: set[str], demo: Loaded) -> None:
    made = TABLES[name].rows(demo.book, demo.facts, Query(of=of))
    assert len(made.rows) > 30
    assert keys <= set(made.rows[0])
    assert made.worked.formula
    assert made.worked.sources


def test_higher_cakes_take_more(demo: Loaded) -> None:
    low, high = (TABLES["coats"].rows(demo.book, demo.facts, Query(of="american-buttercream", height_mm=height)).rows[0]
                 for height in (80.0, 160.0))  # fmt: skip
    assert low["final_coat_g"] < high["final_coat_g"]  # type: ignore[operator]


def test_the_other_way_round(demo: Loaded) -> None:
    tins = ((1, read_tin("round 15 cm")[1]),)
    query = Query(of="madeira-cake", tins=tins, layers=4, layer_mm=28.0)
    (row,) = TABLES["layers"].rows(demo.book, demo.facts, query).rows
    assert (row["tins"], row["layers"], row["layer_mm"], row["least_tin_depth_mm"]) == (2, 4, 28.0, 75.0)


@every(
    ("name", "query", "told"),
    [
        ("layers", Query(of="madeira-cake", layers=4), "a height and a single tin"),
        ("layers", Query(of="american-buttercream"), "made by weight"),
        ("coats", Query(of="sugar-syrup"), "neither fills nor coats"),
        ("coats", Query(of="madeira-cake", height_mm=100.0), "as high as it bakes"),
        ("boards", Query(of="marzipan"), "by weight"),
        ("covers", Query(of="modelling-paste"), "does not cover"),
        ("coats", Query(), "this table needs a mixture"),
    ],
)
def test_questions_that_do_not_fit(name: str, query: Query, told: str, demo: Loaded) -> None:
    with pytest.raises(AskError, match=told):
        TABLES[name].rows(demo.book, demo.facts, query)
