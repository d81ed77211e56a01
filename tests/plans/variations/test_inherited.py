"""What everything that starts from another takes over, and what stays private."""

from __future__ import annotations

from typing import Any

from tinbook.models import CakeDesign, CakeVariation, read_model
from tinbook.plans.variations.inherited import gives_away, held, taken_over


def both(base: dict[str, Any], here: dict[str, Any]) -> tuple[CakeVariation, CakeDesign]:
    whole, _ = read_model(CakeDesign, {"name": "Tide cake", "tiers": "20 cm", **base}, "a cake")
    variation, _ = read_model(CakeVariation, {"name": "Ebb cake", "from": "tide-cake", **here}, "a variation")
    assert whole and variation
    return variation, whole


def test_what_is_written_wins_and_a_name_is_its_own() -> None:
    variation, base = both({"about": "At the flood.", "colour": "slate", "also": "flood cake"}, {"colour": "buff"})
    values = taken_over(variation, base, CakeDesign)
    assert (values["colour"], values["name"], values["about"], values["also"]) == ("buff", "Ebb cake", None, ())
    assert values["tiers"] == base.tiers


def test_what_is_the_bases_and_private_there_stays_so() -> None:
    variation, base = both({"private": ["notes", "sizes"], "notes": ["x"]}, {"notes": ["y"], "private": ["portion"]})
    assert held(variation, base, CakeDesign, variation.model_fields_set) == ("portion", "sizes")
    assert held(both({}, {"private": "yes"})[0], base, CakeDesign, ()) is True
    assert held(*both({}, {}), CakeDesign, ()) is False


def test_a_public_one_gives_a_private_base_away() -> None:
    flaw = gives_away(*both({"private": "yes"}, {}), "cake")
    assert flaw and flaw.path == ("from",) and "a cake of its own" in flaw.hint
    assert gives_away(*both({"private": "yes"}, {"private": "yes"}), "cake") is None
    assert gives_away(*both({}, {}), "cake") is None
