"""Rounding, once, for a named purpose. Halves go up, here and in the browser.

`half_up(value, step) = step * floor(value / step + 1/2)`; the tiny `GRAIN` keeps a half that floats hold as 0.49999999
from going down. A positive amount never becomes zero: it shows as the smallest step.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import floor
from typing import TYPE_CHECKING

from tinbook.engine.tolerance import GRAIN, whole_up

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

HALF = 0.5 + GRAIN
CUP_PARTS = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1.0)
"""What a set of cup measures can show. Common practice."""


def half_up(value: float, step: float) -> float:
    """The multiple of `step` nearest to `value`, halves up; all in one unit. `step` > 0.

    >>> half_up(427.5, 5.0)
    430.0
    """
    nearest = floor(value / step + HALF) * step
    # Floats hold whole steps, quarters and eighths exactly; tenths need tidying, which costs as much as the rest.
    return nearest if step * 8 % 1 == 0 else round(nearest, 6)


def at_least_one(value: float, step: float) -> float:
    """`half_up`, but a positive value comes to at least one step."""
    return half_up(value, step) or (step if value > 0 else 0.0)


@dataclass(frozen=True, slots=True)
class ScaleSteps:
    """How finely kitchen scales read: to `step_g`, or to `fine_step_g` below `fine_below_g`."""

    step_g: float
    fine_step_g: float
    fine_below_g: float


def scales(mass_g: float, steps: ScaleSteps) -> float:
    """Grams (or ml, on the same scales) as the scales show them."""
    step = steps.fine_step_g if mass_g < steps.fine_below_g else steps.step_g
    return half_up(mass_g, step) or (step if mass_g > 0 else 0.0)


def scales_each(masses_g: Iterable[float], steps: ScaleSteps) -> list[float]:
    """`scales` for many weights at once."""
    step, fine_step, fine_below = steps.step_g, steps.fine_step_g, steps.fine_below_g
    if step * 8 % 1 or fine_step * 8 % 1:
        return [scales(mass_g, steps) for mass_g in masses_g]
    # steps that floats hold exactly need no tidying, see half_up
    return [
        (floor(mass_g / fine_step + HALF) * fine_step or (fine_step if mass_g > 0 else 0.0))
        if mass_g < fine_below
        else floor(mass_g / step + HALF) * step or step
        for mass_g in masses_g
    ]


def spooned_weight(mass_g: float) -> float:
    """The weight of a cup or spoonful: whole grams, or tenths below ten."""
    return half_up(mass_g, 1.0 if mass_g >= 10.0 else 0.1)


def spoon(spoons: float) -> float:
    """Spoons to a quarter, or to an eighth below half a spoon."""
    return at_least_one(spoons, 0.125 if spoons < 0.5 else 0.25)


def pieces(count: float) -> float:
    """Whole things, such as eggs."""
    return at_least_one(count, 1.0)


def ounces(mass_oz: float) -> float:
    """Ounces to a quarter, or to an eighth below one ounce."""
    return at_least_one(mass_oz, 0.125 if mass_oz < 1 else 0.25)


def cups(volume_cups: float) -> float:
    """Cups to the nearest quarter or third, at least a quarter."""
    whole = floor(volume_cups)
    rest = volume_cups - whole
    shown = whole + min(reversed(CUP_PARTS), key=lambda part: round(abs(part - rest), 9))
    return shown or (CUP_PARTS[1] if volume_cups > 0 else 0.0)


def ruler(length_mm: float) -> float:
    """Millimetres as read on a ruler: `half_up` to whole ones, written out for speed."""
    return float(floor(length_mm + HALF))


def factor(value: float) -> float:
    """A scaling factor as printed: `half_up` to two decimals, written out for speed."""
    return floor(value * 100.0 + HALF) / 100.0


def percent(share: float) -> float:
    """A share (0.0163) as a percentage (1.6): `half_up` to a tenth, written out for speed."""
    return floor(share * 1000.0 + HALF) / 10.0


def label_percent(share: float) -> float:
    """A share as a label gives it, in per cent: whole, or to a half below five. From memory of guidance on it."""
    value = share * 100.0
    return at_least_one(value, 0.5 if value < 5.0 else 1.0)


def per_hundred(value: float) -> float:
    """A figure per hundred of something: whole, or to a tenth below ten."""
    return at_least_one(value, 0.1 if value < 10 else 1.0)


def litres(volume_ml: float) -> float:
    """Millilitres to the nearest 10."""
    return half_up(volume_ml, 10.0)


def error(exact: float, shown: float) -> float:
    """How far the shown number is from the exact one, as an unsigned share of the exact one."""
    return abs(shown - exact) / exact if exact else 0.0


def scales_up(mass_g: float, steps: ScaleSteps) -> float:
    """Grams as the scales show them, never less than asked: for what is to be made or rolled out."""
    step = steps.fine_step_g if mass_g < steps.fine_below_g else steps.step_g
    return round(whole_up(mass_g / step) * step, 6)


def ruler_cm(length_mm: float) -> float:
    """Millimetres up to the next half centimetre: for what is rolled, cut from a reel or bought, never short."""
    return round(whole_up(length_mm / 5.0) * 5.0, 6)


def minutes_down_each(values: Floats) -> Floats:
    """Minutes in the oven as a timer is set: whole ones below half an hour, then to 5, and to 10 over 3 hours.

    Never later than asked: for when to look first, and for the early end of a span.
    """
    import numpy as np

    steps = _minute_steps(values)
    return np.asarray(np.maximum(steps, np.floor(values / steps + GRAIN) * steps))


def minutes_up_each(values: Floats) -> Floats:
    """The same, never earlier than asked: for the late end of a span."""
    import numpy as np

    steps = _minute_steps(values)
    return np.asarray(np.ceil(values / steps - GRAIN) * steps)


def _minute_steps(values: Floats) -> Floats:
    import numpy as np

    return np.where(values < 30.0, 1.0, np.where(values < 180.0, 5.0, 10.0))


def dial(celsius: float) -> float:
    """An oven's dial, to 5 °C."""
    return half_up(celsius, 5.0)
