"""Rules of whole cakes; the messages themselves are in tests/source/bad/cakes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import CakeDesign, Flaw, read_model
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.plans.rules.fields import FOLLOWS

PLAIN = {"name": "Tide cake", "tiers": ["25 cm", "20 cm"], "mixture": "madeira-cake"}


def flaws(demo: Loaded, data: Mapping[str, Any], lost: tuple[str, ...] = ()) -> tuple[Flaw, ...]:
    design, wrong = read_model(CakeDesign, {**PLAIN, **data}, "a cake", demo.book.house.spoons)
    assert design is not None, wrong
    return cake_flaws(design, demo.book, demo.facts, lost)


def test_a_sound_cake_has_none(demo: Loaded) -> None:
    assert flaws(demo, {}) == ()
    for tiers in ("24 standard cups", "dome 15 cm", "ball 15 cm", "rectangle 23 cm x 33 cm"):
        assert flaws(demo, {"tiers": tiers, "mixture": "cupcakes" if "cups" in tiers else "madeira-cake"}) == (), tiers
    assert flaws(demo, {"beside": ["12 standard cups", "rectangle 23 cm x 33 cm"]}) == ()
    assert flaws(demo, {"tiers": ["25 cm", {"tier": "20 cm", "dummy": "yes"}, "dome 15 cm"]}) == ()


def test_tiers_of_one_width_may_stand_on_each_other(demo: Loaded) -> None:
    assert flaws(demo, {"tiers": ["20 cm", "20 cm"]}) == ()
    assert flaws(demo, {"tiers": ["20 cm", "23 cm"]})[0].path == ("tiers", 1)
    assert flaws(demo, {"tiers": ["oval 20 cm x 28 cm", "23 cm"]})[0].path == ("tiers", 1)


@pytest.mark.parametrize("where", ["cake", "tier"])
def test_a_slip_is_told_where_it_is_said(demo: Loaded, where: str) -> None:
    """Once, although it goes for every tier."""
    for name, word in (
        ("mixture", "madera-cake"),
        ("cover", "sugarpast"),
        ("colour", "hul blue"),
        ("filling", "nothing"),
    ):
        tiers = ["25 cm", {"tier": "20 cm", name: word}]
        told = flaws(demo, {name: word} if where == "cake" else {"tiers": tiers})
        assert [flaw.path for flaw in told] == [(name,) if where == "cake" else ("tiers", 1, name)]


def test_what_is_lost_elsewhere_only_follows(demo: Loaded) -> None:
    """It stops the cake, and is told where it is wrong."""
    for data in (
        {"mixture": "sea-sponge"},
        {"coat": "sea-sponge"},
        {"decorations": [{"technique": "sea-sponge"}]},
        {"colour": "sea-sponge"},
    ):
        told = flaws(demo, data, ("sea-sponge",))
        assert {flaw.code for flaw in told} == {FOLLOWS}, data
    assert flaws(demo, {"techniques": ["sea-sponge"]}, ("sea-sponge",)) == ()


def test_a_named_size_has_the_tiers_of_the_cake(demo: Loaded) -> None:
    assert flaws(demo, {"sizes": {"small": ["20 cm", "15 cm"]}}) == ()
    assert flaws(demo, {"sizes": {"small": ["20 cm"]}})[0].path == ("sizes", "small")
    assert flaws(demo, {"sizes": {"small": ["20 cm", "dome 15 cm"]}})[0].path == ("sizes", "small", 1)
