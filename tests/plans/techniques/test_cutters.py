"""The nearest cutter in the drawer, and how far off it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Book, CutterDrawer, Part, read_model
from tinbook.plans.techniques.cutters import cutter_fit, nearest_cutter


@pytest.fixture
def drawer(kitchen: Book) -> Book:
    owned = ["round 20 mm", "round 32 mm", {"cutter": "round 41 mm", "have": "0"}, "oval 20 mm x 30 mm"]
    made, _ = read_model(CutterDrawer, {"cutters": owned}, "it")
    assert made is not None
    return replace(kitchen, cutters=made.cutters)


def test_the_nearest(drawer: Book) -> None:
    fit = nearest_cutter("round", (40.0,), drawer)
    assert (fit.owned, fit.off_mm, fit.off) == ("round 32 mm", -8.0, pytest.approx(-0.2))
    assert nearest_cutter("round", (26.0,), drawer).owned == "round 32 mm"
    assert nearest_cutter("round", (20.0,), drawer).exact
    assert not nearest_cutter("heart", (40.0,), drawer).found
    assert nearest_cutter("oval", (22.0, 30.0), drawer).off_mm == -2.0


def part(**keys: str) -> Part:
    made, flaws = read_model(Part, {"part": "a", "paste": "p", **keys}, "it")
    assert made is not None, flaws
    return made


def test_which_parts_have_one(drawer: Book) -> None:
    disc = part(sheet="round 20 mm", thick="1 mm")
    fit = cutter_fit(disc, (("across", 30.0), ("thick", 1.0)), 30.0, 1.5, drawer)
    assert fit is not None
    assert (fit.wanted_mm, fit.owned) == ((30.0,), "round 32 mm")
    assert cutter_fit(part(solid="ball 20 mm"), (("across", 20.0),), 20.0, 1.0, drawer) is None
    assert cutter_fit(part(sheet="M0 0H9V9Z", thick="1 mm"), (), 9.0, 1.0, drawer) is None


def test_a_cutter_for_the_top(drawer: Book) -> None:
    """Half of 40 mm is 20 mm, and that one is in the drawer."""
    fit = cutter_fit(part(solid="ball 40 mm", cutter="round 1/2"), (), 40.0, 1.0, drawer)
    assert fit is not None
    assert (fit.wanted_mm, fit.exact, fit.marks) == ((pytest.approx(20.0),), True, True)


def test_a_class_wants_a_cutter_each_or_one_to_share(drawer: Book) -> None:
    """The drawer has one of each: three short for four people, none where it is shared."""
    lengths = ("across", 20.0), ("thick", 1.0)
    each = cutter_fit(part(sheet="round 20 mm", thick="1 mm"), lengths, 20.0, 1.0, drawer, people=4)
    shared = cutter_fit(
        part(sheet="round 20 mm", thick="1 mm", **{"cutter shared": "yes"}), lengths, 20.0, 1.0, drawer, people=4
    )
    assert each is not None and shared is not None
    assert (each.wanted, each.have, each.shared) == (4, 1, False)
    assert (shared.wanted, shared.have, shared.shared) == (1, 1, True)


def test_the_usual_cutter_for_a_top(facts: Facts, practice: Callable[[str], tuple[float, ...]]) -> None:
    """Common practice, no source: tests/data/common_practice.csv. The book's own figure has a range that holds it."""
    usual = facts.numbers["cutter over the top"]
    (share,) = practice("share of a part's width that the cutter marking its top has")
    assert usual.low is not None and usual.high is not None
    assert usual.low <= share <= usual.high
    assert (usual.source, usual.kind) == ("our own judgement", "our own judgement")
