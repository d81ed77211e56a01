"""The tins of the house: sizes against shapely's polygons, factors by law."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
from shapely import Polygon

from tinbook.loading import Loaded
from tinbook.models import Book, House, OwnedTin, read_model
from tinbook.plans.base.shelf import (
    EGGS,
    Shelf,
    all_outlines,
    at_depths,
    batter_depth_mm,
    depths_mm,
    factor_between,
    house_outlines,
    shelf,
    tin_to_tin,
)
from tinbook.tins import SHAPES, Tin, read_tin, standard_tins

EVERYDAY = {"round", "square", "rectangle", "loaf", "ring", "cups"}
UPRIGHT = {"round", "square", "rectangle", "sheet", "ring", "heart", "hexagon", "octagon", "petal", "oval", "outline"}


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def owned(*tins: dict[str, Any]) -> tuple[OwnedTin, ...]:
    models = [read_model(OwnedTin, each, "a tin")[0] for each in tins]
    assert all(models)
    return tuple(model for model in models if model is not None)


@pytest.fixture(scope="module")
def made(kitchen: Book) -> Shelf:
    return shelf(kitchen)


def test_every_outline_once(kitchen: Book, demo: Loaded) -> None:
    for book in (kitchen, demo.book):
        mine = {(own.tin.shape, own.tin.sizes_mm) for own in book.tins if own.have}
        asked_for = {*EVERYDAY, *book.house.also_show}
        for made, shapes in ((house_outlines(book), asked_for), (all_outlines(book), set(SHAPES))):
            outlines = [(each.shape, each.sizes_mm) for each, _ in made]
            assert len(outlines) == len(set(outlines))
            assert {(each.shape, each.sizes_mm) for each in standard_tins() if each.shape in shapes} <= set(outlines)
            assert {(each.shape, each.sizes_mm) for each, ours in made if ours} == mine
            assert {shape for shape, _ in set(outlines) - mine} <= shapes


def test_the_everyday_shapes_and_those_the_house_asks_for(kitchen: Book, house: Callable[..., House]) -> None:
    assert {tin.shape for tin, _ in house_outlines(kitchen)} == EVERYDAY
    more = replace(kitchen, house=house(also_show=["heart", "petal"]))
    assert {tin.shape for tin, _ in house_outlines(more)} == EVERYDAY | {"heart", "petal"}
    added = [tin for tin in standard_tins() if tin.shape in ("heart", "petal")]
    assert len(house_outlines(more)) == len(house_outlines(kitchen)) + len(added)


def test_what_is_known_and_not_owned(kitchen: Book) -> None:
    """It is never the house's; an odd shape stands where tins are the subject, not in every recipe."""
    lent = owned({"tin": "petal 210 mm x 7 cm", "have": "0"}, {"tin": "round 20 cm x 10 cm", "have": "0"})
    book = replace(kitchen, tins=(*kitchen.tins, *lent))
    assert not any(tin.shape == "petal" for tin, _ in house_outlines(book))
    assert (tin("petal 210 mm x 7 cm"), False) in all_outlines(book)
    assert (tin("round 20 cm x 10 cm"), False) in house_outlines(book)
    assert len(house_outlines(book)) == len(house_outlines(kitchen))
    # Of a tin owned and a deeper one known the owned one stands.
    both = replace(kitchen, tins=(*owned({"tin": "round 20 cm x 5 cm"}), *lent))
    assert (tin("round 20 cm x 5 cm"), True) in house_outlines(both)


def test_small_to_large_and_shape_by_shape(kitchen: Book) -> None:
    order = list(SHAPES)
    for (one, _), (other, _) in pairwise(house_outlines(kitchen)):
        assert (order.index(one.shape), one.area_mm2) <= (order.index(other.shape), other.area_mm2)


def test_an_odd_tin_of_the_house_has_a_row_of_its_own(kitchen: Book) -> None:
    book = replace(kitchen, tins=owned({"tin": "round 210 mm x 80 mm"}))
    assert (tin("round 210 mm x 80 mm"), True) in house_outlines(book)
    assert len(house_outlines(book)) == len(standard_tins(EVERYDAY)) + 1


def test_of_two_depths_the_deeper_stands_in_the_row(kitchen: Book) -> None:
    book = replace(
        kitchen, tins=owned({"tin": "round 20 cm x 5 cm"}, {"tin": "round 20 cm x 10 cm", "measured": "3 l"})
    )
    (row,) = [each for each, ours in house_outlines(book) if ours]
    assert (row.depth_mm, row.measured_ml) == (100.0, 3000.0)
    assert len(house_outlines(book)) == len(standard_tins(EVERYDAY))


