"""Numbers as a baker writes them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.units import Misread, read_number


@every(
    ("text", "value"),
    [
        ("250", 250.0),
        ("0.5", 0.5),
        ("007", 7.0),
        ("1,250", 1250.0),
        ("1,250.5", 1250.5),
        ("12,345,678", 12345678.0),
        ("1/2", 0.5),
        ("3/2", 1.5),
        ("1 / 2", 0.5),
        ("1⁄2", 0.5),
        ("1 1/2", 1.5),
        ("2\u00a03/4", 2.75),
        ("½", 0.5),
        ("1½", 1.5),
        ("1 ½", 1.5),
        ("¼", 0.25),
        ("¾", 0.75),
        ("⅓", 1 / 3),
        ("2⅔", 8 / 3),
        ("⅛", 0.125),
        ("⅜", 0.375),
        ("⅝", 0.625),
        ("⅞", 0.875),
        ("⅕", 0.2),
        ("⅖", 0.4),
        ("⅗", 0.6),
        ("⅘", 0.8),
        ("⅙", 1 / 6),
        ("⅚", 5 / 6),
        ("1/16", 0.0625),
    ],
)
@every("after", ["", " g", "g", ", soft", "-2", ". Beat"])
def test_the_forms_of_a_number(text: str, value: float, after: str) -> None:
    found, end = read_number(text + after, 0)
    assert found == pytest.approx(value)
    assert end == len(text)


def test_a_number_in_the_middle() -> None:
    assert read_number("bake 1 1/2 h", 5) == (1.5, 10)


@every(
    ("text", "message", "hint", "piece"),
    [
        ("", "nothing is written here", "write an amount, such as 250 g", ""),
        ("  ", "nothing is written here", "write an amount, such as 250 g", "  "),
        ("butter, soft", 'no number before "butter"', "write the amount first, such as 250 g", "butter"),
        ("2,5 cm", '"2,5" has a comma in it', "write 2.5", "2,5"),
        ("0,125 kg", '"0,125" has a comma in it', "write 0.125", "0,125"),
        ("1,25", '"1,25" has a comma in it', "write 1.25", "1,25"),
        ("1,2500 g", '"1,2500" has a comma in it', "write the number without commas", "1,2500"),
        ("12,34,567 g", '"12,34,567" has a comma in it', "write the number without commas", "12,34,567"),
        ("1250,500 g", '"1250,500" has a comma in it', "write the number without commas", "1250,500"),
        (".5 g", '".5" starts with a decimal point', "write 0.5", ".5"),
        ("-5 g", '"-5" has a sign in front of it', "write 5", "-5"),
        ("−5 g", '"−5" has a sign in front of it', "write 5", "−5"),
        ("+½ g", '"+½" has a sign in front of it', "write ½", "+½"),
        ("1/0 g", '"1/0" divides by zero', "write 1/2", "1/0"),
        ("1 3/2 g", '"1 3/2" has a fraction of one or more', "write 1 1/2, or 3/2", "1 3/2"),
        ("1.2.3 g", '"1.2.3" is not a number', "write 250, 0.5, 1/2, 1 1/2 or 1½", "1.2.3"),
        ("1/2/3 g", '"1/2/" is not a number', "write 250, 0.5, 1/2, 1 1/2 or 1½", "1/2/"),
        ("½½ g", '"½½" is not a number', "write 250, 0.5, 1/2, 1 1/2 or 1½", "½½"),
        ("NaN g", '"NaN" is not an amount', "write a number, such as 250 g", "NaN"),
        ("inf g", '"inf" is not an amount', "write a number, such as 250 g", "inf"),
        ("Infinity g", '"Infinity" is not an amount', "write a number, such as 250 g", "Infinity"),
        ("six eggs", 'the number is written as a word, "six"', "write 6", "six"),
        ("a pinch", 'the number is written as a word, "a"', "write 1", "a"),
        ("Half a lemon", 'the number is written as a word, "Half"', "write 1/2", "Half"),
        ("٣ g", 'no number before "٣"', "write the amount first, such as 250 g", "٣"),
        ("9" * 400, f'"{"9" * 20}" is too long to be an amount', "check the number", "9" * 400),
    ],
)
def test_what_is_no_number(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_number(text, 0)
    misread = told.value
    assert (misread.message, misread.hint) == (message, hint)
    assert str(misread) == message
    assert text[misread.start : misread.end] == piece


def test_an_example_that_fits() -> None:
    with pytest.raises(Misread) as told:
        read_number("hot", 0, "180 °C")
    assert told.value.hint == "write the amount first, such as 180 °C"


@given(st.integers(0, 999), st.integers(1, 63), st.integers(2, 64))
def test_fractions_are_exact_to_the_last_bit_but_one(whole: int, top: int, low: int) -> None:
    if top >= low:
        return
    value, end = read_number(text := f"{whole} {top}/{low} g", 0)
    assert end == len(text) - 2
    assert value == pytest.approx(float(whole + Fraction(top, low)), rel=1e-15)


@given(st.integers(0, 10**9), st.integers(0, 9999))
def test_thousands_and_decimals_agree_with_python(whole: int, decimals: int) -> None:
    number = float(f"{whole}.{decimals:04}")
    assert read_number(f"{whole}.{decimals:04}", 0)[0] == number
    assert read_number(f"{whole:,}.{decimals:04}", 0)[0] == number
