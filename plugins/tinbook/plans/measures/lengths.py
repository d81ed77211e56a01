"""Inches and centimetres: exact, and by the trade's names for tins, boards and ribbon."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.tins.trade import trade_mm
from tinbook.units import MM_PER_INCH, Sold

PARTS_IN = (0.125, 0.25, 0.375, 0.5, 0.75)
INCHES = (1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 17.0, 18.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthRow:
    """A length in inches: exact mm, mm as on a ruler, the trade's name in mm for a tin (None: not a stock size), and
    how far out that is. `taken_mm`: how wide this house takes such a tin to be."""

    inches_in: float
    exact_mm: float
    shown_mm: float
    trade_mm: float | None
    off_mm: float | None
    taken_mm: float | None


@dataclass(frozen=True)
class LengthTable:
    """The rows, and how they were worked out."""

    rows: tuple[LengthRow, ...]
    worked: Worked


def lengths(sold: Sold = "cm") -> LengthTable:
    """Parts of an inch, then inches; `sold`: what the house's tins are sold in."""
    rows = []
    for inches in (*PARTS_IN, *INCHES):
        exact, named = inches * MM_PER_INCH, trade_mm(inches)
        shown = rounding.half_up(exact, 0.1 if inches < 1 else 1.0)
        off = None if named is None else rounding.half_up(named - exact, 0.1)
        row = LengthRow(
            inches_in=inches,
            exact_mm=exact,
            shown_mm=shown,
            trade_mm=named,
            off_mm=off,
            taken_mm=trade_mm(inches, sold),
        )
        rows.append(row)
    inputs = saying("sold_as"), saying("tins_sold_in", sold=sold), saying("measured_wins")
    worked = Worked(saying("inch"), inputs, ("GNU units", "common practice"))
    return LengthTable(tuple(rows), worked)
