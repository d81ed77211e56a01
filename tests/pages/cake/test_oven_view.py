"""The loads of a cake as they are drawn and told: every tin on its shelf, as far apart as the plan says."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from tests.every import check_every
from tests.plans.cakes.conftest import Made

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.oven_view import LoadsView, oven_view
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.plans.cakes.whole import WholeCake


def view_of(cake: WholeCake, desk: Desk) -> LoadsView:
    found = oven_view(cake.oven, desk)
    assert found is not None
    return found


def shapes(svg: str, tag: str) -> list[dict[str, str]]:
    tree = ElementTree.fromstring(re.sub(r"\sstyle=\"[^\"]*\"", "", svg))
    return [dict(each.attrib) for each in tree.iter() if each.tag == tag]


def test_every_tin_is_drawn_where_it_stands(in_sizes: list[CakeInSize]) -> None:
    def check(size: CakeInSize) -> None:
        plan, view = size.cake.oven, size.oven
        assert plan is not None and view is not None
        for load, told in zip(plan.loads, view.loads, strict=True):
            for shelf, drawn in zip(load.shelves, told.shelves, strict=True):
                if any(load.of(place).tin.kind.in_trays for place in shelf):
                    assert len(shapes(str(drawn), "rect")) == 1 + sum(load.of(each).tin.kind.in_trays for each in shelf)
                    continue
                outlines = [[tuple(map(float, point.split())) for point in each["d"][1:-1].split("L")]
                            for each in shapes(str(drawn), "path")]  # fmt: skip
                assert len(outlines) == len(shelf)
                rim = next(each for each in shapes(str(drawn), "rect") if each.get("class") == "tb-rim")
                deep = float(rim["height"])
                for place, points in zip(shelf, outlines, strict=True):
                    left, right = min(x for x, _ in points), max(x for x, _ in points)
                    top, foot = min(y for _, y in points), max(y for _, y in points)
                    assert (left, right) == pytest.approx((place.x_mm, place.x_mm + place.wide_mm), abs=2.0)
                    assert (deep - foot, deep - top) == pytest.approx((place.y_mm, place.y_mm + place.deep_mm), abs=2.0)

    check_every(in_sizes, check)


def test_the_words_of_a_load(in_sizes: list[CakeInSize]) -> None:
    wedding = next(size for size in in_sizes if len(size.cake.tiers) == 3 and size.written)
    view = wedding.oven
    assert view is not None
    assert [load.tins.replace("\N{NO-BREAK SPACE}", " ") for load in view.loads] == [
        "1 × round 25 cm", "1 × round 25 cm", "2 × round 20 cm", "2 × round 15 cm",
    ]  # fmt: skip
    assert "on this oven's dial" in view.heat and " h " in view.time.replace("\N{NO-BREAK SPACE}", " ")
    assert "eggs" in view.loads[0].mixed[0]


def test_cups_two_heats_and_no_shelf(made: Made, desk: Desk, unmeasured: Callable[[], Desk]) -> None:
    cups = view_of(made({"tiers": "24 standard cups", "mixture": "cupcakes"}), desk)
    # one tray of twelve, filled twice
    assert [load.tins.replace("\N{NO-BREAK SPACE}", " ") for load in cups.loads] == ["12 standard cupcakes"] * 2
    assert 'rx="12"' in str(cups.loads[0].shelves[0])
    two = view_of(
        made({"tiers": ["20 cm", {"tier": "15 cm", "mixture": "rich-fruit-cake"}], "mixture": "madeira-cake"}), desk
    )
    if two.heat == "":
        assert all("dial" in load.mixed[-1] for load in two.loads)
    assert oven_view(None, desk) is None
    bare = unmeasured()
    from tinbook.plans.cakes.oven_loads import oven_plan

    cake = made({"tiers": "20 cm", "mixture": "madeira-cake"})
    plan = oven_plan(cake.every_tier, bare.bakes, bare.book, bare.facts)
    told = oven_view(plan, bare)
    assert told is not None and told.loads[0].shelves == ()


@pytest.fixture
def unmeasured(desk: Desk) -> Callable[[], Desk]:
    """A desk in a kitchen that has not measured its shelf."""

    def make() -> Desk:
        book = replace(desk.book, house=desk.book.house.model_copy(update={"oven_shelf": None}))
        return Desk(book, desk.facts, {})

    return make
