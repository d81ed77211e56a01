"""Rules of a cake that take its sums."""

from __future__ import annotations

from tests.plans.rules.test_cakes import flaws

from tinbook.loading import Loaded
from tinbook.plans.rules.cakes_standing import said_at, standing_flaws


def test_a_tier_that_cannot_be_cut_so_high_is_told_at_its_height(demo: Loaded) -> None:
    tiers = ["25 cm", {"tier": "20 cm", "height": "30 cm", "layers": "1"}]
    assert [flaw.path for flaw in flaws(demo, {"tiers": tiers})] == [("tiers", 1, "height")]
    assert [flaw.path for flaw in flaws(demo, {"height": "30 cm", "layers": "1"})] == [("height",)]
    assert [flaw.path for flaw in flaws(demo, {"height": "30 mm", "layers": "9"})] == [("height",)]


def test_what_hangs_on_a_tier_weighs_less_than_it_does(demo: Loaded) -> None:
    heron = {"technique": "heron-for-the-side", "on": "side", "tier": "2"}
    assert flaws(demo, {"decorations": [heron]}) == ()
    (flaw,) = flaws(demo, {"decorations": [{**heron, "technique": "lighthouse-for-the-front", "count": "40"}]})
    assert flaw.path == ("decorations", 0) and "hang on the 20 cm round" in flaw.message
    # two that are too heavy together
    both = [{**heron, "technique": "lighthouse-for-the-front", "count": count} for count in ("12", "13")]
    assert [flaw.path for flaw in flaws(demo, {"decorations": both})] == [("decorations", 0)]


def test_a_board_holds_the_coated_cake(demo: Loaded) -> None:
    assert flaws(demo, {"tiers": "20 cm", "board": "23 cm"}) == ()
    assert flaws(demo, {"tiers": "20 cm", "board": "20 cm"})[0].path == ("board", "size")


def test_dowels_have_room(demo: Loaded) -> None:
    (flaw,) = flaws(demo, {"tiers": ["15 cm", "7 cm"]})
    assert flaw.path == ("tiers",) and "no room for" in flaw.message
    assert flaws(demo, {"tiers": [{"tier": "15 cm", "dummy": "yes"}, "10 cm"]}) == ()


def test_a_tier_is_at_least_one_portion(demo: Loaded) -> None:
    (flaw,) = flaws(demo, {"tiers": "round 4 cm x 4 cm", "portion": "tea slice"})
    assert flaw.path == ("tiers", 0) and "smaller than one portion" in flaw.message


def test_where_something_is_said(demo: Loaded) -> None:
    design = demo.book.cakes["estuary-wedding-cake"]
    base, middle, _ = design.tiers
    assert said_at(design, base, ("tiers", 0), "mixture") == ("tiers", 0, "mixture")
    assert said_at(design, middle, ("tiers", 1), "mixture") == ("mixture",)
    assert said_at(design, middle, ("tiers", 1), "layers") == ("tiers", 1)
    assert list(standing_flaws(design, demo.book, demo.facts)) == []
