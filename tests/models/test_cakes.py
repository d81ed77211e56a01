"""A cake as it is written: tiers in one word or in keys, what goes for all of them, the board in one word."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from tests.every import every

from tinbook.models import CakeDesign, CakeVariation, read_model
from tinbook.models.cakes import NO_BORDER, read_tier
from tinbook.tins import read_tin
from tinbook.units import METRIC, Misread

NAMED = {"number 1": read_tin("round 21 cm x 6 cm")[1]}


def read(data: Mapping[str, Any]) -> CakeDesign:
    found, flaws = read_model(CakeDesign, {"name": "Tide cake", **data}, "a cake", METRIC, NAMED)
    assert found is not None, flaws
    return found


@every(
    ("text", "name", "count", "bare"),
    [
        ("25 cm", "round 25 cm", 1, True),
        ("10 in", "round 25 cm", 1, True),
        ("20 cm x 10 cm", "round 20 cm x 10 cm", 1, True),
        ("square 20 cm", "square 20 cm", 1, False),
        ("24 standard cups", "standard cups", 24, False),
        ("dome 15 cm", "dome 15 cm", 1, False),
        ("2 lb loaf", "2 lb loaf", 1, False),
        ("number 1", "round 21 cm x 6 cm", 1, False),
    ],
)
def test_a_tier_in_one_word(text: str, name: str, count: int, bare: bool) -> None:
    size = read_tier(text, NAMED, METRIC)
    assert (size.tin.full_name, size.count, size.bare, size.written) == (name, count, bare, text)


@every(("text", "message", "place"), [("roud 25 cm", "no tin shape", "roud"), ("25 cubits", "", "cubits"),
                                      ("2 round 20 cm", "one cake", "2 round 20 cm")])  # fmt: skip
def test_what_cannot_be_a_tier_says_so_at_its_place(text: str, message: str, place: str) -> None:
    with pytest.raises(Misread, match=message) as told:
        read_tier(text, NAMED, METRIC)
    assert text[told.value.start : told.value.end] == place


def test_a_size_alone_is_of_the_shape_below_it() -> None:
    tiers = read({"tiers": ["square 25 cm", "20 cm", {"tier": "15 cm"}, "round 10 cm", "5 cm"]}).tiers
    assert [tier.tier.tin.shape for tier in tiers] == ["square", "square", "square", "round", "round"]
    after = read({"tiers": ["rectangle 23 cm x 33 cm", "15 cm"]}).tiers
    assert [tier.tier.tin.shape for tier in after] == ["rectangle", "round"]


def test_one_tier_needs_no_list() -> None:
    assert [tier.tier.tin.name for tier in read({"tiers": "20 cm"}).tiers] == ["round 20 cm"]
    assert read({"tiers": {"tier": "20 cm", "dummy": "yes"}}).tiers[0].dummy


def test_what_a_tier_says_goes_before_what_the_cake_says() -> None:
    cake = read(
        {"tiers": ["25 cm", {"tier": "20 cm", "ribbon": "no", "colour": "slate"}], "ribbon": "yes", "colour": "buff"}
    )
    lower, upper = cake.tiers
    assert (cake.of(lower, "ribbon"), cake.of(upper, "ribbon")) == (True, False)
    assert (cake.of(lower, "colour"), cake.of(upper, "colour")) == ("buff", "slate")
    assert cake.of(lower, "mixture") is None


def test_no_border_is_not_a_border_left_out() -> None:
    assert read({"tiers": "20 cm", "border": "none"}).border is NO_BORDER
    assert read({"tiers": "20 cm"}).border is None
    piped = read({"tiers": "20 cm", "border": {"opening": "8 mm", "pitch": "14 mm", "stroke": "20 mm"}}).border
    assert piped is not None and piped.pitch == 14.0


def test_a_board_in_one_word_or_none() -> None:
    assert read({"tiers": "20 cm", "board": "35 cm"}).board.size == 350.0
    assert read({"tiers": "20 cm", "board": "none"}).board.missing
    plain = read({"tiers": "20 cm"}).board
    assert plain.size is None and not plain.missing


def test_all_it_names_is_found_once() -> None:
    cake = read({"tiers": ["25 cm", {"tier": "20 cm", "filling": "curd", "cover": "none"}], "filling": "curd", "coat": "icing",
                 "board": {"paste": "paste", "colour": "slate"}, "beside": "12 standard cups", "colour": "buff"})  # fmt: skip
    assert cake.made_of == ("curd", "icing", "paste")
    assert len(cake.every_tier) == 3
    assert [each.colour for each in cake.coloured if each.colour] == ["buff", "slate"]


def test_a_variation_needs_its_base_alone() -> None:
    found, flaws = read_model(CakeVariation, {"name": "Ebb cake", "from": "tide-cake"}, "a variation")
    assert found is not None and not flaws
    assert (found.base, found.tiers, found.model_fields_set) == ("tide-cake", (), {"name", "base"})
