"""Kitchen quantities: a small strict grammar for what a baker writes, and the measures."""

from tinbook.units.heat import FAN_DIFFERENCE_C, Heat, read_heat, read_percent
from tinbook.units.kitchen import (
    CUPS_ML,
    GRAMS_PER_KILOGRAM,
    GRAMS_PER_OUNCE,
    GRAMS_PER_POUND,
    ML_PER_LITRE,
    ML_PER_UK_FLUID_OUNCE,
    ML_PER_US_FLUID_OUNCE,
    MM_PER_CM,
    MM_PER_INCH,
    SPOONS_ML,
    celsius,
    fahrenheit,
    gas_mark_celsius,
)
from tinbook.units.measures import METRIC, Measures, measures_of
from tinbook.units.misread import Misread, Whose
from tinbook.units.numerals import read_number
from tinbook.units.quantities import (
    Quantity,
    Span,
    read_count,
    read_length,
    read_line,
    read_mass,
    read_quantity,
    read_span,
    read_time,
    read_volume,
)
from tinbook.units.words import UNITS, WORDS, read_unit, to_unit

__all__ = [
    "CUPS_ML",
    "FAN_DIFFERENCE_C",
    "GRAMS_PER_KILOGRAM",
    "GRAMS_PER_OUNCE",
    "GRAMS_PER_POUND",
    "METRIC",
    "ML_PER_LITRE",
    "ML_PER_UK_FLUID_OUNCE",
    "ML_PER_US_FLUID_OUNCE",
    "MM_PER_CM",
    "MM_PER_INCH",
    "SPOONS_ML",
    "UNITS",
    "WORDS",
    "Heat",
    "Measures",
    "Misread",
    "Quantity",
    "Span",
    "Whose",
    "celsius",
    "fahrenheit",
    "gas_mark_celsius",
    "measures_of",
    "read_count",
    "read_heat",
    "read_length",
    "read_line",
    "read_mass",
    "read_number",
    "read_percent",
    "read_quantity",
    "read_span",
    "read_time",
    "read_unit",
    "read_volume",
    "to_unit",
]
