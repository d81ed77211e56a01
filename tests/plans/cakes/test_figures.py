"""Decorations at the size of the tier they go with."""

from __future__ import annotations

import pytest
from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.cakes.figures import hung_g, sized_for, standing_mm, tier_of_figure
from tinbook.plans.tables import TABLES
from tinbook.plans.techniques.parts import decoration
from tinbook.plans.true_size.assembled import put_together
from tinbook.tins import read_tin

LIGHTHOUSE, HERON = "lighthouse-for-the-front", "heron-for-the-side"


def with_light(**more: object) -> dict[str, object]:
    decoration = {"technique": LIGHTHOUSE, **{key.replace("_", " "): value for key, value in more.items()}}
    return {"tiers": ["25 cm", "20 cm"], "mixture": "madeira-cake", "decorations": [decoration]}


def test_its_parts_are_those_of_its_table_for_that_cake(made: Made, demo: Loaded) -> None:
    """Marks are counted anew, and the paste of every part is that of the table."""
    (figure,) = made(with_light()).figures
    assert (figure.tier, figure.on, figure.parts.cake.name) == (0, "board", "round 25 cm")
    query = Query(of=LIGHTHOUSE, tins=((1, read_tin("round 25 cm")[1]),))
    rows = TABLES["parts"].rows(demo.book, demo.facts, query).rows
    assert [part.total_g for part in figure.parts.parts] == pytest.approx([row["total_g"] for row in rows], abs=1e-5)
    marks = TABLES["marks"].rows(demo.book, demo.facts, query).rows
    assert [repeat.count for repeat in figure.parts.repeats] == [row["count"] for row in marks]
    pastes = TABLES["pastes"].rows(demo.book, demo.facts, query).rows
    assert [each.ready_g for each in figure.ready] == pytest.approx([row["ready_g"] for row in pastes], abs=1e-5)


def test_it_stands_as_high_as_it_is_put_together(made: Made, demo: Loaded) -> None:
    whole = made(with_light(sized_for="round 20 cm"))
    (figure,) = whole.figures
    written = decoration(demo.book.techniques[LIGHTHOUSE], read_tin("round 20 cm")[1], demo.book, demo.facts)
    together = put_together(written)
    assert together is not None and figure.high_mm == together.high_mm == pytest.approx(117.2, abs=0.1)
    tiers_mm = whole.stacked.tiers_mm
    assert standing_mm(whole.figures, tiers_mm) == tiers_mm
    assert standing_mm(whole.figures, 50.0) == figure.high_mm


def test_a_figure_on_top_stands_on_all_of_it(made: Made) -> None:
    plain, crowned = made({**with_light(), "decorations": []}), made(with_light(on="top"))
    (figure,) = crowned.figures
    assert (figure.tier, figure.parts.cake.name) == (1, "round 20 cm")
    assert crowned.stacked.high_mm == pytest.approx(plain.stacked.high_mm + figure.high_mm)
    assert crowned.stacked.drum and plain.stacked.drum and crowned.stacked.drum.box_mm and plain.stacked.drum.box_mm
    assert crowned.stacked.drum.box_mm[2] == pytest.approx(plain.stacked.drum.box_mm[2] + figure.high_mm)


def test_more_of_them_take_as_many_times_the_paste(made: Made) -> None:
    one, three = made(with_light()).figures[0], made(with_light(count="3")).figures[0]
    assert three.parts_g == pytest.approx(3.0 * one.parts_g)
    assert [thing.amount.exact for thing in three.kit.not_food] == [
        3.0 * thing.amount.exact for thing in one.kit.not_food
    ]


def test_what_it_is_sized_for_grows_with_its_tier(made: Made) -> None:
    data = with_light(sized_for="round 20 cm")
    larger = made(data, tins=(read_tin("round 30 cm")[1], read_tin("round 25 cm")[1]))
    assert larger.figures[0].parts.cake.bounds_mm[0] == pytest.approx(230.0), (
        "the tin sold next to 20 x 30 / 25 = 24 cm"
    )
    each = larger.design.decorations[0]
    assert sized_for(each, read_tin("round 25 cm")[1], read_tin("round 25 cm")[1]).name == "round 20 cm"


def test_parts_are_worked_out_for_cakes_of_10_to_30_cm(made: Made) -> None:
    with pytest.raises(AskError, match="10 to 30 cm across, not for the 35 cm round"):
        made({**with_light(), "tiers": "35 cm"})


def test_what_hangs_on_a_side_is_weighed_there(made: Made) -> None:
    hung = {"technique": HERON, "on": "side", "tier": "2", "count": "2"}
    whole = made({**with_light(), "decorations": [hung]})
    assert hung_g(whole.figures, 1) == whole.figures[0].parts_g > 0.0
    assert hung_g(whole.figures, 0) == 0.0
    assert [tier_of_figure(each, 2) for each in whole.design.decorations] == [1]
