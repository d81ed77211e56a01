"""A technique's times, cautions and allergens."""

from dataclasses import replace
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import Book, Technique, read_model
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.techniques.parts import every_caution
from tinbook.plans.techniques.technique import (
    cautions_said,
    own_and_used,
    technique_allergens,
    technique_cautions,
    technique_times,
    with_used,
)


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


def keys_of(demo: Loaded, made: Technique) -> set[str]:
    return {caution.key for caution in technique_cautions(made, demo.book, demo.facts)}


@pytest.mark.parametrize(
    ("thing", "wires", "dowels"),
    [
        ("3 floristry wires, 24 gauge", True, False),
        ("5 dowels, food-grade", False, True),
        ("4 cocktail sticks", False, False),
        ("1 cake drum, round 30 cm", False, False),
    ],
)
def test_wires_and_dowels_where_there_are_any(demo: Loaded, thing: str, wires: bool, dowels: bool) -> None:
    told = keys_of(demo, technique(materials=[{"take": thing, "not food": "yes"}]))
    assert ("wires" in told, "dowels" in told, "carrying" in told) == (wires, dowels, dowels)
    assert ("support" in told) == ("drum" not in thing)


def test_no_technique_of_the_book_warns_of_what_it_has_not(demo: Loaded) -> None:
    for slug, made in demo.book.techniques.items():
        told = keys_of(demo, made)
        things = [tool.tool for tool in made.tools] + [material.take.name for material in made.materials]
        assert ("wires" in told) == any("wire" in thing.lower() for thing in things), slug
        assert ("dowels" in told) == any("dowel" in thing.lower() for thing in things if "cutter" not in thing), slug
    assert "raw egg" not in keys_of(demo, demo.book.techniques["pipe-a-border"])


def test_a_cooked_mixture_brings_no_raw_egg_and_a_raw_one_does(demo: Loaded) -> None:
    """Meringue of raw whites against curd set by heat, and a sponge that has been in the oven."""
    raw = technique(materials=["100 g egg white"])
    curd, sponge = (technique(materials=[f"100 g {name}"]) for name in ("lemon curd", "creamed-butter-sponge"))
    assert "raw egg" in keys_of(demo, raw)
    assert keys_of(demo, curd) == {"cold chain"}
    assert keys_of(demo, sponge) == set()


def test_allergens_of_what_it_uses_and_apart_of_what_it_may_be_made_with(demo: Loaded) -> None:
    made = technique(
        materials=["150 g Pilot's buttercream", "300 g sugarpaste", "1 coated cake", {"take": "5 dowels", "not food": "yes"}],
        mixtures=["madeira-cake"],
    )  # fmt: skip
    strip = technique_allergens(made, demo.book, demo.facts)
    assert strip is not None and strip.known
    named = {each.allergen: each.ingredients for each in strip.contains}
    assert named["milk"] == ("Pilot's buttercream",) and not {"wheat", "egg"} & set(named)
    (madeira,) = strip.made_with
    assert (madeira.mixture, madeira.some_unknown) == ("Lighthouse Madeira", False)
    assert madeira.allergens == ("wheat", "egg", "milk")
    # no card says what a strange cake holds
    assert "coated cake" in spelled_all(strip.unknown)
    assert technique_allergens(technique(), demo.book, demo.facts) is None


def test_what_it_only_works_with_is_not_in_it(demo: Loaded) -> None:
    cards = dict(demo.book.cards)
    cards["icing sugar"] = cards["icing sugar"].model_copy(update={"allergens": None})
    book = replace(demo.book, cards=cards)
    strip = technique_allergens(technique(**{"works with": ["Pilot's buttercream"]}), book, demo.facts)
    assert strip is not None
    assert (strip.contains, strip.unknown, strip.known) == ((), (), False)
    (icing,) = strip.made_with
    assert (icing.allergens, icing.some_unknown) == (("milk",), True)


def test_the_paste_of_parts_is_used(demo: Loaded) -> None:
    """And so are the pots that colour it: no card of a pot says it holds any of the fourteen."""
    made = technique(
        **{
            "parts for": "round 20 cm",
            "parts": [{"part": "star", "solid": "ball 20 mm", "paste": "marzipan", "colour": "lamp red"}],
        }
    )
    strip = technique_allergens(made, demo.book, demo.facts)
    assert strip is not None
    assert "almond" in [each.allergen for each in strip.contains]


def test_a_mixture_that_is_partly_unknown_is_not_free(demo: Loaded) -> None:
    cards = dict(demo.book.cards)
    cards["icing sugar"] = cards["icing sugar"].model_copy(update={"allergens": None})
    book = replace(demo.book, cards=cards)
    strip = technique_allergens(technique(materials=["100 g Pilot's buttercream"]), book, demo.facts)
    assert strip is not None
    assert [each.allergen for each in strip.contains] == ["milk"]
    assert spelled_all(strip.unknown) == ("an ingredient of Pilot's buttercream",)


def with_a_chain(demo: Loaded) -> tuple[Book, Technique]:
    """A technique that uses one with wires and pearls, which uses one with raw egg and uses the first again."""
    wire = {"take": "3 floristry wires, 24 gauge", "not food": "yes"}
    pearls = {"take": "20 pearls", "small hard": "yes"}
    first = technique(name="Hang it", uses=["wire-it"], cautions=["Mind the wires."])
    second = technique(
        name="Wire it", uses=["glue-it"], materials=[wire, pearls], cautions=["Mind the Wires.", "Tape it."]
    )
    third = technique(
        name="Glue it",
        uses=["hang-it"],
        materials=["10 g royal icing", "1 coated cake"],
        care=["raw egg"],
        cautions=["Stir."],
    )
    made = {"hang-it": first, "wire-it": second, "glue-it": third}
    return replace(demo.book, techniques={**demo.book.techniques, **made}), first


def test_what_a_technique_uses_brings_its_cautions_each_once(demo: Loaded) -> None:
    book, first = with_a_chain(demo)
    alone = [technique_cautions(each, book, demo.facts) for each in own_and_used(first, book)]
    assert [each.name for each in own_and_used(first, book)] == ["Hang it", "Wire it", "Glue it"]
    assert alone[0] == () and alone[1] and alone[2]
    every = every_caution(first, book, demo.facts)
    assert {each.key for each in every} == {each.key for one in alone for each in one}
    assert len({each.key for each in every}) == len(every)
    assert cautions_said(first, book) == (("", "Mind the wires."), ("Wire it", "Tape it."), ("Glue it", "Stir."))


def test_and_its_allergens(demo: Loaded) -> None:
    """Royal icing is made with egg white; the cake it is done to is nothing that it uses."""
    book, first = with_a_chain(demo)
    found = technique_allergens(first, book, demo.facts)
    assert found and "egg" in [each.allergen.lower() for each in found.contains]
    assert "coated cake" not in spelled_all(found.unknown) and "1 coated cake" not in spelled_all(found.unknown)
    assert list(with_used(["hang-it", "nowhere"], book)) == ["hang-it", "wire-it", "glue-it"]


def test_the_gull_says_what_its_sticks_ask_for(demo: Loaded) -> None:
    gull, sticks = (demo.book.techniques[slug] for slug in ("gull-for-the-side", "fix-a-figure-on-sticks"))
    said = cautions_said(gull, demo.book)
    assert [words for name, words in said if not name] == list(gull.cautions)
    assert [words for name, words in said if name == sticks.name] == [" ".join(sticks.cautions)]
    keys = {each.key for each in every_caution(gull, demo.book, demo.facts)}
    assert {each.key for each in every_caution(sticks, demo.book, demo.facts)} <= keys
