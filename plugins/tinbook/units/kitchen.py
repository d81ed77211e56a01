"""The kitchen's measures by the names the code uses; their sizes are worked out from kitchen.txt."""

from math import log2

from tinbook.units.sizes import (
    FAHRENHEIT_AT_0_C,
    FAHRENHEIT_PER_CELSIUS,
    GRAMS,
    MILLILITRES,
    MILLIMETRES,
    MINUTES,
)

# grams
GRAMS_PER_KILOGRAM = GRAMS["kilogram"]
GRAMS_PER_POUND = GRAMS["pound"]
GRAMS_PER_OUNCE = GRAMS["ounce"]

# millimetres
MM_PER_CM = MILLIMETRES["centimetre"]
MM_PER_INCH = MILLIMETRES["inch"]

# minutes
MINUTES_PER_HOUR = MINUTES["hour"]

# millilitres
ML_PER_LITRE = MILLILITRES["litre"]
ML_PER_US_FLUID_OUNCE = MILLILITRES["US_fluid_ounce"]
ML_PER_UK_FLUID_OUNCE = MILLILITRES["UK_fluid_ounce"]
ML_PER_US_PINT = MILLILITRES["US_pint"]
ML_PER_UK_PINT = MILLILITRES["UK_pint"]
CUPS_ML = {
    "US cup": MILLILITRES["US_cup"],
    "metric cup": MILLILITRES["metric_cup"],
    "UK cup": MILLILITRES["UK_cup"],
}
# tablespoon, teaspoon
SPOONS_ML = {
    name: (MILLILITRES[f"{name}_tablespoon"], MILLILITRES[f"{name}_teaspoon"])
    for name in ("metric", "US", "Australian")
}
# A pinch is a sixteenth of a teaspoon: common practice.
TEASPOONS_PER_PINCH = 1 / 16


def fahrenheit(celsius: float) -> float:
    """°C to °F."""
    return celsius * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_0_C


def celsius(fahrenheit: float) -> float:
    """°F to °C."""
    return (fahrenheit - FAHRENHEIT_AT_0_C) / FAHRENHEIT_PER_CELSIUS


def gas_mark_celsius(mark: float) -> float:
    """The temperature of a British gas mark, in °C. `mark` is above 0.

    From mark 1 up, °F = 25 (mark - 1) + 275; below it each halving of the mark takes off 25 °F: °F = 25 log2(mark) +
    275. Source: GNU units, definitions.units, `gasmark` (https://www.gnu.org/software/units/), which puts mark 4 at 350
    °F.

    >>> round(fahrenheit(gas_mark_celsius(4.0)))
    350
    """
    return celsius(275 + 25 * (mark - 1 if mark >= 1 else log2(mark)))
