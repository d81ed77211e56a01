"""The sizes of measures, against GNU units (https://www.gnu.org/software/units/) and scipy.constants
(CODATA and the legal definitions, https://docs.scipy.org/doc/scipy/reference/constants.html)."""

import csv
import subprocess
from pathlib import Path

import pytest
from scipy import constants
from tests.every import every

from tinbook.units import (
    CUPS_ML,
    GRAMS_PER_KILOGRAM,
    GRAMS_PER_OUNCE,
    GRAMS_PER_POUND,
    METRIC,
    ML_PER_LITRE,
    ML_PER_UK_FLUID_OUNCE,
    ML_PER_US_FLUID_OUNCE,
    MM_PER_CM,
    MM_PER_INCH,
    SPOONS_ML,
    Measures,
    celsius,
    fahrenheit,
    gas_mark_celsius,
    measures_of,
    read_quantity,
    to_unit,
)

DATA = Path(__file__).parents[1] / "data"
SIX_DIGITS = 1e-6
US = measures_of("US cup", "US")
UK = measures_of("UK cup", "metric")
AUSTRALIAN = measures_of("metric cup", "Australian")


def gnu_units(have: str, want: str) -> float:
    """What GNU units makes of it. Fails where the program is not installed: it is the other opinion here."""
    done = subprocess.run(
        ["units", "-q", "-t", "-d", "12", have, want], capture_output=True, text=True, check=True, timeout=30
    )
    return float(done.stdout)


@every(
    ("text", "measures", "have", "want"),
    [
        ("1 lb", METRIC, "1 lb", "g"),
        ("1 lb 4 oz", METRIC, "1 lb + 4 oz", "g"),
        ("7 oz", METRIC, "7 oz", "g"),
        ("2.5 kg", METRIC, "2.5 kg", "g"),
        ("8 1/4 in", METRIC, "8.25 inch", "mm"),
        ("12 cm", METRIC, "12 cm", "mm"),
        ("1 h 15 min", METRIC, "1 hour + 15 min", "min"),
        ("0.75 l", METRIC, "0.75 litre", "ml"),
        ("1.5 US cups", METRIC, "1.5 uscup", "ml"),
        ("1 1/2 metric cups", METRIC, "1.5 metriccup", "ml"),
        ("¾ UK cup", METRIC, "0.75 brcup", "ml"),
        ("6 US fl oz", METRIC, "6 usfloz", "ml"),
        ("6 UK fl oz", METRIC, "6 brfloz", "ml"),
        ("3 tbsp", METRIC, "3 brtablespoon", "ml"),
        ("3 tsp", METRIC, "3 brteaspoon", "ml"),
        ("1 cup", US, "uscup", "ml"),
        ("3 tbsp", US, "3 ustablespoon", "ml"),
        ("3 tsp", US, "3 usteaspoon", "ml"),
        ("8 fl oz", US, "uscup", "ml"),
        ("2 cups", UK, "brpint", "ml"),
        ("20 fl oz", UK, "brpint", "ml"),
        ("1 cup", AUSTRALIAN, "metriccup", "ml"),
        ("2 tbsp", AUSTRALIAN, "2 australiatablespoon", "ml"),
        ("350 °F", METRIC, "tempF(350)", "tempC"),
        ("-4 °F", METRIC, "tempF(-4)", "tempC"),
        ("32 °C", METRIC, "tempC(32)", "tempC"),
    ],
)
def test_reading_agrees_with_gnu_units(text: str, measures: Measures, have: str, want: str) -> None:
    assert read_quantity(text, measures).base == pytest.approx(gnu_units(have, want), rel=SIX_DIGITS)


@every(
    ("base", "unit", "measures", "have", "want"),
    [
        (1000, "oz", METRIC, "1000 g", "oz"),
        (1000, "lb", METRIC, "1000 g", "lb"),
        (1000, "kg", METRIC, "1000 g", "kg"),
        (250, "cup", US, "250 ml", "uscup"),
        (250, "cup", UK, "250 ml", "brcup"),
        (250, "cup", AUSTRALIAN, "250 ml", "metriccup"),
        (250, "tbsp", AUSTRALIAN, "250 ml", "australiatablespoon"),
        (250, "tsp", US, "250 ml", "usteaspoon"),
        (250, "US fl oz", METRIC, "250 ml", "usfloz"),
        (250, "fl oz", UK, "250 ml", "brfloz"),
        (250, "l", METRIC, "250 ml", "litre"),
        (203, "in", METRIC, "203 mm", "inch"),
        (203, "cm", METRIC, "203 mm", "cm"),
        (100, "h", METRIC, "100 min", "hour"),
        (170, "°F", METRIC, "tempC(170)", "tempF"),
        (170, "°C", METRIC, "tempC(170)", "tempC"),
    ],
)
def test_spelling_in_another_unit_agrees_with_gnu_units(
    base: float, unit: str, measures: Measures, have: str, want: str
) -> None:
    assert to_unit(base, unit, measures) == pytest.approx(gnu_units(have, want), rel=SIX_DIGITS)


