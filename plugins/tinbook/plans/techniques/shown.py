"""Parts as they are shown: lengths to half a millimetre, small weights to a tenth of a gram, and for which cakes."""

from __future__ import annotations

from tinbook.engine import rounding
from tinbook.plans.techniques.parts import Decoration

FINE_BELOW_G, FINE_BELOW_MM = 10.0, 50.0
LESS, MORE = 0.8, 1.2
"""The cakes shown next to one are this much narrower and wider, or more."""


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


def beside(sums: Decoration, every: tuple[Decoration, ...]) -> tuple[Decoration, ...]:
    """The sums of a cake between those of two others, small to large: the next at most four fifths as wide and the next
    at least six fifths; at either end of the list, two on the same side, and fewer where it has no more."""
    width = sums.cake.bounds_mm[0]
    less, more = list[Decoration](), list[Decoration]()
    for each in reversed(every):
        if each.cake.bounds_mm[0] <= LESS * (less[-1].cake.bounds_mm[0] if less else width):
            less.append(each)
    for each in every:
        if each.cake.bounds_mm[0] >= MORE * (more[-1].cake.bounds_mm[0] if more else width):
            more.append(each)
    below = 1 if more else 2
    return (*reversed(less[:below]), sums, *more[: 1 if less else 2])
