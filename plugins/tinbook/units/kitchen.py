"""The sizes of the kitchen's measures, worked out once by pint from kitchen.txt."""

from importlib import resources
from math import log2

import pint

_registry: pint.UnitRegistry[float] = pint.UnitRegistry(None)
_registry.load_definitions(
    resources.files("tinbook.units").joinpath("kitchen.txt").read_text(encoding="utf-8").splitlines()
)


def _size(unit: str, base: str) -> float:
    """How many `base` there are in one `unit`.

    Every defined size has at most 13 digits; what follows them is rounding in the multiplication.
    """
    return float(f"{_registry.Quantity(1.0, unit).to(base).magnitude:.13g}")


# grams
GRAMS_PER_KILOGRAM = _size("kilogram", "gram")
GRAMS_PER_POUND = _size("pound", "gram")
GRAMS_PER_OUNCE = _size("ounce", "gram")

# millimetres
MM_PER_CM = _size("centimetre", "millimetre")
MM_PER_INCH = _size("inch", "millimetre")

# minutes
MINUTES_PER_HOUR = _size("hour", "minute")

# millilitres
ML_PER_LITRE = _size("litre", "millilitre")
ML_PER_US_FLUID_OUNCE = _size("US_fluid_ounce", "millilitre")
ML_PER_UK_FLUID_OUNCE = _size("UK_fluid_ounce", "millilitre")
ML_PER_US_PINT = _size("US_pint", "millilitre")
ML_PER_UK_PINT = _size("UK_pint", "millilitre")
CUPS_ML = {
    "US cup": _size("US_cup", "millilitre"),
    "metric cup": _size("metric_cup", "millilitre"),
    "UK cup": _size("UK_cup", "millilitre"),
}
# tablespoon, teaspoon
SPOONS_ML = {
    name: (_size(f"{name}_tablespoon", "millilitre"), _size(f"{name}_teaspoon", "millilitre"))
    for name in ("metric", "US", "Australian")
}
# A pinch is a sixteenth of a teaspoon: common practice.
TEASPOONS_PER_PINCH = 1 / 16

_FAHRENHEIT_PER_CELSIUS = _size("delta_degree_Celsius", "delta_degree_Fahrenheit")
_FAHRENHEIT_AT_0_C = float(f"{_registry.Quantity(0.0, 'degree_Celsius').to('degree_Fahrenheit').magnitude:.13g}")


def fahrenheit(celsius: float) -> float:
    """A temperature in °F, from °C."""
    return celsius * _FAHRENHEIT_PER_CELSIUS + _FAHRENHEIT_AT_0_C


def celsius(fahrenheit: float) -> float:
    """A temperature in °C, from °F."""
    return (fahrenheit - _FAHRENHEIT_AT_0_C) / _FAHRENHEIT_PER_CELSIUS


def gas_mark_celsius(mark: float) -> float:
    """The heat of a British gas mark, in °C.

    From mark 1 up, °F = 25 (mark - 1) + 275; below it each halving of the mark takes off 25 °F:
    °F = 25 log2(mark) + 275. `mark` is above 0. Source: GNU units, definitions.units, `gasmark`
    (https://www.gnu.org/software/units/).
    """
    return celsius(275 + 25 * (mark - 1 if mark >= 1 else log2(mark)))