def test_sizes_agree_with_scipy() -> None:
    same = pytest.approx
    assert same(constants.inch * 1000, rel=1e-12) == MM_PER_INCH
    assert same(constants.centi / constants.milli, rel=1e-12) == MM_PER_CM
    assert same(constants.pound * 1000, rel=1e-12) == GRAMS_PER_POUND
    assert same(constants.oz * 1000, rel=1e-12) == GRAMS_PER_OUNCE
    assert same(constants.kilo, rel=1e-12) == GRAMS_PER_KILOGRAM
    assert same(constants.liter * 1e6, rel=1e-12) == ML_PER_LITRE
    assert same(constants.fluid_ounce_US * 1e6, rel=1e-12) == ML_PER_US_FLUID_OUNCE
    assert same(constants.fluid_ounce_imp * 1e6, rel=1e-12) == ML_PER_UK_FLUID_OUNCE
    assert same(8 * constants.fluid_ounce_US * 1e6, rel=1e-12) == CUPS_ML["US cup"]
    assert same(constants.gallon_imp * 1e6 / 16, rel=1e-12) == CUPS_ML["UK cup"]


@every("degrees", [-40, -18, 0, 32, 34, 100, 121.1, 176.7, 180, 246.1])
def test_fahrenheit_agrees_with_scipy(degrees: float) -> None:
    as_f = float(constants.convert_temperature(degrees, "Celsius", "Fahrenheit"))
    assert fahrenheit(degrees) == pytest.approx(as_f, abs=1e-9)
    assert celsius(as_f) == pytest.approx(degrees, abs=1e-9)


@every("mark", [0.25, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
def test_gas_marks_agree_with_gnu_units(mark: float) -> None:
    assert gas_mark_celsius(mark) == pytest.approx(gnu_units(f"gasmark({mark})", "tempC"), rel=SIX_DIGITS)


def table(name: str) -> list[dict[str, str]]:
    """The rows of a table, without the lines that tell where it comes from."""
    with (DATA / name).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


# How the columns are rounded. A (france-travel-info.com) and C (a cookery course's hand-out, doczz.net):
# in tens, not always the nearest. B (bellaonline.com): whole degrees. D (handwiki.org, Gas mark): tenths.
@pytest.mark.parametrize(("column", "off"), [("A_C", 10.0), ("B_C", 0.5), ("C_C", 10.0), ("D_exact_C", 0.051)])
def test_gas_marks_agree_with_printed_tables(column: str, off: float) -> None:
    rows = table("oven_conversion_tables.csv")
    assert len(rows) == 11
    for row in rows:
        heat = gas_mark_celsius(float(row["gas_mark"]))
        assert fahrenheit(heat) == pytest.approx(float(row["fahrenheit"]), abs=1e-9)
        low, _, high = row[column].partition("-")
        assert float(low) - off <= heat <= float(high or low) + off


GNU_NAMES = {
    "uscup": CUPS_ML["US cup"],
    "ustablespoon": SPOONS_ML["US"][0],
    "usteaspoon": SPOONS_ML["US"][1],
    "usfloz": ML_PER_US_FLUID_OUNCE,
    "metriccup": CUPS_ML["metric cup"],
    "brcup": CUPS_ML["UK cup"],
    "brtablespoon": SPOONS_ML["metric"][0],
    "brteaspoon": SPOONS_ML["metric"][1],
    "brfloz": ML_PER_UK_FLUID_OUNCE,
    "australiatablespoon": SPOONS_ML["Australian"][0],
}


def test_measures_agree_with_the_table_taken_from_gnu_units() -> None:
    rows = {row["name"]: row for row in table("units_gnu.csv")}
    for name, size in GNU_NAMES.items():
        assert rows[name]["unit"] == "ml"
        assert size == pytest.approx(float(rows[name]["value"]), rel=SIX_DIGITS)


def test_three_teaspoons_are_a_tablespoon_and_four_an_australian_one() -> None:
    for spoons, teaspoons in (("metric", 3), ("US", 3), ("Australian", 4)):
        tablespoon, teaspoon = SPOONS_ML[spoons]
        assert tablespoon == pytest.approx(teaspoons * teaspoon, rel=1e-12)


def test_a_pinch_is_a_sixteenth_of_a_teaspoon() -> None:
    """Common practice."""
    assert read_quantity("16 pinches", US).base == pytest.approx(read_quantity("1 tsp", US).base)


def test_a_cup_is_sixteen_us_tablespoons() -> None:
    assert CUPS_ML["US cup"] == pytest.approx(16 * SPOONS_ML["US"][0], rel=1e-12)


def test_whose_cup_must_be_known() -> None:
    for unit in ("cup", "fl oz", "bucket"):
        with pytest.raises(LookupError):
            to_unit(100, unit, METRIC)
