"""What is missing, each thing by itself, with where to write it."""

from __future__ import annotations

from tests.plans.labels.test_opened import card

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.labels.gaps import banned_colours, card_gaps, colour_gap, uncounted_gap


def keys(name: str, demo: Loaded, nation: str = "England", weighed: bool = True, **data: object) -> list[str]:
    return [gap.what.key for gap in card_gaps(name, card(**data), weighed, demo.facts, nation)]


def test_each_fact_by_itself(demo: Loaded) -> None:
    whole = {"allergens": "none", "made_of": "itself"}
    assert keys("salt", demo, **whole) == []
    assert keys("salt", demo, made_of="itself") == ["gap_allergens"]
    assert keys("salt", demo, allergens="none") == ["gap_made_of"]
    assert keys("salt", demo, weighed=False, **whole) == ["gap_weight"]
    assert keys("tap", demo, allergens="none", packs="none") == []
    white = {"allergens": "none", "made_of": "sugar, colour: E171"}
    assert keys("white", demo, **white) == [] and keys("white", demo, "the EU", **white) == ["gap_not_allowed"]
    assert [gap.what.key for gap in card_gaps("nobody", None, True, demo.facts, None)] == ["gap_no_card"]


def test_each_says_what_to_write_and_where(demo: Loaded) -> None:
    gaps = [
        *card_gaps("salt", card(), False, demo.facts, None), *card_gaps("nobody", None, True, demo.facts, None),
        colour_gap("dawn"), uncounted_gap("glaze"), *banned_colours(("E171",), demo.facts, "Northern Ireland"),
    ]  # fmt: skip
    for gap in gaps:
        assert spell(gap.what) and spell(gap.cure) and gap.address.startswith("house/")
    assert [gap.path for gap in gaps[:3]] == [("ingredients", "salt")] * 3
    assert gaps[4].path == ("colours", "dawn")


def test_colours_by_market(demo: Loaded) -> None:
    assert not list(banned_colours(("E171", "E122"), demo.facts, "England"))
    assert len(list(banned_colours(("E171", "E122", "E124"), demo.facts, "the USA"))) == 2
