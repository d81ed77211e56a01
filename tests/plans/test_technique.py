"""A technique's kit, times, cautions, and what contradicts itself."""

from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.plans.technique import (
    kit,
    material_share,
    reached,
    technique_bench,
    technique_cautions,
    technique_flaws,
    technique_times,
)


def technique(**keys: Any) -> Technique:
    base = {"name": "Stack", "purpose": "To stand.", "steps": ["Set it down."]}
    made, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert made is not None, flaws
    return made


def told(made: Technique, demo: Loaded) -> list[tuple[str, tuple[str | int, ...]]]:
    return [(flaw.code, flaw.path) for flaw in technique_flaws(made, demo.book, demo.facts)]


def test_kit_for_a_class(demo: Loaded) -> None:
    made = technique(
        tools=["smoother", {"tool": "turntable", "shared": "yes"}],
        materials=["300 g sugarpaste", "2 tsp cellulose gum", {"take": "5 dowels", "not food": "yes"}],
    )
    four = kit(made, demo.book, demo.facts, 4)
    assert [tool.count for tool in four.tools] == [4, 1]
    assert [(row.amount.shown, row.amount.unit) for row in four.materials] == [(1200, "g"), (8, "tsp"), (20, "")]
    assert four.not_food == (("dowels", 20.0),)


@pytest.mark.parametrize("people", [0, -1, 100])
def test_nobody_and_too_many(demo: Loaded, people: int) -> None:
    with pytest.raises(ValueError, match="people"):
        kit(technique(), demo.book, demo.facts, people)


def test_a_house_mixture_is_known_by_its_name(demo: Loaded) -> None:
    (row,) = kit(technique(materials=["250 g Pilot's buttercream"]), demo.book, demo.facts).materials
    assert (row.mixture, row.name) == ("american-buttercream", "Pilot's buttercream")


def test_shares_of_a_material(demo: Loaded) -> None:
    (row,) = kit(technique(materials=["300 g sugarpaste"]), demo.book, demo.facts).materials
    assert material_share(row, 0.5, demo.book).shown == 150


def test_times_add_up(demo: Loaded) -> None:
    made = technique(
        steps=[
            {"do": "Roll.", "hands on": "8 min", "ahead": "2 days"},
            {"do": "Dry.", "waiting": "12-24 h"},
            {"do": "Set.", "hands on": "5-10 min"},
        ]
    )
    times = technique_times(made)
    assert (times.steps.hands_on_low_min, times.steps.hands_on_high_min) == (13, 18)
    assert (times.steps.waiting_low_min, times.steps.waiting_high_min) == (720, 1440)
    assert (times.ahead_low_min, times.ahead_high_min) == (8, 8)


def test_what_is_not_food_and_small_hard_parts_bring_their_cautions(demo: Loaded) -> None:
    def keys(made: Technique) -> set[str]:
        return {caution.key for caution in technique_cautions(made, demo.book, demo.facts)}

    bare = keys(technique())
    dowels = keys(technique(materials=[{"take": "5 dowels", "not food": "yes"}]))
    pearls = keys(technique(materials=[{"take": "20 pearls", "small hard": "yes"}]))
    assert bare == set()
    assert dowels and pearls and dowels != pearls


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


@pytest.mark.parametrize(
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


def test_the_browser_is_handed_one_persons_kit(demo: Loaded) -> None:
    made = technique(tools=[{"tool": "saw", "count": "2", "shared": "yes"}], materials=["300 g sugarpaste"])
    handed = technique_bench(made, demo.book, demo.facts)
    assert handed.tools == ((2, True),)
    assert (handed.lines[0].unit, handed.lines[0].amount, handed.lines[0].mass_g) == ("g", 300, 300)
