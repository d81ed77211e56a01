"""Inches against scipy and GNU units; the trade's sizes against what a ruler says."""

from typing import Any

import pytest
from scipy import constants

from tinbook.plans.measures.lengths import PARTS_IN, lengths


def test_inches_against_scipy_and_gnu_units(gnu_units: Any) -> None:
    rows = lengths().rows
    exact = gnu_units([(f"{row.inches_in} in", "mm") for row in rows])
    for row, millimetres in zip(rows, exact, strict=True):
        assert row.exact_mm == pytest.approx(millimetres, rel=1e-9)
        assert row.exact_mm == pytest.approx(row.inches_in * constants.inch * 1000, rel=1e-9)
        assert row.shown_mm == pytest.approx(row.exact_mm, abs=0.0501 if row.inches_in < 1 else 0.501)


def test_the_trades_sizes() -> None:
    """Common practice, as printed on tins: 6 in is 15 cm, 8 in 20 cm, 10 in 25 cm, 12 in 30 cm; 3 in deep is 7.5 cm."""
    sold = {row.inches_in: row.trade_mm for row in lengths().rows}
    for inches, cm in ((3, 7.5), (6, 15), (8, 20), (9, 23), (10, 25), (12, 30)):
        assert sold[inches] == cm * 10
    assert all(sold[part] is None for part in PARTS_IN)


def test_what_a_house_takes_a_tin_for() -> None:
    """By its name in centimetres, or by its inches; the name and how far it is off stay what they are."""
    for by_cm, by_inch in zip(lengths("cm").rows, lengths("inches").rows, strict=True):
        assert (by_cm.trade_mm, by_cm.off_mm) == (by_inch.trade_mm, by_inch.off_mm)
        assert by_cm.taken_mm == by_cm.trade_mm
        assert by_inch.taken_mm == (None if by_inch.trade_mm is None else pytest.approx(by_inch.exact_mm, abs=0.005))


def test_a_trade_name_is_never_far_from_the_ruler() -> None:
    for row in lengths().rows:
        if row.trade_mm is not None:
            assert row.off_mm == pytest.approx(row.trade_mm - row.exact_mm, abs=0.0501)
            assert abs(row.off_mm or 0) <= 7
