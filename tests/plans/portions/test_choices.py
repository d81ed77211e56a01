"""What may serve guests: every set stands, and serves what its tiers do."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tinbook.loading import Loaded
from tinbook.plans.base.asking import Query
from tinbook.plans.portions.choices import STACKED, Choices, choices
from tinbook.plans.tables import TABLES


@pytest.fixture(scope="module")
def made(demo: Loaded) -> Choices:
    return choices(demo.book, demo.facts)


def test_a_set_serves_the_sum_of_its_tiers(made: Choices) -> None:
    for chain, serves, below in zip(made.sets, made.sums.serves, made.sums.below, strict=True):
        for kind in range(3):
            each = [made.tiers[at].serves[kind] for at in chain]
            assert serves[kind] == sum(each)
            assert below[kind] == sum(each[:-1])


def test_tiers_stand_well_inside_one_another(made: Choices) -> None:
    for chain in made.sets:
        tins = [made.tiers[at].tin for at in chain]
        for lower, upper in pairwise(tins):
            assert lower.shape == upper.shape
            for one, other in zip(lower.bounds_mm, upper.bounds_mm, strict=True):
                assert 49.9 <= one - other <= 101.6


def test_what_is_chosen_from_goes_into_the_oven_and_on_a_drum(made: Choices, demo: Loaded) -> None:
    """The demo's shelf is 44 by 36 cm, and drums are sold up to 18 in."""
    names = {tier.tin.name for tier in made.tiers}
    assert {"round 25 cm", "square 30 cm"} <= names
    assert not names & {"square 38 cm", "round 40 cm", "full sheet"}
    drums = {row["tin"]: row["taken_width_mm"] for row in TABLES["boards"].rows(demo.book, demo.facts, Query()).rows}
    assert all(drums[name] for name in names & set(drums))


def test_cupcakes_are_baked_in_standard_cups(made: Choices) -> None:
    """A tray of them holds twelve, each filled half."""
    assert made.cups is not None
    assert (made.cups.tin.name, made.cups.tin.holes) == ("standard cups", 12)
    assert made.cups_ml == pytest.approx(6 * made.cups.tin.brim_ml())


def test_only_upright_cakes_are_tiers_and_only_some_shapes_are_stacked(made: Choices) -> None:
    assert all(tier.tin.kind.solid == "upright" and not tier.tin.kind.in_trays for tier in made.tiers)
    stacked = {made.tiers[chain[0]].tin.shape for chain in made.sets if len(chain) > 1}
    assert stacked <= set(STACKED) and {"round", "square"} <= stacked
    assert all(made.tiers[place].tin.shape in ("rectangle", "sheet") for place in made.trays)
