"""Colour by grams of base: in batter, and in a coat that no paste covers."""

from __future__ import annotations

import pytest
from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.plans.cakes.used import everything_used

CAKE = {"tiers": ["20 cm", "15 cm"], "mixture": "creamed-butter-sponge", "cover": "none"}


def test_by_grams_of_batter_and_of_coat(made: Made) -> None:
    """The demo folds 0.25 g of estuary blue into 100 g of batter, and beats 0.3 g and 0.4 g of white into buttercream."""
    cake = made({**CAKE, "colour": "tide blue", "batter colour": "tide blue"})
    assert [(tint.base, tint.said.figures[0]) for tint in cake.tints] == [
        ("batter", ("place", 1)), ("buttercream", ("place", 1)), ("batter", ("place", 2)), ("buttercream", ("place", 2)),
    ]  # fmt: skip
    batter, coat = cake.tints[:2]
    assert cake.tiers[0].baked and batter.mass_g == cake.tiers[0].baked.whole.mass_g
    assert batter.pots and [pot[2] for pot in batter.pots] == [pytest.approx(0.25 * batter.mass_g / 100.0)]
    assert coat.pots and [pot[2] for pot in coat.pots] == [
        pytest.approx(0.3 * coat.mass_g / 100.0), pytest.approx(0.4 * coat.mass_g / 100.0),
    ]  # fmt: skip


def test_they_are_among_everything_used(made: Made, demo: Loaded) -> None:
    cake = made({**CAKE, "batter colour": "tide blue", "board": {"covered": "no"}})
    (pot,) = everything_used(cake, demo.book, demo.facts).pots
    assert pot.mass_g == pytest.approx(sum(0.25 * tint.mass_g / 100.0 for tint in cake.tints))
    assert "gel food colour" in cake.allergens.unknown


def test_paste_hides_a_coat_and_a_base_nobody_has_tried_is_by_eye(made: Made) -> None:
    covered = made({**CAKE, "cover": "sugarpaste", "colour": "tide blue"})
    assert covered.tints == ()
    slate = made({**CAKE, "colour": "slate"})
    assert [tint.pots for tint in slate.tints] == [None, None]
    ganache = made({**CAKE, "coat": "dark-ganache", "colour": "tide blue"})
    assert ganache.tints and all(tint.pots is None for tint in ganache.tints)


def test_the_law_and_its_caution_hold_for_batter_too(made: Made) -> None:
    cake = made({**CAKE, "batter colour": "reed olive", "board": {"covered": "no"}})
    assert cake.law is not None and "E102" in str(cake.law.figures)
    assert "colours" in [each.caution.key for each in cake.cautions]
    plain = made({**CAKE, "board": {"covered": "no"}})
    assert plain.law is None and plain.tints == ()


def test_cups_take_a_coloured_batter(made: Made) -> None:
    cups = made({"tiers": "24 standard cups", "mixture": "cupcakes", "batter colour": "tide blue"})
    assert [tint.base for tint in cups.tints] == ["batter"]
