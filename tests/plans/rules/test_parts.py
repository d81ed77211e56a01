"""Rules between the fields of parts. The words a baker is shown are in tests/source/bad."""

from __future__ import annotations

from typing import Any

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, Colour, Technique, read_model
from tinbook.plans.rules.fields import FOLLOWS
from tinbook.plans.rules.parts import colour_flaws, part_flaws

PART = {"part": "a", "solid": "ball 20 mm", "paste": "sugarpaste"}
OTHER = {**PART, "part": "b"}


def flaws(kitchen: Book, facts: Facts, lost: tuple[str, ...] = (), **keys: Any) -> list[Any]:
    tree = {"name": "x", "purpose": "y", "steps": ["z"], "parts for": "round 20 cm", "parts": [PART], **keys}
    technique, wrong = read_model(Technique, tree, "it")
    assert technique is not None, wrong
    return list(part_flaws(technique, kitchen, facts, lost))


def test_a_sound_one(kitchen: Book, facts: Facts) -> None:
    assert flaws(kitchen, facts) == []
    assert flaws(kitchen, facts, repeats=[{"repeat": "dents", "on": "a", "mark": "2 mm", "gap": "1 mm"}]) == []


@every(
    ("keys", "path"),
    [
        ({"parts": []}, ("parts for",)),
        ({"parts for": "round 40 cm"}, ("parts for",)),
        ({"parts": [PART, PART]}, ("parts", 1, "part")),
        ({"parts": [{**PART, "thick": "1 mm"}]}, ("parts", 0, "thick")),
        ({"parts": [{**PART, "stands on": "c"}, OTHER]}, ("parts", 0, "stands on")),
        ({"parts": [{**PART, "lies on": "a"}, OTHER]}, ("parts", 0, "lies on")),
        ({"parts": [{**PART, "stands on": "b", "lies on": "b"}, OTHER]}, ("parts", 0, "lies on")),
        ({"parts": [{**PART, "up": "1/3"}, OTHER]}, ("parts", 0, "up")),
        ({"parts": [{**PART, "lies on": "b", "up": ["1/3", "2/3"]}, OTHER]}, ("parts", 0, "up")),
        ({"parts": [{**PART, "across": "1/3"}, OTHER]}, ("parts", 0, "across")),
        ({"parts": [{**PART, "lies on": "b", "across": ["0", "1"]}, OTHER]}, ("parts", 0, "across")),
        ({"parts": [{**PART, "lies on": "b", "turned": ["10°", "20°"]}, OTHER]}, ("parts", 0, "turned")),
        ({"parts": [{**PART, "behind": "1"}, OTHER]}, ("parts", 0, "behind")),
        ({"parts": [{**PART, "lies on": "b", "behind": "2"}, OTHER]}, ("parts", 0, "behind")),
        ({"parts": [{**PART, "lies on": "b", "sunk": "1 mm"}, OTHER]}, ("parts", 0, "sunk")),
        ({"parts": [{**PART, "upright": "yes"}, OTHER]}, ("parts", 0, "upright")),
        ({"parts": [{**PART, "laid": "yes"}, OTHER]}, ("parts", 0, "laid")),
        (
            {"repeats": [{"repeat": "d", "on": "a", "mark": "2 mm", "gap": "1 mm", "thick": "1 mm"}]},
            ("repeats", 0, "thick"),
        ),
        (
            {"repeats": [{"repeat": "d", "on": "top of the cake", "mark": "1 mm", "gap": "0.5 mm"}]},
            ("repeats", 0, "gap"),
        ),
    ],
)
def test_what_cannot_be(keys: dict[str, Any], path: tuple[Any, ...], kitchen: Book, facts: Facts) -> None:
    (flaw,) = flaws(kitchen, facts, **keys)
    assert flaw.path == path
    assert flaw.hint


def test_no_part_stands_on_itself(kitchen: Book, facts: Facts) -> None:
    under = {"a": "b", "b": "c", "c": "a", "d": "a"}
    parts = [{**PART, "part": name, "stands on": on} for name, on in under.items()]
    told = flaws(kitchen, facts, parts=parts)
    assert [flaw.path for flaw in told] == [("parts", nth, "stands on") for nth in range(3)]
    sound = [PART, {**OTHER, "stands on": "a"}, {**PART, "part": "c", "count": "2", "lies on": "a", "up": ["0", "1"]}]
    assert flaws(kitchen, facts, parts=sound) == []


def test_what_is_told_elsewhere_is_not_told_again(kitchen: Book, facts: Facts) -> None:
    part = {**PART, "colour": "lamp red"}
    assert [flaw.code for flaw in flaws(kitchen, facts, parts=[part])] == ["unknown colour"]
    assert [flaw.code for flaw in flaws(kitchen, facts, ("lamp red",), parts=[part])] == [FOLLOWS]


@pytest.mark.parametrize(("additives", "count"), [("none", 0), (["E129"], 0), (["none", "E129"], 1), (["E999"], 1)])
def test_additives(additives: Any, count: int, facts: Facts) -> None:
    colour, _ = read_model(Colour, {"per 100 g": "2 g gel", "swatch": "#112233", "additives": additives}, "it")
    assert colour is not None
    assert len(list(colour_flaws(colour, facts))) == count
