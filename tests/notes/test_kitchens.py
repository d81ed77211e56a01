"""Whose kitchen a note comes from: by its own marks, and unknown where they are missing or disagree."""

from __future__ import annotations

import pytest
from tests.every import every

from tinbook.notes.kitchens import KITCHENS, kitchen_of
from tinbook.units import UNITS


@every(
    ("text", "name"),
    [
        ("2 sticks butter\n2 cups flour", "US"),
        ("1 (1 stick) butter", "US"),
        ("3 cups all-purpose flour", "US"),
        ("Bake at 350F", "US"),
        ("1 3/4 c. flour", "US"),
        ("225 g self-raising flour", "UK"),
        ("gas 4", "UK"),
        ("250 g caster sugar\nAustralian cup measures", "Australian"),
        ("160°C fan-forced\n1 cup caster sugar", "southern"),
        ("1 cup = 250 ml", "metric"),
        ("1 cup flour\n2 eggs", ""),
        ("all-purpose flour\ncaster sugar", ""),
    ],
)
def test_told_by_its_marks(text: str, name: str) -> None:
    assert kitchen_of(text).name == name


def test_where_only_the_cups_are_told_a_tablespoon_is_not() -> None:
    """New Zealand's holds 15 ml and Australia's 20 ml; their cups both hold 250 ml (GNU units: metriccup, tablespoons)."""
    kitchen = kitchen_of("160°C fan-forced")
    assert kitchen.cup == "metric cup" and kitchen.tablespoon == ""


@pytest.mark.parametrize("name", list(KITCHENS))
def test_every_kitchen_has_measures_the_book_knows(name: str) -> None:
    kitchen = KITCHENS[name]
    for unit in (kitchen.cup, kitchen.tablespoon, kitchen.teaspoon, kitchen.fluid_ounce):
        assert not unit or unit in UNITS
