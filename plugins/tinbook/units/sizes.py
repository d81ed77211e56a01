"""The sizes of the kitchen's measures, as pint works them out from kitchen.txt.

Written by `registry.module`, which says how; a test works every size out again. Do not change it by hand.
"""

from __future__ import annotations

from collections.abc import Mapping

GRAMS: Mapping[str, float] = {
    "kilogram": 1000.0,
    "ounce": 28.349523125,
    "pound": 453.59237,
}
MILLIMETRES: Mapping[str, float] = {
    "centimetre": 10.0,
    "inch": 25.4,
}
MINUTES: Mapping[str, float] = {
    "hour": 60.0,
}
MILLILITRES: Mapping[str, float] = {
    "Australian_tablespoon": 20.0,
    "Australian_teaspoon": 5.0,
    "UK_cup": 284.130625,
    "UK_fluid_ounce": 28.4130625,
    "UK_gallon": 4546.09,
    "UK_pint": 568.26125,
    "US_cup": 236.5882365,
    "US_fluid_ounce": 29.5735295625,
    "US_gallon": 3785.411784,
    "US_pint": 473.176473,
    "US_tablespoon": 14.78676478125,
    "US_teaspoon": 4.92892159375,
    "litre": 1000.0,
    "metric_cup": 250.0,
    "metric_tablespoon": 15.0,
    "metric_teaspoon": 5.0,
}
FAHRENHEIT_PER_CELSIUS = 1.8
FAHRENHEIT_AT_0_C = 32.0
