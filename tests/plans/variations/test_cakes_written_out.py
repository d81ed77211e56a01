"""A cake that starts from another, written out."""

from __future__ import annotations

from tests.plans.variations.test_inherited import both

from tinbook.models import CakeDesign, Flaw
from tinbook.plans.variations.cakes_written_out import placed, vary_cake


def test_it_is_a_cake_like_any_other() -> None:
    variation, base = both(
        {"tiers": ["25 cm", "20 cm"], "mixture": "plain-sponge", "colour": "slate"}, {"tiers": "18 cm", "cover": "none"}
    )
    made = vary_cake(variation, base)
    assert type(made) is CakeDesign
    assert [tier.tier.tin.name for tier in made.tiers] == ["round 18 cm"]
    assert (made.mixture, made.colour, made.cover, made.name) == ("plain-sponge", "slate", "none", "Ebb cake")
    # what is said for the whole cake still goes for every tier
    assert made.of(made.tiers[0], "mixture") == "plain-sponge"
    assert {"mixture", "colour", "cover", "tiers"} <= made.model_fields_set


def test_a_private_base_is_not_given_away() -> None:
    made = vary_cake(*both({"private": "yes"}, {}))
    assert isinstance(made, Flaw) and made.code == "private base"


def test_a_flaw_stands_where_it_can_be_mended() -> None:
    variation, _ = both({}, {"colour": "buff"})
    own = placed(Flaw(code="x", path=("colour",), message="m"), variation)
    lent = placed(Flaw(code="x", path=("board", "size"), message="m", start=1, end=2), variation)
    assert own.path == ("colour",)
    assert (lent.path, lent.on_key, lent.start) == (("from",), True, None)
