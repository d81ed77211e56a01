"""Heats of an oven named in a text, and what is set on the house's own dial for each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, House, Mixture
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.dials import dials_in

FAN = {"kind": "fan", "dial": "160 °C fan", "thermometer": "165 °C"}
"""5 °C cooler than a fan oven that shows 160 °C should be: its dial goes 15 °C below a plain oven's, not 20 °C."""


@every(
    ("text", "told"),
    [
        ("Heat the oven to 170 °C, shelf in the middle.", ["170 °C|145 °C fan"]),
        # another than the bake's, in a sentence that names the oven, and in one that does not
        ("Toast them in the oven at 150 °C.", ["150 °C|125 °C fan"]),
        ("Cook the syrup to 118 °C. Leave it in the cooling oven.", []),
        # the recipe's own heat is the oven's, whatever stands beside it
        ("Bake at 160 °C until the middle reads 97 °C.", ["160 °C|135 °C fan"]),
        ("Keep it in the oven until its middle reads 97 °C.", []),
        ("Turn the oven from 180 °C down to 150 °C.", ["180 °C|155 °C fan", "150 °C|125 °C fan"]),
        # spelled twice it is told once
        ("Heat the oven to 180 °C (160 °C fan, gas 4).", ["180 °C|155 °C fan"]),
        ("Heat the oven to 160 °C fan.", ["160 °C fan|155 °C fan"]),
        ("Set the oven to gas mark 4 and line the tin.", ["gas mark 4|150 °C fan"]),
        ("Heat the oven to 350 °F.", ["350 °F|150 °C fan"]),
        ("Heat the oven well. Roll 1.5 cm thick.", []),
        ("An oven of 160–170 °C will do.", []),
        ("No oven reaches 450 °C.", []),
    ],
)
def test_heats_in_a_text(
    kitchen: Book, house: Callable[..., House], mixture: Callable[..., Mixture], facts: Facts,
    text: str, told: list[str],
) -> None:  # fmt: skip
    """The dials by hand: 20 °C less for the fan and 5 °C less as the oven runs hot, to the nearest 5 °C."""
    book = replace(kitchen, house=house(oven=FAN))
    bake = mixture(bake={"oven": "160 °C", "time": "40 min"}).bake
    found = dials_in(text, bake, book, facts)
    assert [f"{text[each.start : each.end]}|{spell(each.dial)}" for each in found] == told


def test_an_oven_as_it_says_needs_no_word(kitchen: Book, facts: Facts) -> None:
    assert list(dials_in("Heat the oven to 170 °C.", None, kitchen, facts)) == []
