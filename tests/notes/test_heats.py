"""The heat of an oven in a note's spellings; where they disagree, or nobody says in what, it stays open."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.notes.heats import WORDS, agreed, heats


@every(
    ("text", "heat"),
    [
        ("180C", "180 °C"),
        ("180°C (160°C fan-forced)", "180 °C"),
        ("160C/140C fan/gas 3", "160 °C"),
        ("180C, 160C fan or gas 4", "180 °C"),
        ("170C fan", "170 °C fan"),
        ("fan 170C", "170 °C fan"),
        ("160°C fan 35-40 min", "160 °C fan"),
        ("180C fan 160", "180 °C"),
        ("Gas 4", "gas mark 4"),
        ("gas mark ½", "gas mark 1/2"),
        ("350F", "350 °F"),
        ("350°F (177°C)", "177 °C"),
        ("160 degrees C", "160 °C"),
    ],
)
def test_what_is_read(text: str, heat: str) -> None:
    assert agreed(list(heats(text, fahrenheit=False))) == (heat, "")


def test_degrees_of_no_kind_are_those_of_the_kitchen() -> None:
    assert agreed(list(heats("350°", fahrenheit=True)))[0] == "350 °F"
    assert agreed(list(heats("350°", fahrenheit=False)))[0] == ""


@every("text", ["170 fan", "180C then 140C", "180C/gas 7", "170-180C", "gas 3-4", "350 degrees"])
def test_what_stays_open(text: str) -> None:
    heat, why = agreed(list(heats(text, fahrenheit=False)))
    assert heat == "" and why


@every("text", ["45 minutes", "20cm", "250 g", "71C", "97 °C", "gas mark 0", "a moderate oven"])
def test_what_is_no_heat_of_an_oven(text: str) -> None:
    assert list(heats(text, fahrenheit=True)) == []


@pytest.mark.parametrize("text", ["a moderate oven", "in a slow oven", "rather hot oven", "a very cool oven"])
def test_ovens_in_words(text: str) -> None:
    assert WORDS.search(text)
