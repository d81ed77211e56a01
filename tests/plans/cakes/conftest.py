"""Cakes as a baker writes them, and random ones."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import strategies as st

from tinbook.loading import Loaded
from tinbook.models import Book, CakeDesign, read_model
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.cakes.whole import WholeCake, whole_cake

Design = Callable[..., CakeDesign]
Made = Callable[..., WholeCake]

BAKED = ("creamed-butter-sponge", "madeira-cake", "mud-cake", "ginger-sponge", "rich-fruit-cake", "whisked-sponge")
ICED = ("american-buttercream", "dark-ganache", "none")
STACKED = ("round", "square", "heart", "hexagon", "octagon", "petal")
ALONE = ("rectangle 23 cm x 33 cm", "ring 23 cm, tube 7.5 cm", "dome 15 cm", "ball 15 cm", "number 1", "2 lb loaf",
         "oval 20 cm x 28 cm", "half sheet", "fluted ring 25 cm", "12 standard cups")  # fmt: skip
WIDTHS = (15, 18, 20, 23, 25, 28, 30)


@pytest.fixture(scope="session")
def design(demo: Loaded) -> Design:
    """`design({"tiers": "20 cm", ...})`: a cake as written, which must be read."""

    def read(data: Mapping[str, Any]) -> CakeDesign:
        named = {own.tin.called.casefold(): own.measured_tin for own in demo.book.tins if own.tin.called}
        found, flaws = read_model(CakeDesign, {"name": "Tide cake", **data}, "a cake", demo.book.house.spoons, named)
        assert found is not None, flaws
        return found

    return read


@pytest.fixture(scope="session")
def bakes(demo: Loaded) -> Bakes:
    """What the demo knows about baking times."""
    return Bakes(demo.book, demo.facts)


@pytest.fixture(scope="session")
def made(demo: Loaded, design: Design, bakes: Bakes) -> Made:
    """`made({"tiers": "20 cm", ...})`: that cake worked out in the demo's kitchen."""

    def work(data: Mapping[str, Any], **asked: Any) -> WholeCake:
        return whole_cake("tide-cake", design(data), demo.book, demo.facts, **{"bakes": bakes, **asked})

    return work


def in_house(book: Book, **finish: Any) -> Book:
    """The book of a house that finishes its cakes so."""
    return replace(book, finish=book.finish.model_copy(update=finish))


@st.composite
def cakes(draw: st.DrawFn) -> dict[str, Any]:
    """A cake of one to four tiers of one shape, each narrower than the one below, or of one of the other shapes."""
    data: dict[str, Any] = {"name": "Tide cake", "mixture": draw(st.sampled_from(BAKED))}
    if draw(st.integers(0, 3)) == 0:
        return {**data, "tiers": draw(st.sampled_from(ALONE))}
    shape = draw(st.sampled_from(STACKED))
    widths = sorted(draw(st.sets(st.sampled_from(WIDTHS), min_size=1, max_size=4)), reverse=True)
    data["tiers"] = [draw(_tiers(f"{shape} {width} cm", place)) for place, width in enumerate(widths)]
    for key, values in (("coat", ICED), ("filling", ICED), ("cover", ("sugarpaste", "marzipan", "none"))):
        if draw(st.booleans()):
            data[key] = draw(st.sampled_from(values))
    if len(data["tiers"]) > 1 and not any("on pillars" in tier for tier in data["tiers"]) and draw(st.booleans()):
        data["travels"] = "whole"
    if draw(st.booleans()):
        data["board"] = {"covered": draw(st.sampled_from(("whole", "ring", "no")))}
    return data


@st.composite
def _tiers(draw: st.DrawFn, size: str, place: int) -> dict[str, Any]:
    tier: dict[str, Any] = {"tier": size}
    if draw(st.booleans()):
        tier["height"] = f"{draw(st.integers(60, 140))} mm"
    if draw(st.integers(0, 2)) == 0:
        tier["layers"] = str(draw(st.integers(2, 5)))
    if draw(st.integers(0, 3)) == 0:
        tier["mixture"] = draw(st.sampled_from(BAKED))
    if draw(st.integers(0, 3)) == 0:
        tier |= {"colour": "hull blue", "ribbon": "yes"}
    if place and draw(st.integers(0, 4)) == 0:
        tier["on pillars"] = "60 mm"
    if draw(st.integers(0, 6)) == 0:
        tier = {key: value for key, value in tier.items() if key in ("tier", "height", "colour", "ribbon")}
        tier["dummy"] = "yes"
    return tier
