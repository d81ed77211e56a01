"""Tins by hand: names, standard sizes, a few volumes worked on paper."""

from __future__ import annotations

import dataclasses
import math
import pickle
import time

import pytest
from tests.every import every

from tinbook.tins import SHAPES, Tin, standard_tins


def test_standard_tins_are_unique_and_in_order() -> None:
    tins = standard_tins()
    assert len(set(tins)) == len(tins)
    assert len({tin.name for tin in tins}) == len(tins)
    order = list(SHAPES)
    places = [(order.index(tin.shape), tin.area_mm2) for tin in tins]
    assert places == sorted(places)


def test_the_standard_sizes_of_the_trade() -> None:
    def inches(shape: str) -> list[str]:
        return [tin.size_label_in for tin in standard_tins() if tin.shape == shape]

    assert inches("round") == inches("square") == [f"{inch} in" for inch in range(4, 17)]
    assert inches("rectangle") == ["7 x 11 in", "8 x 12 in", "9 x 13 in", "11 x 15 in", "12 x 18 in"]
    assert [tin.size_label for tin in standard_tins() if tin.shape == "round"] == [
        f"{cm} cm" for cm in (10, 13, 15, 18, 20, 23, 25, 28, 30, 33, 35, 38, 40)
    ]
    labels = [tin.size_label for tin in standard_tins() if tin.shape in ("loaf", "ring", "cups")]
    assert labels == ["1 lb", "2 lb", "20 cm", "23 cm", "25 cm", "mini", "fairy", "standard", "jumbo"]


@every("tin", standard_tins(), ids=lambda tin: tin.name)
def test_the_two_names_of_a_tin_are_within_the_trades_tolerance(tin: Tin) -> None:
    # Sold in centimetres and in inches as one tin, so the two are the same size to 4 % (10 cm is 3.94 in).
    if tin.size_label_in:
        sides_in = [float(side) for side in tin.size_label_in.removesuffix(" in").split(" x ")]
        for side_mm, side_in in zip(tin.sizes_mm, sides_in, strict=False):
            assert side_mm == pytest.approx(side_in * 25.4, rel=0.04)


def test_a_tin_as_it_is_said_in_a_sentence() -> None:
    assert Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0).as_said == "the 20 cm round"
    assert Tin(shape="rectangle", sizes_mm=(230.0, 330.0)).as_said == "the 23 x 33 cm rectangle"


def test_names() -> None:
    tin = Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0)
    assert (tin.name, tin.names) == ("round 20 cm", ("round 20 cm", "round 8 in"))
    assert (tin.full_name, tin.full_names[1]) == ("round 20 cm x 7.5 cm", "round 8 in x 3 in")
    assert (tin.size_label, tin.size_label_in) == ("20 cm", "8 in")
    # A depth that has no inch name leaves the centimetres only.
    assert Tin(shape="round", sizes_mm=(200.0,), depth_mm=72.0).full_names == ("round 20 cm x 7.2 cm",)
    assert Tin(shape="rectangle", sizes_mm=(230.0, 330.0), depth_mm=50.0).full_name == "rectangle 23 x 33 cm x 5 cm"


def test_an_exact_size_has_no_inch_name() -> None:
    assert Tin(shape="round", sizes_mm=(203.0,)).names == ("round 20.3 cm",)
    assert Tin(shape="round", sizes_mm=(203.2,)).names == ("round 203.2 mm",)
    assert Tin(shape="round", sizes_mm=(203.0,)).size_label_in == ""


def test_a_named_size_needs_its_own_depth() -> None:
    (two_pound,) = (tin for tin in standard_tins() if tin.name == "2 lb loaf")
    assert two_pound.full_names == ("2 lb loaf",)
    assert dataclasses.replace(two_pound, depth_mm=60.0).full_name == "loaf 23 x 13 cm x 6 cm"
    assert dataclasses.replace(two_pound, depth_mm=None).name == "loaf 23 x 13 cm"


def test_sizes_said_only_when_unusual() -> None:
    assert Tin(shape="ring", sizes_mm=(200.0, 50.0)).name == "ring 20 cm"
    assert Tin(shape="ring", sizes_mm=(200.0, 60.0)).names == ("ring 20 cm, tube 6 cm",)
    assert Tin(shape="ring", sizes_mm=(200.0, 75.0), depth_mm=75.0).full_names == (
        "ring 20 cm x 7.5 cm, tube 7.5 cm",
        "ring 8 in x 3 in, tube 3 in",
    )
    assert (
        Tin(shape="loaf", sizes_mm=(250.0, 130.0, 220.0, 110.0), depth_mm=75.0).full_name
        == "loaf 25 x 13 cm x 7.5 cm, base 22 x 11 cm"
    )


def test_a_tin_turned_round_is_the_same_tin() -> None:
    assert Tin(shape="rectangle", sizes_mm=(330.0, 230.0)) == Tin(shape="rectangle", sizes_mm=(230.0, 330.0))
    assert Tin(shape="loaf", sizes_mm=(130.0, 230.0, 100.0, 200.0), depth_mm=70.0) == Tin(
        shape="loaf", sizes_mm=(230.0, 130.0), depth_mm=70.0
    )


