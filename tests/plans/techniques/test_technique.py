"""A technique's times, cautions and allergens."""

from dataclasses import replace
from typing import Any

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.techniques.technique import technique_allergens, technique_cautions, technique_times


def technique(**keys: Any) -> Technique:
    base = {"name": "Stack", "purpose": "To stand.", "steps": ["Set it down."]}
    made, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert made is not None, flaws
    return made


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
    assert {"sugarpaste", "coated cake"} <= set(spelled_all(strip.unknown))
    assert technique_allergens(technique(), demo.book, demo.facts) is None


def test_a_mixture_that_is_partly_unknown_is_not_free(demo: Loaded) -> None:
    cards = dict(demo.book.cards)
    cards["icing sugar"] = cards["icing sugar"].model_copy(update={"allergens": None})
    book = replace(demo.book, cards=cards)
    strip = technique_allergens(technique(**{"works with": ["Pilot's buttercream"]}), book, demo.facts)
    assert strip is not None
    assert [each.allergen for each in strip.contains] == ["milk"]
    assert spelled_all(strip.unknown) == ("some of Pilot's buttercream",)
