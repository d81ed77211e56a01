"""The paste among the materials against what the parts take. The words a baker is shown are in tests/source/bad."""

from __future__ import annotations

from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, Technique, read_model
from tinbook.plans.rules.pastes import paste_flaws


def technique(**keys: Any) -> Technique:
    said = {"name": "A buoy", "purpose": "For the front.", "steps": ["Model it."], **keys}
    made, flaws = read_model(Technique, said, "it")
    assert made is not None, flaws
    return made


PARTS = {
    "parts for": "round 20 cm",
    "parts": [{"part": "buoy", "sheet": "rectangle 50 mm x 40 mm", "thick": "10 mm", "paste": "water"}],
}
"""20 ml of what weighs 1 g/ml."""


@pytest.mark.parametrize(("materials", "index"), [(["19 g water"], 0), (["50 g butter", "12 g water", "7 g water"], 1)])
def test_less_than_the_parts_take(materials: list[str], index: int, kitchen: Book, facts: Facts) -> None:
    (flaw,) = paste_flaws(technique(**PARTS, materials=materials), kitchen, facts)
    assert (flaw.code, flaw.path) == ("paste", ("materials", index))
    assert "take 20 g of water, but only 19 g is listed" in flaw.message and "at least 20 g" in flaw.hint


@pytest.mark.parametrize("materials", [["20 g water"], ["30 g water"], ["12 g water", "8 g water"], ["5 g butter"]])
def test_enough_or_not_among_them(materials: list[str], kitchen: Book, facts: Facts) -> None:
    assert not list(paste_flaws(technique(**PARTS, materials=materials), kitchen, facts))


def test_a_technique_without_parts(kitchen: Book, facts: Facts) -> None:
    assert not list(paste_flaws(technique(materials=["1 g water"]), kitchen, facts))