def test_a_tin_survives_being_stored() -> None:
    tin = Tin(shape="loaf", sizes_mm=(230.0, 130.0), depth_mm=70.0, measured_ml=1500.0)
    again = pickle.loads(pickle.dumps(tin))
    assert again == tin and again.brim_ml() == tin.brim_ml()
    with pytest.raises(dataclasses.FrozenInstanceError):
        tin.depth_mm = 60.0  # type: ignore[misc]


def test_volumes_worked_by_hand() -> None:
    # pi x 10² x 7.5 cm
    assert Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0).brim_ml() == pytest.approx(2356.19, abs=0.01)
    assert Tin(shape="square", sizes_mm=(200.0,), depth_mm=75.0).volume_ml(40.0) == pytest.approx(1600.0)
    assert Tin(shape="rectangle", sizes_mm=(230.0, 330.0)).volume_ml(10.0) == pytest.approx(759.0)
    # pi x (10² - 2.5²) x 4 cm
    assert Tin(shape="ring", sizes_mm=(200.0, 50.0), depth_mm=75.0).volume_ml(40.0) == pytest.approx(375.0 * math.pi)
    # (299 + 4 x 21.5 x 11.5 + 200) / 6 cm² x 7 cm
    assert Tin(shape="loaf", sizes_mm=(230.0, 130.0, 200.0, 100.0), depth_mm=70.0).brim_ml() == pytest.approx(
        1488 / 6 * 7
    )


def test_square_is_an_inch_smaller_than_round_only_near_nine() -> None:
    # Pure geometry of exact inches: pi/4 n² / (n - 1)², a rule of thumb that fails at both ends.
    for inch, ratio in ((6, 1.13), (9, 0.99), (12, 0.93)):
        round_tin, square_tin = (
            Tin(shape="round", sizes_mm=(inch * 25.4,)),
            Tin(shape="square", sizes_mm=((inch - 1) * 25.4,)),
        )
        assert round_tin.area_mm2 / square_tin.area_mm2 == pytest.approx(ratio, abs=0.006)


def test_cups_hold_what_such_cups_usually_do() -> None:
    # Common practice, no source.
    usual = {"mini": 30, "fairy": 55, "standard": 100, "jumbo": 200}
    trays = {"mini": 24, "fairy": 12, "standard": 12, "jumbo": 6}
    cups = {tin.size_label: tin for tin in standard_tins() if tin.shape == "cups"}
    assert {size: tin.brim_ml() for size, tin in cups.items()} == pytest.approx(usual, rel=0.02)
    assert {size: tin.holes for size, tin in cups.items()} == trays
    assert cups["standard"].stand_mm == pytest.approx((400.0, 300.0))
    for tin in cups.values():
        assert tin.kind.kept == "share"
        assert 350 < max(tin.stand_mm) < 450


def test_a_one_pound_loaf_is_half_a_two_pound() -> None:
    small, large = (tin for tin in standard_tins() if tin.shape == "loaf")
    assert large.brim_ml() / small.brim_ml() == pytest.approx(2.0, rel=0.02)


def test_a_loaf_holds_less_than_its_rim_times_its_depth() -> None:
    # Published brim volumes of loaf tins are 0.60-0.72 of rim length x width x depth. With the 0.90 that
    # straight tins need for rounded corners ours come to 0.75: the usual base, taken from common
    # practice, is a little roomy.
    for tin in standard_tins():
        if tin.shape == "loaf":
            length, width = tin.sizes_mm[:2]
            share = tin.brim_ml() * 0.90 * 1000.0 / (length * width * (tin.depth_mm or 0.0))
            assert 0.60 <= share <= 0.76


def test_depths_sold() -> None:
    tin = Tin(shape="round", sizes_mm=(200.0,))
    assert [tin.least_depth(needed) for needed in (30.0, 40.0, 41.0, 75.0, 76.0, 101.0)] == [
        40.0, 40.0, 50.0, 75.0, 100.0, None,
    ]  # fmt: skip
    (jumbo,) = (tin for tin in standard_tins() if tin.name == "jumbo cups")
    assert (jumbo.least_depth(38.0), jumbo.least_depth(41.0)) == (40.0, None)


def test_above_the_rim_the_walls_are_upright() -> None:
    tin = Tin(shape="loaf", sizes_mm=(230.0, 130.0), depth_mm=70.0)
    assert tin.volume_ml(80.0) - tin.volume_ml(70.0) == pytest.approx(230 * 130 * 10 / 1000)


def test_a_book_of_tins_and_recipes_is_a_moment() -> None:
    tins = standard_tins()
    start = time.perf_counter()
    for fill in range(300):
        for tin in tins:
            tin.volume_ml(float(fill) / 4.0)
    # Microseconds each; the bound is loose for a busy machine.
    assert (time.perf_counter() - start) / (300 * len(tins)) < 20e-6
