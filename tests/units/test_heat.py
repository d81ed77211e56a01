"""The heat of an oven, and shares in per cent."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.units import FAN_DIFFERENCE_C, Heat, Misread, read_heat, read_percent, read_temperature


@every(
    ("text", "celsius", "fan"),
    [
        ("180 °C", 180, False),
        ("180°C", 180, False),
        ("180C", 180, False),
        ("180 degrees C", 180, False),
        ("  180   °C ", 180, False),
        ("160 °C fan", 180, True),
        ("160C fan", 180, True),
        ("160 °C (fan)", 180, True),
        ("160 °C, fan oven", 180, True),
        ("fan 160 °C", 180, True),
        ("Fan oven 160 °C", 180, True),
        ("160 °C convection", 180, True),
        ("350 °F", 176.667, False),
        ("350F", 176.667, False),
        ("320 °F fan", 180, True),
        ("gas mark 4", 176.667, False),
        ("Gas Mark 4", 176.667, False),
        ("gas 4", 176.667, False),
        ("mark 4", 176.667, False),
        ("gas mark4", 176.667, False),
        ("gas mark 1/4", 107.222, False),
        ("gas mark ½", 121.111, False),
        ("gas mark 9", 246.111, False),
        ("40 °C", 40, False),
        ("300 °C", 300, False),
    ],
)
def test_the_forms_of_a_heat(text: str, celsius: float, fan: bool) -> None:
    heat = read_heat(text)
    assert heat.celsius == pytest.approx(celsius, abs=1e-3)
    assert heat.fan is fan
    assert heat.written == " ".join(text.split())


def test_a_fan_oven_is_set_twenty_degrees_lower() -> None:
    """Common practice: printed in the fan column of tests/data/oven_conversion_tables.csv too."""
    assert FAN_DIFFERENCE_C == 20
    assert read_heat("160 °C fan") == Heat(read_heat("180 °C").celsius, True, "160 °C fan")


@every(
    ("text", "message", "hint", "piece"),
    [
        ("", "nothing is written here", "write an amount, such as 180 °C", ""),
        ("hot", 'no number before "hot"', "write the amount first, such as 180 °C", "hot"),
        ("180", 'is "180" in °C or °F?', "write 180 °C or 180 °F", "180"),
        ("180 deg", 'is "180" in °C or °F?', "write 180 °C or 180 °F", "180"),
        ("350 °C", '"350 °C" is hotter than a kitchen oven', "did you mean 350 °F?", "350 °C"),
        ("350C", '"350C" is hotter than a kitchen oven', "did you mean 350 °F?", "350C"),
        ("700 °F", '"700 °F" is hotter than a kitchen oven', "check the number", "700 °F"),
        ("20 °C", '"20 °C" is too cool for an oven', "check the number and the unit", "20 °C"),
        ("-180 °C", '"-180" has a sign in front of it', "write 180", "-180"),
        ("180 g", '"180 g" is not an oven temperature', "write 180 °C, 350 °F or gas mark 4", "180 g"),
        ("gas mark 12", "there is no gas mark 12", "write 1/4, 1/2 or 1 to 10", "12"),
        ("gas mark 1/3", "there is no gas mark 1/3", "write 1/4, 1/2 or 1 to 10", "1/3"),
        ("gas mark", "no number", "write the amount first, such as gas mark 4", ""),
        ("gas 4 fan", "a gas mark is for an oven without a fan", "leave out fan, or write °C", "gas 4 fan"),
        (
            "180 °C / gas 4",
            '"/ gas 4" is left over after the temperature',
            "write one; the book works out the others",
            "/ gas 4",
        ),
        (
            "180 °C (160 °C fan)",
            '"(160 °C fan)" is left over after the temperature',
            "write one; the book works out the others",
            "(160 °C fan)",
        ),
        (
            "180 °C 10 min",
            '"10 min" is left over after the temperature',
            "write 180 °C, 160 °C fan, 350 °F or gas mark 4",
            "10 min",
        ),
        (
            "fan 160 °C fan",
            '"fan" is left over after the temperature',
            "write 180 °C, 160 °C fan, 350 °F or gas mark 4",
            "fan",
        ),
    ],
)
def test_what_is_no_heat(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_heat(text)
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


@every(
    ("text", "share"),
    [
        ("25 %", 0.25),
        ("25%", 0.25),
        ("2.5 per cent", 0.025),
        ("½ %", 0.005),
        ("0 %", 0),
        (" 130 percent ", 1.3),
    ],
)
def test_per_cent(text: str, share: float) -> None:
    assert read_percent(text) == pytest.approx(share)


@every(
    ("text", "message", "hint", "piece"),
    [
        ("25", 'no % after "25"', "write 25 %", "25"),
        ("0.25", 'no % after "0.25"', "write 25 %", "0.25"),
        ("25 g", 'no % after "25"', "write 25 %", "25 g"),
        ("25 % off", '"off" is left over after the %', "leave it out", "off"),
        ("5000 %", '"5000 %" is more than 1000 %', "check the number", "5000"),
        ("-5 %", '"-5" has a sign in front of it', "write 5", "-5"),
        ("some", 'no number before "some"', "write the amount first, such as 25 %", "some"),
    ],
)
def test_what_is_no_share(text: str, message: str, hint: str, piece: str) -> None:
    with pytest.raises(Misread) as told:
        read_percent(text)
    assert (told.value.message, told.value.hint) == (message, hint)
    assert text[told.value.start : told.value.end] == piece


PIECES = [
    "gas",
    "mark",
    "fan",
    "°C",
    "C",
    "F",
    "180",
    "4",
    "1/4",
    "½",
    "%",
    "per cent",
    " ",
    "-",
    "/",
    "(",
    ")",
    ".",
    "é",
]


@many(1000)
@given(st.text(max_size=30) | st.lists(st.sampled_from(PIECES), max_size=8).map(" ".join))
def test_any_text_is_read_or_misread(text: str) -> None:
    for reader in (read_heat, read_percent):
        try:
            reader(text)
        except Misread as misread:
            assert misread.message and misread.hint
            assert 0 <= misread.start <= misread.end <= len(text)


@pytest.mark.parametrize(
    ("text", "celsius"), [("97 °C", 97.0), (" 206 °F ", 96.6667), ("4C", 4.0), ("98.5 degrees C", 98.5)]
)
def test_how_warm_something_is(text: str, celsius: float) -> None:
    assert read_temperature(text) == pytest.approx(celsius, abs=1e-3)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("97", 'is "97" in °C or °F?'),
        ("97 g", 'is "97" in °C or °F?'),
        ("97 °C fan", '"fan" is left over'),
        ("warm", ""),
    ],
)
def test_how_warm_is_said_with_its_degrees(text: str, told: str) -> None:
    with pytest.raises(Misread) as caught:
        read_temperature(text)
    assert told in caught.value.message and caught.value.hint
