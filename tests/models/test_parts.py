"""Parts and repeats, typed."""

from __future__ import annotations

from typing import Any

from tests.every import every

from tinbook.models import Technique, read_model

BASE: dict[str, Any] = {"name": "A buoy", "purpose": "For the side.", "steps": ["Roll it."], "parts for": "round 8 in"}


def test_a_part_in_bench_spelling() -> None:
    part = {
        "part": "buoy", "solid": "ball 12 mm", "count": "3", "paste": "modelling-paste", "weighed": "1.3 g", "on": "side",
        "support": {"what": "cocktail stick", "length": "6 mm", "in the cake": "3 cm"},
    }  # fmt: skip
    repeat = {"repeat": "dents", "on": "buoy", "mark": "2 mm", "gap": "2 mm", "set": "straight"}
    technique, flaws = read_model(Technique, {**BASE, "parts": [part], "repeats": [repeat]}, "it")
    assert not flaws
    assert technique is not None
    assert technique.parts_for is not None
    assert technique.parts_for.name == "round 20 cm"
    (made,) = technique.parts
    assert (made.form, made.count, made.weighed, made.on) == ("solid", 3, 1.3, "side")
    assert made.support is not None
    assert (made.support.count, made.support.length, made.support.in_the_cake) == (1, 6.0, 30.0)
    assert (made.support.goes_in, technique.repeats[0].set) == ("from behind", "straight")


@every(
    ("key", "value", "told"),
    [
        ("on", "roof", "not one of the choices"),
        ("count", "0", "whole number"),
        ("colur", "red", "unknown key"),
        ("thick", "1", ""),
        ("up", "10/3", "not a place on a part"),
        ("up", "1/3 of it", "not a place on a part"),
    ],
)
def test_what_cannot_be(key: str, value: str, told: str) -> None:
    part = {"part": "buoy", "solid": "ball 12 mm", "paste": "modelling-paste", key: value}
    technique, flaws = read_model(Technique, {**BASE, "parts": [part]}, "it")
    assert technique is None
    assert told in flaws[0].message


def test_two_forms_are_none() -> None:
    part = {"part": "buoy", "solid": "ball 12 mm", "rope": "6 mm x 90 mm", "paste": "p"}
    technique, _ = read_model(Technique, {**BASE, "parts": [part]}, "it")
    assert technique is not None
    assert technique.parts[0].form == ""
