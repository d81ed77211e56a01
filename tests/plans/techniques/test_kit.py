"""Tools and materials for so many people, and what of them is not food."""

from __future__ import annotations

from typing import Any

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.techniques.kit import MaterialRow, in_measure, kit, material_share


def technique(**keys: Any) -> Technique:
    base = {"name": "Stack", "purpose": "To stand.", "steps": ["Set it down."]}
    made, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert made is not None, flaws
    return made


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


@every(
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
    assert (one.name, spell(one.wanted), one.hidden) == (name, "15 cm", hidden)


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


def test_how_a_material_is_wanted(demo: Loaded) -> None:
    made = technique(
        materials=[{"take": "300 g sugarpaste, white", "note": "kneaded"}, {"take": "5 g salt", "note": "fine"}]
    )
    assert [spell(row.wanted) for row in kit(made, demo.book, demo.facts).materials] == ["white; kneaded", "fine"]


def test_supports_of_parts_are_counted_unless_they_are_listed(demo: Loaded) -> None:
    """Three parts with two sticks each, for two people."""
    stick = {"what": "cocktail stick, wooden", "count": "2", "length": "7 mm"}
    part = {"part": "buoy", "solid": "ball 20 mm", "paste": "sugarpaste", "count": "3", "support": stick}
    keys = {"parts for": "round 20 cm", "parts": [part]}
    (support,) = kit(technique(**keys), demo.book, demo.facts, 2).not_food
    assert (support.name, spell(support.wanted), support.amount.shown, support.hidden) == (
        "cocktail stick", "in buoy", 12, True,
    )  # fmt: skip
    listed = technique(**keys, tools=[{"tool": "cocktail sticks", "not food": "yes"}])
    assert [thing.name for thing in kit(listed, demo.book, demo.facts).not_food] == ["cocktail sticks"]
