"""Dowels: the numbers of the publications (tests/data/dowels.csv names them), and where they stand."""

from __future__ import annotations

import csv
from itertools import combinations
from math import dist
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon
from tests.every import every, many

from tinbook.facts import Facts
from tinbook.models import Finish
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.base.asking import AskError
from tinbook.plans.true_size.dowelling import dowel_plan, dowel_template, published_for, tier_above
from tinbook.tins import read_tin

NO_FINISH = Finish()
PUBLISHED = Path(__file__).parents[2] / "data" / "dowels.csv"


def chart() -> list[dict[str, str]]:
    return list(csv.DictReader(line for line in PUBLISHED.read_text("utf-8").splitlines() if not line.startswith("#")))


def test_the_facts_are_what_was_published(facts: Facts) -> None:
    names = {"G": "dowel guide", "N": "dowel notes", "L": "support rods leaflet", "T": "assembling technique"}
    theirs = sorted((names[row["source"]], int(row["dowels_n"])) for row in chart())
    assert sorted((row.source, row.count) for row in facts.dowels.values()) == theirs
    for row in chart():
        if row["source"] == "L":
            (ours,) = published_for_source(facts, "support rods leaflet", float(row["tier_in"]))
            assert ours == int(row["dowels_n"])
        if row["inset_from_edge_in"]:
            assert facts.numbers["dowel from the edge"].value == pytest.approx(float(row["inset_from_edge_in"]) * 25.4)


def published_for_source(facts: Facts, source: str, size_in: float) -> list[int]:
    return [row.count for row in published_for(size_in, facts.dowels.values()) if row.source == source]


@every(
    ("above", "low", "high"),
    # by reading the table: what any row says of that size, the next size up between two sizes
    [("round 15 cm", 3, 6), ("round 20 cm", 4, 6), ("round 25 cm", 4, 6), ("round 30 cm", 5, 8), ("square 40 cm", 5, 8),
     ("round 18 cm", 4, 6), ("round 36 cm", 5, 8)],
)  # fmt: skip
def test_the_most_that_is_published_is_taken(facts: Facts, above: str, low: int, high: int) -> None:
    plan = dowel_plan(read_tin("round 50 cm")[1], read_tin(above)[1], NO_FINISH, facts)
    assert (plan.low, plan.high, plan.count, plan.fewer) == (low, high, high, False)


@every("above", ["round 15 cm", "square 20 cm", "heart 25 cm", "hexagon 23 cm", "petal 30 cm", "oval 20 cm x 15 cm"])
def test_they_stand_one_and_a_half_inches_in(facts: Facts, above: str) -> None:
    """Oracle: distances in shapely."""
    tin = read_tin(above)[1]
    plan = dowel_plan(read_tin("square 40 cm")[1], tin, NO_FINISH, facts)
    outline = Polygon(tin.outline_mm()[0])
    for place in plan.places:
        assert outline.contains(Point(place))
        in_mm = outline.exterior.distance(Point(place))
        # behind the notch of a heart a little further in
        assert in_mm == pytest.approx(38.1, abs=0.1) or (tin.shape == "heart" and 38.1 < in_mm < 55.0)
    near = min(
        Point(one).distance(Point(other)) for index, one in enumerate(plan.places) for other in plan.places[:index]
    )
    assert near >= facts.numbers["dowels apart"].value - 1e-6


@every("above", ["round 15 cm", "square 20 cm", "heart 25 cm", "hexagon 23 cm", "octagon 20 cm", "oval 20 cm x 28 cm"])
def test_an_odd_number_stands_alike_on_left_and_right(facts: Facts, above: str) -> None:
    plan = dowel_plan(read_tin("square 40 cm")[1], read_tin(above)[1], Finish(dowels=7), facts)
    assert plan.count == 7
    left = sorted((-x, y) for x, y in plan.places)
    assert [x for x, _ in left] == pytest.approx([x for x, _ in sorted(plan.places)], abs=0.2)
    assert max(plan.places, key=lambda place: place[1])[0] == pytest.approx(0.0, abs=0.1) or above.startswith("heart")


@given(
    shape=st.sampled_from(("round", "square", "heart", "hexagon", "octagon", "petal", "oval", "rectangle")),
    wide=st.integers(14, 40),
    narrower=st.integers(0, 8),
    house=st.integers(3, 12),
)
@many(400)
def test_any_number_stands_alike_on_left_and_right_inside_by_the_inset_and_apart(
    facts: Facts, shape: str, wide: int, narrower: int, house: int
) -> None:
    """Oracles: the places mirrored, distances in shapely, and two diameters of the dowel itself."""
    size = f"{wide} cm x {wide - narrower} cm" if shape in ("oval", "rectangle") else f"{wide} cm"
    tin = read_tin(f"{shape} {size}")[1]
    try:
        plan = dowel_plan(read_tin("square 60 cm")[1], tin, Finish(dowels=house), facts)
    except AskError as error:
        assert "no room" in error.message
        return
    for x, y in plan.places:
        assert min(dist((-x, y), other) for other in plan.places) < 1.0, plan.places
    outline = Polygon(tin.outline_mm()[0])
    for place in plan.places:
        assert outline.contains(Point(place)) and outline.exterior.distance(Point(place)) >= plan.inset_mm - 0.1
    for one, other in combinations(plan.places, 2):
        assert dist(one, other) >= 2.0 * plan.across_mm - 1e-6


