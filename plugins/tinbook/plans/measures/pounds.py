"""Ounces and pounds to grams and back, pints and fluid ounces to millilitres."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.units import GRAMS_PER_OUNCE, ML_PER_UK_FLUID_OUNCE, ML_PER_US_FLUID_OUNCE

OUNCES = (0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 24.0, 32.0)
GRAMS = (25.0, 50.0, 75.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0,
         750.0, 1000.0)  # fmt: skip
FLUID_OUNCES = {1.0: None, 2.0: None, 4.0: ("US", 0.5, "cup"), 5.0: ("UK", 0.25, "pint"), 8.0: ("US", 1.0, "cup"),
                10.0: ("UK", 0.5, "pint"), 16.0: ("US", 1.0, "pint"), 20.0: ("UK", 1.0, "pint"),
                32.0: ("US", 1.0, "quart"), 40.0: ("UK", 1.0, "quart")}  # fmt: skip
"""A number, and the kitchen measure, or part of one, that holds as many."""


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
    """Fluid ounces, British and American, in ml; `name` if the amount has one, else empty."""

    fluid_oz: float
    name: Saying | str
    uk_ml: float
    us_ml: float
    uk_shown_ml: float
    us_shown_ml: float


@dataclass(frozen=True, kw_only=True)
class Pounds:
    """The three tables, and how they were worked out."""

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
    pints = tuple(_pint_row(count, measure) for count, measure in FLUID_OUNCES.items())
    return Pounds(
        ounces=ounces,
        grams=grams,
        pints=pints,
        worked=Worked(
            saying("ounces_in_grams", grams_per_ounce=GRAMS_PER_OUNCE),
            (saying("ounce_in_print", low_g=low, high_g=high),),
            ("GNU units", printed.source),
        ),
        pints_worked=Worked(
            saying("fluid_ounces_in_ml", uk_ml=ML_PER_UK_FLUID_OUNCE, us_ml=ML_PER_US_FLUID_OUNCE),
            (saying("two_pints"),),
            ("GNU units",),
        ),
    )


def _pint_row(count: float, measure: tuple[str, float, str] | None) -> PintRow:
    uk_ml, us_ml = count * ML_PER_UK_FLUID_OUNCE, count * ML_PER_US_FLUID_OUNCE
    return PintRow(
        fluid_oz=count,
        name=saying("part_of_measure", kitchen=measure[0], share=measure[1], measure=measure[2]) if measure else "",
        uk_ml=uk_ml,
        us_ml=us_ml,
        uk_shown_ml=rounding.half_up(uk_ml, 1.0),
        us_shown_ml=rounding.half_up(us_ml, 1.0),
    )
