"""How a part dries, and whether it is then small and hard."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts


@dataclass(frozen=True, slots=True)
class Drying:
    """The fewest and the most hours; `soft_within`: it stays soft inside."""

    low_h: float
    high_h: float
    sheet: bool
    soft_within: bool


def drying(thick_mm: float, facts: Facts) -> Drying:
    """How long a part of that thickness takes to dry."""
    sheet = thick_mm <= facts.numbers["dries as a sheet"].value
    hours = facts.numbers["sheet drying" if sheet else "solid drying"]
    soft = thick_mm > facts.numbers["stays soft within"].value
    return Drying(hours.low or hours.value, hours.high or hours.value, sheet, soft)


def small_hard(sizes_mm: tuple[float, float, float], facts: Facts) -> bool:
    """Whether a dried part of those sizes fits the test cylinder for choking."""
    small, middle, large = sorted(sizes_mm)
    across, deep = facts.numbers["small parts across"].value, facts.numbers["small parts deep"].value
    # the widest section across the cylinder is at most the two smaller sides
    return middle <= across and large <= deep and small > 0.0
