"""Portions at a glance: the chart beside ours, weights, the same weight from another height."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.plans.portions.glance import Glance, against, glance, shown_g, usual_grams


@pytest.fixture(scope="module")
def made(demo: Loaded) -> Glance:
    return glance(demo.book, demo.facts)


def test_the_facts_are_the_published_chart(made: Glance, table: object) -> None:
    """The published charts, as named in the head of tests/data/portions_us_chart.csv."""
    assert callable(table)
    rows = table("portions_us_chart")
    assert [(each.served.dessert, each.served.broad) for each in made.against] == [
        (int(row["wedding_1x2"]), int(row["party_1.5x2"])) for row in rows
    ]
    sizes = [sorted(float(size) for size in row["size_in"].split("x")) for row in rows]
    assert [list(each.served.inches) for each in made.against] == sizes


def test_how_far_ours_lie_off(demo: Loaded) -> None:
    eight, heart = (against(demo.facts.portions[key]) for key in ("round 8", "heart 8"))
    assert (eight.dessert, eight.dessert_off_percent) == (24, 0.0)
    assert heart.dessert_off_percent == pytest.approx(100 * (heart.dessert / 22 - 1), abs=0.5)


def test_weights_rise_with_the_height(made: Glance, demo: Loaded) -> None:
    creamed = next(each for each in made.weights if each.title == "Creamed sponge")
    by_height = dict(zip(made.heights_mm, creamed.grams["dessert"], strict=True))
    assert by_height[75.0] < by_height[100.0] < by_height[150.0]
    exact = usual_grams(made.portions["dessert"], demo.book, demo.facts, 100.0)
    assert abs(by_height[100.0] - exact) <= 2.5
    assert shown_g(0.2) == 5.0


def test_the_same_weight_is_the_same_volume(made: Glance) -> None:
    usual = made.portions["dessert"]
    for each in made.same:
        volume = usual.short_mm * each.long_shown_mm["dessert"] * each.height_mm
        assert volume == pytest.approx(usual.area_mm2 * made.height_mm, rel=0.02)
