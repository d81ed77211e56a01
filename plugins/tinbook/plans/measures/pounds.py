"""Ounces and pounds to grams and back, pints and fluid ounces to millilitres."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.plans.base.worked import Worked
from tinbook.units import GRAMS_PER_OUNCE, ML_PER_UK_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE

OUNCES = (0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 24.0, 32.0)
GRAMS = (25.0, 50.0, 75.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 340.0, 400.0, 425.0, 450.0, 500.0,
         750.0, 1000.0)  # fmt: skip
FLUID_OUNCES = {1.0: "", 2.0: "", 4.0: "US ½ cup", 5.0: "UK ¼ pint", 8.0: "US cup", 10.0: "UK ½ pint", 16.0: "US pint",
                20.0: "UK pint", 32.0: "US quart", 40.0: "UK quart"}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class OunceRow:
    """A weight in ounces: exact grams, whole grams, and what books print for it."""

    ounces_oz: float
    exact_g: float
    shown_g: float
    print_low_g: float
    print_high_g: float


@dataclass(frozen=True, slots=True)
class GramRow:
    """A weight in grams: exact ounces, and as the scales show them."""

    grams_g: float
    exact_oz: float
    shown_oz: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PintRow:
    """So many fluid ounces, British and American, in ml; `name` where the amount has one."""

    fluid_ounces: float
    name: str
    uk_ml: float
    us_ml: float
    uk_shown_ml: float
    us_shown_ml: float


@dataclass(frozen=True, kw_only=True)
class Pounds:
    """The three tables and how they were worked out."""

    ounces: tuple[OunceRow, ...]
    grams: tuple[GramRow, ...]
    pints: tuple[PintRow, ...]
    worked: Worked
    pints_worked: Worked


def pounds(facts: Facts) -> Pounds:
    """All three."""
    printed = facts.numbers["ounce in print"]
    low, high = printed.low or printed.value, printed.high or printed.value
    ounces = tuple(
        OunceRow(
            ounces_oz=oz,
            exact_g=oz * GRAMS_PER_OUNCE,
            shown_g=rounding.half_up(oz * GRAMS_PER_OUNCE, 1.0),
            print_low_g=oz * low,
            print_high_g=oz * high,
        )
        for oz in OUNCES
    )
    grams = tuple(GramRow(g, g / GRAMS_PER_OUNCE, rounding.ounces(g / GRAMS_PER_OUNCE)) for g in GRAMS)
    pints = tuple(_pint_row(count, name) for count, name in FLUID_OUNCES.items())
    return Pounds(
        ounces=ounces,
        grams=grams,
        pints=pints,
        worked=Worked(
            f"grams = ounces × {GRAMS_PER_OUNCE:.5g}; 16 ounces are a pound, exactly 453.59237 g",
            (f"in print: books round an ounce to {low:g} or {high:g} g",),
            ("GNU units", printed.source),
        ),
        pints_worked=Worked(
            f"ml = fluid ounces × {ML_PER_UK_FLUID_OUNCE:.5g} (UK) or × {ML_PER_US_FLUID_OUNCE:.5g} (US)",
            ("a UK pint is 20 of its own, a US pint 16 of its own; both exact by law",),
            ("GNU units",),
        ),
    )


def _pint_row(count: float, name: str) -> PintRow:
    uk_ml, us_ml = count * ML_PER_UK_FLUID_OUNCE, count * ML_PER_US_FLUID_OUNCE
    return PintRow(
        fluid_ounces=count,
        name=name,
        uk_ml=uk_ml,
        us_ml=us_ml,
        uk_shown_ml=rounding.half_up(uk_ml, 1.0),
        us_shown_ml=rounding.half_up(us_ml, 1.0),
    )