def test_sizes_against_polygons(made: Shelf) -> None:
    for row in made.tins:
        outer, *holes = row.tin.outline_mm()
        drawn = Polygon(outer, holes)
        parts = row.tin.kind.parts
        assert row.area_cm2 == pytest.approx(parts * drawn.area / 100, rel=1e-4)
        assert row.perimeter_mm == pytest.approx(parts * drawn.exterior.length, rel=1e-3)
        assert row.area_shown_cm2 == pytest.approx(row.area_cm2, abs=0.501)
        assert row.perimeter_shown_cm == pytest.approx(row.perimeter_mm / 10, abs=0.251)
        assert row.brim_shown_ml == pytest.approx(row.brim_ml, abs=5.001)
        if row.tin.shape in UPRIGHT and not row.tin.measured_ml:
            assert row.brim_ml == pytest.approx(drawn.area * row.depth_mm / 1000, rel=1e-4)


def test_brims_by_hand_and_by_measure(made: Shelf) -> None:
    rows = {row.tin.name: row for row in made.tins}
    # 7.5 cm, the house's usual depth; pi 10^2 cm2.
    assert rows["round 20 cm"].depth_mm == 75.0
    assert rows["round 20 cm"].brim_ml == pytest.approx(2356.19, abs=0.01)
    assert rows["round 23 cm"].brim_ml == pytest.approx(2850.0)
    assert rows["square 20 cm"].depth_mm == 50.0
    assert rows["square 20 cm"].brim_ml == pytest.approx(2000.0)


def test_the_nearest_tin_owned_is_the_nearest(made: Shelf, kitchen: Book) -> None:
    mine = [row.tin for row in made.tins if row.owned and row.tin.kind.kept == "depth"]
    assert len(mine) == 3
    for row in made.tins:
        others = [other for other in mine if other != row.tin and other.kind.purpose == row.tin.kind.purpose]
        ratios = {other: factor_between(row.tin, other, made.depth_mm) for other in others}
        apart = {other: max(ratio, 1 / ratio) for other, ratio in ratios.items()}
        if row.tin.shape == "cups" or min(apart.values(), default=3.0) > 2.0:
            assert (row.nearest, row.nearest_factor) == (None, 0.0)
            continue
        assert row.nearest is not None
        assert apart[row.nearest] == min(apart.values())
        assert row.nearest_factor == pytest.approx(factor_between(row.tin, row.nearest, made.depth_mm))
        assert row.nearest_factor_shown == pytest.approx(row.nearest_factor, abs=0.00501)


def test_the_nearest_tin_in_a_house_of_inches(kitchen: Book, house: Callable[..., House]) -> None:
    """The same tin stands in as in a house of centimetres, owned under either name; its factor goes by inches."""
    names = ("round 8 in x 3 in", "square 6 in x 3 in", "round 25 cm x 7.5 cm")
    mine = tuple(
        OwnedTin.model_construct(tin=read_tin(name, sold="inches")[1], have=1, measured=None, note=None)
        for name in names
    )
    made = shelf(replace(kitchen, house=house(tins_sold_in="inches"), tins=mine))
    rows = {row.tin.name: row for row in made.tins}
    assert {name for name, row in rows.items() if row.owned} == {"round 20 cm", "square 15 cm", "round 25 cm"}
    seven = rows["round 18 cm"]
    assert seven.nearest is not None and seven.nearest.name == "square 15 cm"
    assert seven.nearest_factor == pytest.approx(6**2 / (math.pi / 4 * 7**2), rel=1e-12)
    assert rows["round 23 cm"].nearest_factor == pytest.approx((10 / 9) ** 2, rel=1e-12)


def test_what_stands_in_is_for_the_same_purpose(kitchen: Book) -> None:
    """No ring for a round, no dome for a loaf; an everyday shape for a fancy one, not the other way round."""
    shelf_of = owned(
        {"tin": "heart 20 cm"}, {"tin": "ring 20 cm, tube 8 cm"}, {"tin": "dome 20 cm"}, {"tin": "round 18 cm"}
    )
    near = {row.tin.name: row.nearest for row in shelf(replace(kitchen, tins=shelf_of)).tins}
    round_18, ring = tin("round 18 cm"), tin("ring 20 cm, tube 8 cm")
    assert near["round 20 cm"] == near["heart 20 cm"] == near["square 18 cm"] == round_18
    assert near["ring 23 cm"] == ring and near["2 lb loaf"] is None
    assert near["round 40 cm"] is None


