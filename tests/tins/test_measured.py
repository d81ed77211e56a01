"""A tin asked together with what it holds."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.tins import measure_fault, read_measured, read_tin, says_measure
from tinbook.units import Misread, measures_of

TIN = "round 20 cm x 7.5 cm"


@pytest.mark.parametrize(
    "said",
    [", measured 2200 ml", " measured 2200 ml", ", Measured: 2.2 l", ", measured at 2200ml", ",measured 2200 ml "],
)
def test_what_it_holds_is_read_however_it_is_said(said: str) -> None:
    ((count, tin),) = read_measured(f"2 {TIN}{said}")
    assert (count, tin.full_name, tin.measured_ml) == (2, TIN, pytest.approx(2200.0))
    assert tin.brim_ml() == pytest.approx(2200.0)
    assert says_measure(f"{TIN}{said}")


def test_without_a_measure_it_is_read_as_ever() -> None:
    for text in (TIN, "2 standard cups", "set of round 15, 20 cm x 7.5 cm"):
        assert all(tin.measured_ml is None for _, tin in read_measured(text))
        assert not says_measure(text)
    assert read_measured(TIN) == (read_tin(TIN),)


def test_pints_are_those_of_the_house_and_a_name_of_its_own_is_known() -> None:
    number = read_tin("outline M0 0H120V200H0Z x 5 cm")[1]
    ((_, tin),) = read_measured("number 4, measured 5 US cups", {"number 4": number}, measures_of("US cup", "metric"))
    assert tin.measured_ml == pytest.approx(5 * 236.588, rel=1e-4)


@every(
    ("text", "marked", "message"),
    [
        (f"{TIN}, measured", ", measured", "how much does it hold?"),
        (f"{TIN}, measured 22 kg", "22 kg", "is a weight"),
        (f"{TIN}, measured 22 ml", "22 ml", "going by its size, the tin holds about 2356 ml"),
        (f"{TIN}, measured 9000 ml", "9000 ml", "going by its size, the tin holds about 2356 ml"),
        ("round 20 cm, measured 2200 ml", "2200 ml", "needs its depth"),
        ("roud 20 cm, measured 2200 ml", "roud", "no tin shape"),
    ],
)
def test_what_is_wrong_has_its_place(text: str, marked: str, message: str) -> None:
    with pytest.raises(Misread, match=message) as told:
        read_measured(text)
    assert text[told.value.start : told.value.end] == marked


def test_a_measure_is_of_one_tin_with_a_depth_and_near_its_sizes() -> None:
    deep, flat = read_tin(TIN)[1], read_tin("round 20 cm")[1]
    assert measure_fault([deep], 2200.0) is None
    faults = [measure_fault(tins, ml) for tins, ml in (([deep, deep], 2200.0), ([flat], 2200.0), ([deep], 1.0))]
    assert [fault.what for fault in faults if fault] == ["of", "depth", "off"]


def test_where_books_are_read_it_says_where_a_measure_stands() -> None:
    with pytest.raises(Misread, match="not understood") as told:
        read_tin(f"{TIN}, measured 2200 ml")
    assert told.value.hint == 'say in tins.yaml what a tin holds: "measured: 2200 ml"'
