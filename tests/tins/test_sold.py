"""Tins sold in inches: the same names, as long as their inches; an inch is exactly 25.4 mm (ISO 31-1, as GNU units has it)."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.tins import SHAPES, SOLD_IN, Tin, read_measured, read_tin, read_tins, standard_tins
from tinbook.tins.trade import CM_OF_INCH, named_mm, read_by_name, trade_mm, true_mm
from tinbook.units import Sold, measures_of

HOUSES: tuple[Sold, ...] = ("cm", "inches")
IN_MM = 25.4


def tin(text: str, sold: Sold = "inches") -> Tin:
    return read_tin(text, sold=sold)[1]


def factor(old: Tin, new: Tin) -> float:
    return new.volume_ml(30.0) / old.volume_ml(30.0)


def test_from_5_to_6_inches() -> None:
    """By arithmetic: (6/5)² where tins are sold in inches, (15/13)² where in centimetres."""
    assert factor(tin("round 5 in"), tin("round 6 in")) == pytest.approx(1.44, rel=1e-12)
    assert factor(tin("round 5 in", "cm"), tin("round 6 in", "cm")) == pytest.approx((15 / 13) ** 2, rel=1e-12)


@every("inches", CM_OF_INCH)
def test_each_inch_of_the_trade_has_its_true_size(inches: float) -> None:
    named = CM_OF_INCH[inches] * 10.0
    assert trade_mm(inches, "inches") == true_mm(named, "inches") == pytest.approx(inches * IN_MM, abs=0.005)
    assert named_mm(true_mm(named, "inches"), "inches") == named
    assert named_mm(named, "inches") is None, "that name is another length's"
    assert (trade_mm(inches), true_mm(named), named_mm(named)) == (named, named, named)


@pytest.mark.parametrize("sold", HOUSES)
def test_factors_multiply_through(sold: Sold) -> None:
    tins = [each for each in standard_tins(sold=sold) if each.kind.kept == "depth"]
    for one, two, three in zip(tins, tins[7:], tins[17:], strict=False):
        assert factor(one, two) * factor(two, three) == pytest.approx(factor(one, three), rel=1e-12)


@every("sold", HOUSES)
@every("cake", standard_tins(), ids=lambda each: each.name)
def test_both_names_are_one_tin_in_both_houses(cake: Tin, sold: Sold) -> None:
    names = cake.full_names
    read = {tin(name, sold) for name in names}
    assert len(read) == 1
    (here,) = read
    assert here.full_names == names
    assert here in standard_tins((cake.shape,), sold)


@every(("shape", "power"), [("round", 2), ("square", 2), ("heart", 2), ("hexagon", 2), ("octagon", 2), ("petal", 2)])
def test_areas_go_by_the_square_of_the_inches(shape: str, power: int) -> None:
    small, *others = standard_tins((shape,), "inches")
    inches = [float(each.size_label_in.removesuffix(" in")) for each in (small, *others)]
    for each, inch in zip(others, inches[1:], strict=True):
        assert each.area_mm2 / small.area_mm2 == pytest.approx((inch / inches[0]) ** power, rel=1e-9)


@every(
    ("text", "sizes", "names"),
    [
        ("round 203 mm", (203.0,), ("round 20.3 cm",)),
        ("round 200 mm", (200.0,), ("round 200 mm",)),
        ("round 203.2 mm", (203.2,), ("round 20 cm", "round 8 in")),
        ("rectangle 200 mm x 300 mm", (200.0, 300.0), ("rectangle 200 x 300 mm",)),
        ("round 21 cm", (210.0,), ("round 21 cm",)),
        ("round 8 1/2 in", (215.9,), ("round 215.9 mm",)),
    ],
)
def test_millimetres_are_exact(text: str, sizes: tuple[float, ...], names: tuple[str, ...]) -> None:
    made = tin(text)
    assert (made.sizes_mm, made.names) == (sizes, names)
    assert [tin(name) for name in names] == [made] * len(names)


def test_a_tin_in_mm_is_no_other_in_a_house_of_centimetres() -> None:
    assert tin("round 203 mm", "cm").sizes_mm == (203.0,)
    assert tin("round 200 mm", "cm") == tin("round 8 in", "cm"), "as it has always been"
    assert tin("round 203.2 mm", "cm") != tin("round 8 in", "cm")


def test_what_goes_by_names_alone_keeps_its_sizes() -> None:
    assert SOLD_IN["inches"]["cups"] is SHAPES["cups"]
    assert tin("12 standard cups") == tin("12 standard cups", "cm")
    assert tin("cups 7 cm x 3.5 cm, base 5 cm") == tin("standard cups")


def test_a_loaf_and_a_sheet_by_name_and_by_lengths() -> None:
    assert tin("2 lb loaf") == tin("loaf 9 in x 5 in x 7 cm") == tin("loaf 23 x 13 x 7 cm, base 20 cm x 10 cm")
    assert tin("2 lb loaf").sizes_mm == pytest.approx([9 * IN_MM, 5 * IN_MM, 8 * IN_MM, 4 * IN_MM])
    assert tin("half sheet").sizes_mm == pytest.approx([13 * IN_MM, 18 * IN_MM])


def test_depths_are_sold_as_sizes_are() -> None:
    made = tin("round 8 in x 3 in")
    assert made.depth_mm == 76.2 and made == tin("round 20 cm x 7.5 cm")
    assert made.least_depth(80.0) == 101.6 and tin("dome 15 cm").brim_mm == 76.2
    assert tin("round 20 cm x 75 mm").depth_mm == 75.0


def test_sets_and_measures_are_read_so_too() -> None:
    assert [each.sizes_mm[0] for _, each in read_tins("set of round 6, 8, 10 in x 3 in", sold="inches")] == [
        152.4, 203.2, 254.0,
    ]  # fmt: skip
    ((_, measured),) = read_measured(
        "round 20 cm x 7.5 cm, measured 2200 ml", measures=measures_of(None, "US", "inches")
    )
    assert (measured.sizes_mm, measured.brim_ml()) == ((203.2,), pytest.approx(2200.0))


def test_two_books_do_not_mix() -> None:
    """The same words, asked in turn: nothing is kept of the other house."""
    for _ in range(2):
        assert tin("round 8 in", "cm").sizes_mm == (200.0,)
        assert tin("round 8 in", "inches").sizes_mm == (203.2,)
    assert tin("round 8 in", "cm") != tin("round 8 in", "inches")


def test_what_the_browser_reads_by_name() -> None:
    """A number typed there is the length that is read here."""
    for sold in HOUSES:
        for unit, numbers in read_by_name(sold).items():
            word = "in" if unit == "inches" else unit
            assert len(numbers) == len(CM_OF_INCH)
            for number, length_mm in numbers.items():
                if length_mm / 10.0 >= 2.0:
                    assert tin(f"round {number} {word}", sold).sizes_mm == (length_mm,), number
