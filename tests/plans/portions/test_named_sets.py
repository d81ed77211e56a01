"""A set that is named: its tiers, and what is said of how it stands."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError
from tinbook.plans.portions.cutting import cut_of, portion_sizes
from tinbook.plans.portions.named_sets import judged, named_set
from tinbook.tins import read_tin


def said(demo: Loaded, *names: str) -> list[str]:
    portion = portion_sizes(demo.book, demo.facts)["dessert"]
    tins = [read_tin(name)[1] for name in names]
    tiers = named_set(tins, portion, demo.book, demo.facts, 100.0)
    assert [tier.serves for tier in tiers] == [(cut_of(tin, portion, 100.0).count,) for tin in tins]
    return [spell(each) for each in judged(tiers, demo.book, demo.facts, 100.0)]


def test_what_is_said(demo: Loaded) -> None:
    assert said(demo, "round 25 cm", "round 20 cm", "round 15 cm") == []
    assert said(demo, "round 25 cm", "round 23 cm") == [
        "the 23 cm round is only 20 mm narrower than the 25 cm round; 50 to 100 is usual"
    ]
    assert said(demo, "square 25 cm", "round 10 cm") == [
        "the 10 cm round is 150 mm narrower than the 25 cm square; 50 to 100 is usual", "you have no 10 cm round tin"
    ]  # fmt: skip
    assert said(demo, "square 40 cm") == [
        "you have no 40 cm square tin", "a 40 cm square tin will not fit in your oven", "no standard-size drum is large enough for the 40 cm square"
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (("round 15 cm", "round 20 cm"), "round 20 cm cannot stand on round 15 cm"),
        (("round 15 cm", "round 15 cm"), "cannot stand on"),
        (("dome 20 cm",), "dome 20 cm is not a tier"),
        (("standard cups",), "is not a tier"),
    ],
)
def test_what_is_no_set(names: tuple[str, ...], told: str, demo: Loaded) -> None:
    with pytest.raises(AskError, match=told):
        said(demo, *names)
