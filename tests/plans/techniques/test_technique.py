"""A technique's kit, times, cautions, and what contradicts itself."""

from dataclasses import replace
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.plans.techniques.technique import (
    MaterialRow,
    in_measure,
    kit,
    material_share,
    reached,
    technique_allergens,
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
    assert [(each.name, each.amount.shown) for each in four.not_food] == [("dowels", 20.0)]


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
    board = keys(technique(materials=[{"take": "1 cake drum, round 30 cm", "not food": "yes"}]))
    assert bare == set() == board
    assert dowels and pearls and dowels != pearls


@pytest.mark.parametrize(
    ("name", "hidden"),
    [
        ("cake card", False), ("boards", False), ("sheet baking paper", False), ("ribbon", False), ("dowels", True),
        ("paper straw", True), ("card pick", True), ("cocktail stick", True), ("armature", True),
    ],
)  # fmt: skip
def test_what_may_be_hidden_in_a_cake(demo: Loaded, name: str, hidden: bool) -> None:
    """What lies open when a cake is cut is common practice; what is not known to is taken as hidden."""
    made = technique(tools=[{"tool": f"{name}, 15 cm", "not food": "yes"}])
    (one,) = kit(made, demo.book, demo.facts).not_food
    assert (one.name, one.wanted, one.hidden) == (name, "15 cm", hidden)


def test_allergens_of_materials_and_mixtures(demo: Loaded) -> None:
    made = technique(
        materials=["150 g Pilot's buttercream", "300 g sugarpaste", "1 coated cake", {"take": "5 dowels", "not food": "yes"}],
        mixtures=["madeira-cake"],
    )  # fmt: skip
    strip = technique_allergens(made, demo.book, demo.facts)
    assert strip is not None
    named = {each.allergen: each.ingredients for each in strip.contains}
    assert named["milk"] == ("Pilot's buttercream", "Lighthouse Madeira")
    assert named["wheat"] == named["egg"] == ("Lighthouse Madeira",)
    # no card says what a sugarpaste or a strange cake holds
    assert {"sugarpaste", "coated cake"} <= set(strip.unknown)
    assert technique_allergens(technique(), demo.book, demo.facts) is None


def test_a_mixture_that_is_partly_unknown_is_not_free(demo: Loaded) -> None:
    cards = dict(demo.book.cards)
    cards["icing sugar"] = cards["icing sugar"].model_copy(update={"allergens": None})
    book = replace(demo.book, cards=cards)
    strip = technique_allergens(technique(**{"works with": ["Pilot's buttercream"]}), book, demo.facts)
    assert strip is not None
    assert [each.allergen for each in strip.contains] == ["milk"]
    assert strip.unknown == ("some of Pilot's buttercream",)


def test_amounts_in_every_measure(demo: Loaded) -> None:
    """28.349523125 g to the ounce: International yard and pound agreement, 1959."""
    made = technique(materials=["454 g butter", "5 dowels", "300 g sugarpaste"])
    butter, dowels, paste = kit(made, demo.book, demo.facts).materials

    def told(row: MaterialRow, measure: str) -> tuple[float, str]:
        amount = in_measure(row, 0.5, measure, demo.book)
        return amount.shown, amount.unit

    assert told(butter, "grams") == (225, "g")
    assert told(butter, "ounces") == (8, "oz")
    # 227 g of butter are a US cup: weight by volume of its card
    assert told(butter, "cups") == (1, "cup")
    assert told(dowels, "ounces") == told(dowels, "cups") == (2.5, "")
    assert told(paste, "cups") == (150, "g"), "sugarpaste has no volume measure"


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
