"""Rules between the fields of the house and of its tins. The words a baker is shown are in tests/source/bad."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Flaw, House, ShelfLine, read_model
from tinbook.plans.rules.house import house_flaws, tin_flaws
from tinbook.tins import read_tin
from tinbook.tins.measured import MOST_OFF


def only(flaws: Iterable[Flaw]) -> Flaw:
    (flaw,) = flaws
    assert flaw.message and flaw.hint
    return flaw


def test_an_egg_class_nobody_grades(house: Callable[..., House], facts: Facts) -> None:
    flaw = only(house_flaws(house(eggs="UK larg"), facts))
    assert (flaw.path, '"UK large"' in flaw.hint) == (("eggs",), True)
    assert not tuple(house_flaws(house(), facts))


def test_the_house_cannot_be_private(house: Callable[..., House], facts: Facts) -> None:
    assert only(house_flaws(house(private="yes"), facts)).path == ("private",)
    assert not tuple(house_flaws(house(private=["mixer bowl"]), facts))


PATH = "outline M0 0H120V200H0Z x 7.5 cm"


def shelf_line(**keys: Any) -> ShelfLine:
    line, flaws = read_model(ShelfLine, keys, "a tin")
    assert line is not None, flaws
    return line


@every(
    ("keys", "path", "words"),
    [
        ({"tin": "round 20 cm x 7.5 cm", "name": "old one"}, "name", "only an outline has a name of its own"),
        (
            {"tin": "set of round 10, 15 cm x 7.5 cm", "measured": "500 ml"},
            "measured",
            "a set cannot be measured as one tin",
        ),
        ({"tin": "round 20 cm", "measured": "2000 ml"}, "tin", "needs its depth"),
        ({"tin": PATH}, "tin", "needs a name"),
        ({"tin": PATH, "name": "Number 4"}, "name", "another tin is already called"),
        ({"tin": PATH, "name": "4th"}, "name", "cannot be called"),
        ({"tin": PATH, "name": "round 20 cm"}, "name", "is the name of another tin"),
    ],
)
def test_a_tin_that_cannot_be(keys: dict[str, Any], path: str, words: str) -> None:
    flaw = only(tin_flaws(shelf_line(**keys), ["number 4"]))
    assert flaw.path == (path,)
    assert words in flaw.message


def test_an_outline_with_a_name_of_its_own() -> None:
    assert not tuple(tin_flaws(shelf_line(tin=PATH, name="number 5"), ["number 4"]))


@pytest.mark.parametrize(("times", "sound"), [(1.0, True), (0.99 * MOST_OFF, True), (1.01 * MOST_OFF, False)])
def test_a_measure_far_off_the_sizes(times: float, sound: bool) -> None:
    brim_ml = read_tin("round 20 cm x 7.5 cm")[1].brim_ml()
    for measured_ml in (brim_ml * times, brim_ml / times):
        line = shelf_line(tin="round 20 cm x 7.5 cm", measured=f"{measured_ml:.0f} ml")
        assert len(tuple(tin_flaws(line, []))) == (0 if sound else 1)
