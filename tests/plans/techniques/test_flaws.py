"""What contradicts itself in a technique, told at its place."""

from __future__ import annotations

from typing import Any

from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.plans.techniques.flaws import reached, technique_flaws


def technique(**keys: Any) -> Technique:
    base = {"name": "Stack", "purpose": "To stand.", "steps": ["Set it down."]}
    made, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert made is not None, flaws
    return made


def told(made: Technique, demo: Loaded) -> list[tuple[str, tuple[str | int, ...]]]:
    return [(flaw.code, flaw.path) for flaw in technique_flaws(made, demo.book, demo.facts)]


def test_a_step_that_waits_for_itself(demo: Loaded) -> None:
    made = technique(
        steps=[
            {"do": "One.", "called": "one", "after": ["three"]},
            {"do": "Two.", "called": "two", "after": ["one"]},
            {"do": "Three.", "called": "three", "after": ["two"]},
        ]
    )
    assert told(made, demo) == [("waits for itself", ("steps", index, "after")) for index in range(3)]


def test_windows_that_contradict(demo: Loaded) -> None:
    made = technique(
        steps=[
            {"do": "One.", "stands": "2 days", "keeps": "12 h"},
            {"do": "Two.", "ahead": "3 days", "keeps": "1 day"},
            {"do": "Three.", "stands": "12 h", "keeps": "12 h", "ahead": "12 h"},
        ]
    )
    assert told(made, demo) == [("windows", ("steps", 0, "stands")), ("windows", ("steps", 1, "ahead"))]


@every(
    ("keys", "flaw"),
    [
        ({"steps": [{"do": "x", "after": ["y"]}]}, ("no such step", ("steps", 0, "after", 0))),
        ({"steps": [{"do": "x", "picture": "y.svg"}]}, ("no picture", ("steps", 0, "picture"))),
        ({"care": ["sharks"]}, ("unknown word", ("care", 0))),
        (
            {"pictures": [{"file": "a.svg", "alt": "A."}, {"file": "a.svg", "alt": "A."}]},
            ("twice", ("pictures", 1, "file")),
        ),
        (
            {"steps": [{"do": "x", "called": "a"}, {"do": "y", "called": "a"}]},
            ("twice", ("steps", 1, "called")),
        ),
        ({"materials": ["300 g sugarpaste"], "steps": ["Roll <sugarpase>."]}, ("step", ("steps", 0, "do"))),
    ],
)
def test_slips_are_told_at_their_place(
    demo: Loaded, keys: dict[str, Any], flaw: tuple[str, tuple[object, ...]]
) -> None:
    assert told(technique(**keys), demo) == [flaw]


def test_what_is_reached() -> None:
    assert reached({0: (1,), 1: (2,), 2: (), 3: (0,)}, 3) == {0, 1, 2}
