"""How a cake goes out: boxes, what is put together where, what is taken along, and what stands in the way."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from tests.plans.cakes.conftest import Design, Made, bakes, design, made

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.making.journey import Journey, journey

__all__ = ["bakes", "design", "made"]
THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm", "cover": "sugarpaste"}


def way(cake: WholeCake, demo: Loaded, **house: Any) -> Journey:
    book = replace(demo.book, house=demo.book.house.model_copy(update=house))
    return journey(cake, cake_weights(cake, book, demo.facts), book, demo.facts)


def test_a_box_for_the_whole_and_one_for_each_tier(made: Made, demo: Loaded) -> None:
    cake = made(THREE)
    found = way(cake, demo)
    drum = cake.stacked.drum
    assert found.whole and drum and found.whole.box_mm == drum.box_mm
    assert [spell(each.said) for each in found.tiers if each.said] == [
        "base, round 25 cm", "middle, round 20 cm", "top, round 15 cm",
    ]  # fmt: skip
    base, middle, top = found.tiers
    assert base.box_mm[:2] == found.whole.box_mm[:2]
    # 222 mm with coats and paste on, 5 mm to each side, 111 mm high on a card of 3 and 30 mm above
    assert middle.box_mm == pytest.approx((232.0, 232.0, 144.0))
    # on the board: 12 mm of drum, 3 of paste, 3 of card
    assert base.box_mm[2] == pytest.approx(12.0 + 3.0 + 3.0 + 111.0 + 30.0)
    assert middle.box_shown_mm == (235.0, 235.0, 145.0)
    assert top.box_mm[0] == pytest.approx(182.0)
    assert found.whole.for_two and not top.for_two
    assert not found.goes_whole


def test_one_tier_goes_in_one_box(made: Made, demo: Loaded) -> None:
    found = way(made({"tiers": "20 cm", "mixture": "madeira-cake"}), demo)
    assert found.whole is not None and found.tiers == () and found.goes_whole and found.steps == ()
    assert way(made({"tiers": "24 standard cups", "mixture": "cupcakes"}), demo).whole is None


def test_what_is_put_together_where_and_taken_along(made: Made, demo: Loaded) -> None:
    apart = way(made(THREE), demo)
    assert [each.key for each in apart.steps] == ["goes_out_in_tiers"]
    whole = way(made({**THREE, "travels": "whole"}), demo)
    assert [each.key for each in whole.steps] == ["goes_out_whole"]
    told = [spell(each) for each in apart.take]
    assert "100\N{NO-BREAK SPACE}g sugarpaste, for repairs" in [each.lower() for each in told]
    assert any("two spare dowels or pillars" in each for each in told) and any("spirit level" in each for each in told)
    plain = [
        spell(each) for each in way(made({"tiers": "20 cm", "mixture": "madeira-cake", "cover": "none"}), demo).take
    ]
    assert any("Pilot's buttercream" in each for each in plain) and not any("dowel" in each for each in plain)


def test_what_is_too_tall_is_said(made: Made, demo: Loaded, design: Design) -> None:
    """The stack of 357 mm wants a box of 387; a tier 111 mm high, on its card, one of 144."""
    cake = made(THREE)
    assert way(cake, demo, tallest_box=387.0).remarks == ()
    low = way(cake, demo, tallest_box=350.0, fridge_shelf=300.0)
    assert [each.key for each in low.remarks] == ["whole_taller_than_a_box", "too_high_for_the_fridge"]
    whole = whole_cake("tide-cake", design({**THREE, "travels": "whole"}), demo.book, demo.facts)
    assert way(whole, demo, tallest_box=350.0).remarks[0].key == "taller_than_a_box"
    tiny = way(cake, demo, tallest_box=140.0)
    assert [each.key for each in tiny.remarks] == ["whole_taller_than_a_box", *["tier_taller_than_a_box"] * 3]
    assert "39" in spell(low.remarks[0]) and "let it travel" in spell(way(whole, demo, tallest_box=350.0).remarks[0])