def test_a_house_without_tins_has_no_nearest(kitchen: Book) -> None:
    assert {row.nearest for row in shelf(replace(kitchen, tins=())).tins} == {None}


def test_factors_there_back_and_by_way_of_another(made: Shelf) -> None:
    count = len(made.matrix)
    assert {each.shape for each, _ in made.matrix} == {"round", "square"}
    for i in range(count):
        assert made.factors[i][i] == pytest.approx(1.0, rel=1e-12)
        for j in range(count):
            assert made.factors[i][j] * made.factors[j][i] == pytest.approx(1.0, rel=1e-9)
            assert made.factors[i][0] * made.factors[0][j] == pytest.approx(made.factors[i][j], rel=1e-9)
            assert made.factors_shown[i][j] == pytest.approx(made.factors[i][j], abs=0.00501)


def test_square_against_round_one_inch_larger() -> None:
    """The trade's saying is true only near 9 in: area of the square over that of the round an inch wider, by hand."""
    for square, round_, ratio in ((150.0, 180.0, 0.884), (200.0, 230.0, 0.963), (300.0, 330.0, 1.052)):
        found = factor_between(Tin(shape="round", sizes_mm=(round_,)), Tin(shape="square", sizes_mm=(square,)), 40.0)
        assert found == pytest.approx(ratio, abs=0.001)


def test_cups_are_compared_by_what_they_hold() -> None:
    standard, jumbo = tin("standard cups"), tin("jumbo cups")
    assert factor_between(standard, jumbo, 37.5) == pytest.approx(jumbo.brim_ml() / standard.brim_ml())
    # Half a cup against batter 37.5 mm deep in a 20 cm tin.
    assert factor_between(tin("round 20 cm"), standard, 37.5) == pytest.approx(
        standard.brim_ml() / 2 / (3.14159265 * 100 * 3.75), rel=1e-6
    )


def test_tins_are_compared_at_half_the_usual_depth(kitchen: Book, made: Shelf) -> None:
    assert batter_depth_mm(kitchen) == made.depth_mm == 37.5


def test_from_tin_to_tin_in_whole_eggs(made: Shelf) -> None:
    """The factor is the one of the tables but for cups, which go by the tray; eggs are whole, and at least one."""
    for old in made.house:
        for new in made.house:
            told = tin_to_tin(old, new)
            trays = new.tin.holes / old.tin.holes
            assert told.factor == pytest.approx(factor_between(old.tin, new.tin, made.depth_mm) * trays)
            assert told.factor_shown == pytest.approx(told.factor, abs=0.00501)
            assert all(
                count == max(1, int(eggs * told.factor + 0.5)) for eggs, count in zip(EGGS, told.eggs, strict=True)
            )
    assert all(row.owned for row in made.house) and len(made.house_factors_shown) == len(made.house)


def test_the_depths_to_bake_to_are_those_of_the_trade_and_the_house(kitchen: Book, house: Callable[..., House]) -> None:
    """5, 7.5 and 10 cm or 2, 3 and 4 in: common practice, no source. The house's own stands for the nearest."""
    assert depths_mm(kitchen) == (50.0, 75.0, 100.0)
    deeper = replace(kitchen, house=house(**{"usual depth": "8 cm"}))
    assert depths_mm(deeper) == (50.0, 80.0, 100.0)
    inches = replace(kitchen, house=house(**{"tins sold in": "inches", "usual depth": "3 in"}))
    assert depths_mm(inches) == pytest.approx((50.8, 76.2, 101.6))


def test_a_deeper_cake_takes_more_by_its_depth(kitchen: Book, made: Shelf) -> None:
    """By hand: 20² × 10 over π/4 × 15² × 7.5 is 3.018. A dome is filled to a share, whatever the depth."""
    at = {row.tin.name: at_depths(row, kitchen) for row in made.tins}
    old, new = at["round 15 cm"][1], at["square 20 cm"][2]
    assert tin_to_tin(old, new).factor == pytest.approx(400 * 10 / (math.pi / 4 * 225 * 7.5))
    assert tin_to_tin(old, new).factor_shown == 3.02
    assert len({row.tray_ml for row in at["dome 15 cm"]}) == 1
    usual = next(place for place, deep in enumerate(depths_mm(kitchen)) if deep == kitchen.house.usual_deep_mm)
    assert [rows[usual] for rows in at.values()] == list(made.tins)