def test_an_even_number_in_a_heart_stands_by_its_axis(facts: Facts) -> None:
    """Four under a heart of 25 cm: one in each lobe, two on its lower sides."""
    plan = dowel_plan(read_tin("square 40 cm")[1], read_tin("heart 25 cm")[1], Finish(dowels=4), facts)
    assert plan.count == 4 and not any(abs(x) < 10.0 for x, _ in plan.places)
    assert sum(y > 0.0 for _, y in plan.places) == 2


def test_fewer_where_no_more_have_room(facts: Facts) -> None:
    plan = dowel_plan(read_tin("round 20 cm")[1], read_tin("round 10 cm")[1], NO_FINISH, facts)
    assert plan.fewer and plan.count == 3 < plan.high
    assert "There is room for only 3" in spell(dowel_template(plan).notes[0])


@every(
    ("above", "house", "count", "told"),
    [
        ("round 15 cm", 5, 5, "We use 5."),
        ("round 15 cm", 3, 3, "We use 3."),
        ("round 15 cm", 8, 8, "We use 8."),
        # published for it are 4 to 6, and 5 to 8
        ("round 20 cm", 3, 6, "We use 3, fewer than anything published, so the highest is used."),
        ("round 30 cm", 4, 8, "We use 4, fewer than anything published, so the highest is used."),
        ("round 10 cm", 5, 3, "There is room for only 3"),
    ],
)
def test_the_house_says_how_many(facts: Facts, above: str, house: int, count: int, told: str) -> None:
    plan = dowel_plan(read_tin("round 40 cm")[1], read_tin(above)[1], Finish(dowels=house), facts)
    assert plan.count == len(plan.places) == count
    assert told in spell(dowel_template(plan).notes[0])


def test_the_tier_above_is_2_in_smaller_where_tins_are_sold_in_inches() -> None:
    for inch in range(6, 17):
        above = tier_above(read_tin(f"round {inch} in", sold="inches")[1])
        assert (above.bounds_mm[0], above.sold) == (pytest.approx(25.4 * (inch - 2)), "inches")


def test_the_tier_above_is_the_usual_one() -> None:
    assert [tier_above(read_tin(cake)[1]).name for cake in ("round 20 cm", "square 30 cm")] == [
        "round 15 cm",
        "square 25 cm",
    ]


def test_the_drawing_has_every_dowel_and_says_what_is_not_food(facts: Facts) -> None:
    plan = dowel_plan(read_tin("round 25 cm")[1], read_tin("round 15 cm")[1], NO_FINISH, facts)
    made = dowel_template(plan)
    circles = [Polygon(stroke.points) for stroke in made.strokes if stroke.kind == "hidden"]
    assert len(circles) == plan.count == 6
    assert {round(circle.bounds[2] - circle.bounds[0], 2) for circle in circles} == {6.35}
    middles = {(round(circle.centroid.x, 3), round(circle.centroid.y, 3)) for circle in circles}
    assert middles == {(round(x, 3), round(-y, 3)) for x, y in plan.places}
    said = " ".join(spelled_all(made.notes))
    assert "Published for that size: 3 to 6" in said and "count them in, count them out" in said and "height" in said


@pytest.mark.parametrize(
    ("cake", "above", "told"),
    [
        ("round 15 cm", "round 20 cm", "round 20 cm is wider than round 15 cm"),
        ("round 20 cm", "round 7.5 cm", "has no room for 3 dowels"),
        ("round 20 cm", "cups", "dowels cannot go under standard cups"),
        ("ball 15 cm", "round 10 cm", "dowels cannot go in ball 15 cm"),
        ("dome 20 cm", "round 10 cm", "dowels cannot go in dome 20 cm"),
    ],
)
def test_what_cannot_stand(facts: Facts, cake: str, above: str, told: str) -> None:
    with pytest.raises(AskError, match=told) as caught:
        dowel_plan(read_tin(cake)[1], read_tin(above if above != "cups" else "12 standard cups")[1], NO_FINISH, facts)
    assert caught.value.hint


def test_no_tier_is_small_enough() -> None:
    with pytest.raises(AskError, match="no smaller round is sold"):
        tier_above(read_tin("round 10 cm")[1])
