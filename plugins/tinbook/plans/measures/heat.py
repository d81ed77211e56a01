"""The oven: gas marks and dials in °C, as fan and in °F."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Facts, GasMark
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.units import fahrenheit, read_number

DIALS_C = range(100, 260, 10)


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenRow:
    """A gas mark: °C conventional and fan as printed, a figure or a range, and both its ends; °F, exact °C, the range
    in print."""

    gas_mark: str
    conventional_c: str
    fan_c: Saying
    fahrenheit_f: float
    exact_c: float
    low_c: float
    high_c: float
    conventional_ends_c: tuple[float, float]
    fan_ends_c: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatRow:
    """A dial setting of a conventional oven: fan °C and its range, °F, the nearest gas mark and how far off that is,
    °C."""

    conventional_c: float
    fan_c: float
    fan_low_c: float
    fan_high_c: float
    exact_f: float
    fahrenheit_f: float
    gas_mark: str
    gas_off_c: float


def oven_rows(facts: Facts) -> tuple[OvenRow, ...]:
    """Gas marks, coolest first."""
    fan = facts.numbers["fan difference"].value
    return tuple(
        OvenRow(
            gas_mark=mark.mark,
            conventional_c=mark.celsius_printed,
            fan_c=_less(mark.celsius_printed, fan),
            fahrenheit_f=mark.fahrenheit,
            exact_c=mark.celsius,
            low_c=mark.celsius_low,
            high_c=mark.celsius_high,
            conventional_ends_c=(printed := _ends(mark.celsius_printed)),
            fan_ends_c=(printed[0] - fan, printed[1] - fan),
        )
        for mark in facts.marks
    )


def oven_worked(facts: Facts) -> Worked:
    """How the gas marks were worked out."""
    fan = facts.numbers["fan difference"]
    sources = dict.fromkeys([*(mark.source for mark in facts.marks), fan.source])
    return Worked(saying("gas_marks", fan_c=fan.value), (saying("marks_differ"),), tuple(sources))


def mark_for(celsius: float, facts: Facts) -> GasMark:
    """The gas mark for an oven without fan at this many °C: the one published tables print for it, or else the nearest
    by its exact °C. Two of three tables give mark 3 for 170 °C, though its own °C are nearer to mark 4."""
    printed = [mark for mark in facts.marks if mark.celsius_low <= celsius <= mark.celsius_high]
    return min(printed or facts.marks, key=lambda mark: abs(mark.celsius - celsius))


def heat_rows(facts: Facts) -> tuple[HeatRow, ...]:
    """Dial settings in steps of 10 °C."""
    fan = facts.numbers["fan difference"]
    low, high = fan.low or fan.value, fan.high or fan.value
    rows = []
    for dial in map(float, DIALS_C):
        nearest = mark_for(dial, facts)
        exact = fahrenheit(dial)
        shown = rounding.half_up(exact, 1.0)
        off = rounding.half_up(nearest.celsius - dial, 1.0)
        rows.append(
            HeatRow(
                conventional_c=dial,
                fan_c=dial - fan.value,
                fan_low_c=dial - high,
                fan_high_c=dial - low,
                exact_f=exact,
                fahrenheit_f=shown,
                gas_mark=nearest.mark,
                gas_off_c=off,
            )
        )
    return tuple(rows)


def heat_worked(facts: Facts) -> Worked:
    """How the dial settings were worked out."""
    fan = facts.numbers["fan difference"]
    inputs = saying("ovens_differ", low_c=fan.low, high_c=fan.high), saying("nearest_mark")
    sources = (fan.source, *dict.fromkeys(mark.source for mark in facts.marks))
    return Worked(saying("dials", fan_c=fan.value), inputs, sources)


def mark_number(mark: str) -> float:
    """A gas mark as a number: ¼ is 0.25."""
    return read_number(mark, 0)[0]


def _ends(printed: str) -> tuple[float, float]:
    """Both ends of a printed figure or range, `160–170`; a single figure twice."""
    low, _, high = printed.partition("–")
    return float(low), float(high or low)


def _less(printed: str, difference: float) -> Saying:
    """A printed figure or range, each end lower by `difference`."""
    return saying("printed_figures", figures=tuple(dict.fromkeys(end - difference for end in _ends(printed))))
