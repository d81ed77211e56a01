"""Figures of parts as they are shown: lengths to half a millimetre, small weights to a tenth of a gram."""

from __future__ import annotations

from tinbook.engine import rounding

_FINE_BELOW_G = 10.0


def _number(value: float) -> str:
    return f"{value:g}"


def mm(length_mm: float) -> str:
    """To half a millimetre below 5 cm, to a whole one above."""
    return _number(rounding.at_least_one(length_mm, 0.5 if length_mm < 50.0 else 1.0))


def weight_g(mass_g: float) -> str:
    """To a tenth of a gram below 10 g, to a gram above: parts are weighed on fine scales."""
    return _number(rounding.at_least_one(mass_g, 0.1 if mass_g < _FINE_BELOW_G else 1.0))


def pot_g(mass_g: float) -> str:
    """Colour, to a hundredth of a gram below one, to a tenth above."""
    return _number(rounding.at_least_one(mass_g, 0.01 if mass_g < 1.0 else 0.1))


def hours(low_h: float, high_h: float) -> str:
    """`12–24 h`."""
    return f"{low_h:g}–{high_h:g}\N{NO-BREAK SPACE}h"


def percent(share: float) -> str:
    """`18 %`, without a sign."""
    return f"{rounding.half_up(abs(share) * 100.0, 1.0):g}\N{NO-BREAK SPACE}%"
