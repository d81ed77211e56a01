"""Tiers stand one on the other: heights, dowels, board and box."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given
from tests.every import many
from tests.plans.cakes.conftest import Design, Made, cakes, in_house

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.cakes.stacking import board_written
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.plans.tables import TABLES
from tinbook.tins import read_tin

THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def test_three_tiers_in_the_houses_paste(made: Made) -> None:
    """By hand: a drum of 12 mm with 3 of paste, and each tier 3 mm of card, 100 of cake, coats of 2 and 4 and 5 of
    paste. Dowels are as long as the cake they go through is high: the card above rests on them."""
    whole = made(THREE)
    levels = [(level.foot_mm, level.top_mm) for level in whole.stacked.levels]
    assert levels == [(18.0, 129.0), (132.0, 243.0), (246.0, 357.0)]
    assert whole.stacked.high_mm == 357.0 and whole.stacked.tiers_mm == 342.0
    drum = whole.stacked.drum
    assert drum and drum.box_mm and drum.box_mm[2] == pytest.approx(357.0 + 30.0)
    assert [dowels and (dowels.plan.count, dowels.long_mm) for dowels in whole.stacked.dowels] == [
        (5, 111.0),
        (5, 111.0),
        None,
    ]


def test_one_tier_has_the_board_and_the_box_of_its_recipe(made: Made, demo: Loaded) -> None:
    whole = made({"tiers": "20 cm", "mixture": "madeira-cake"})
    rows = TABLES["boards"].rows(demo.book, demo.facts, Query(of="madeira-cake")).rows
    own = next(row for row in rows if row["tin"] == "round 20 cm")
    drum = whole.stacked.drum
    assert drum and drum.box_shown_mm and drum.board.size_mm
    assert drum.board.size_mm[0] == own["usual_width_mm"]
    assert drum.box_shown_mm[2] == own["usual_box_height_mm"]
    assert (drum.whole_g, drum.ribbon_mm) == pytest.approx(
        (own["usual_whole_board_g"], own["usual_ribbon_mm"]), abs=0.06
    )
    assert whole.stacked.paste_g == drum.whole_g


def test_pillars_leave_air_and_reach_through_the_tier_below(made: Made) -> None:
    whole = made({**THREE, "tiers": ["25 cm", {"tier": "20 cm", "on pillars": "8 cm"}, "15 cm"]})
    assert whole.stacked.high_mm == 357.0 + 80.0
    assert whole.stacked.levels[1].foot_mm == 129.0 + 80.0 + 3.0
    base, middle, _ = whole.stacked.dowels
    assert base and middle and (base.pillars, base.long_mm) == (True, 111.0 + 80.0)
    assert (middle.pillars, middle.long_mm) == (False, 111.0)


def test_foam_carries_what_stands_on_it(made: Made) -> None:
    whole = made({**THREE, "tiers": ["25 cm", {"tier": "20 cm", "dummy": "yes"}, "15 cm"]})
    assert [dowels is not None for dowels in whole.stacked.dowels] == [True, False, False]
    # foam under paste has no coats
    assert whole.stacked.levels[1].top_mm - whole.stacked.levels[1].foot_mm == pytest.approx(105.0)


def test_dowels_are_those_of_their_table(made: Made, demo: Loaded) -> None:
    whole = made(THREE)
    for (lower, upper), dowels in zip(pairwise(whole.tiers), whole.stacked.dowels, strict=False):
        query = Query(tins=((1, lower.asked.tin),), above=upper.asked.tin)
        (row,) = TABLES["dowels"].rows(demo.book, demo.facts, query).rows
        assert dowels and dowels.plan.count == row["dowels"]


def test_a_written_board_grows_with_the_cake(made: Made) -> None:
    data = {"tiers": "20 cm", "mixture": "madeira-cake", "board": "35 cm"}
    for size, wide_mm in (("round 20 cm", 350.0), ("round 25 cm", 400.0), ("round 18 cm", 330.0)):
        whole = made(data, tins=(read_tin(size)[1],))
        assert whole.tiers[0].cake
        board = board_written(whole.design, whole.tiers[0].cake)
        assert board and board.size_mm == (wide_mm, wide_mm)
        assert whole.stacked.drum and whole.stacked.drum.board == board
    with pytest.raises(AskError, match="no board large enough for the 35 cm round"):
        made(data, tins=(read_tin("round 35 cm")[1],))


def test_how_much_of_the_board_is_covered(made: Made) -> None:
    plain = {"tiers": "20 cm", "mixture": "madeira-cake"}
    whole, ring, bare, none = (
        made({**plain, "board": board}).stacked
        for board in ({"covered": "whole"}, {"covered": "ring"}, {"covered": "no"}, "none")
    )
    assert whole.drum and ring.drum and (whole.paste_g, ring.paste_g) == (whole.drum.whole_g, ring.drum.ring_g)
    assert bare.paste_g == none.paste_g == 0.0 and bare.drum and none.drum is None
    assert none.high_mm == bare.high_mm - 12.0
    # within a ring of paste it stands on the drum
    assert (whole.high_mm - bare.high_mm, ring.high_mm - bare.high_mm) == (3.0, 0.0)
    assert (whole.deck_mm, ring.deck_mm, bare.deck_mm) == (15.0, 15.0, 12.0)


def test_the_house_says_how_thick_its_cards_are(demo: Loaded, design: Design) -> None:
    house = in_house(demo.book, card=1.5)
    cake = whole_cake("tide-cake", design(THREE), house, demo.facts)
    assert cake.stacked.high_mm == 12.0 + 3.0 + 3 * (1.5 + 111.0)
    assert [level.card_mm for level in cake.stacked.levels] == [1.5] * 3


def test_cups_stand_on_no_board(made: Made) -> None:
    stacked = made({"tiers": "24 standard cups", "mixture": "cupcakes"}).stacked
    assert (stacked.levels, stacked.drum, stacked.high_mm) == ((), None, 0.0)


@given(data=cakes())
@many(1000)
def test_nothing_floats_and_nothing_sinks(demo: Loaded, design: Design, data: dict[str, Any]) -> None:
    """Each tier begins where the one below ends, or the air above that; the box holds it all."""
    cake = design(data)
    assume(not cake_flaws(cake, demo.book, demo.facts))
    whole = whole_cake("tide-cake", cake, demo.book, demo.facts)
    stacked = whole.stacked
    for tier, level in zip((tier for tier in whole.tiers if tier.cake), stacked.levels, strict=True):
        assert level.top_mm - level.foot_mm == pytest.approx(tier.high_mm)
        assert whole.level(tier) is level
    for lower, upper in pairwise(stacked.levels):
        assert upper.foot_mm == pytest.approx(lower.top_mm + upper.gap_mm + upper.card_mm)
    if stacked.drum and stacked.drum.box_mm:
        begins = stacked.drum_mm + (stacked.paste_mm if stacked.covered == "whole" else 0.0)
        assert stacked.levels[0].foot_mm == pytest.approx(begins + stacked.levels[0].card_mm)
        assert stacked.levels[-1].top_mm == pytest.approx(stacked.high_mm)
        assert stacked.drum.box_mm[2] > stacked.high_mm
