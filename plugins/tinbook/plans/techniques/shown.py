"""Figures of parts, rounded as they are shown: lengths to half a millimetre, small weights to a tenth of a gram."""

from __future__ import annotations

from tinbook.engine import rounding

FINE_BELOW_G, FINE_BELOW_MM = 10.0, 50.0


def shown_mm(length_mm: float) -> float:
    """To half a millimetre below 5 cm, to a whole one from there."""
    return rounding.at_least_one(length_mm, 0.5 if length_mm < FINE_BELOW_MM else 1.0)


def shown_g(mass_g: float) -> float:
    """To a tenth of a gram below 10 g, to a gram from there: parts are weighed on fine scales."""
    return rounding.at_least_one(mass_g, 0.1 if mass_g < FINE_BELOW_G else 1.0)


def shown_pot_g(mass_g: float) -> float:
    """Colour, to a hundredth of a gram below one, to a tenth from there."""
    return rounding.at_least_one(mass_g, 0.01 if mass_g < 1.0 else 0.1)


def shown_percent(share: float) -> float:
    """A share as a whole percentage, unsigned."""
    return rounding.half_up(abs(share) * 100.0, 1.0)
