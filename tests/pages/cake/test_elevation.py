"""The elevation: what it draws is as wide and as high as the table says, and nothing lies over anything else."""

from __future__ import annotations

import re
from itertools import combinations, pairwise
from math import pi, sin
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import check_every, many
from tests.pages.cake.conftest import FIGURED, box, shapes
from tests.plans.cakes.conftest import Design, Made, cakes, in_house

from tinbook.loading import Loaded
from tinbook.models import CakeDesign
from tinbook.models.cakes import BOARD, SIDE, TOP
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.elevation import CakeElevation, elevation
from tinbook.pages.cake.figures_drawn import placed
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.cakes.tables import cake as cake_table
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.rules.cakes import cake_flaws

WITHIN_MM = 0.5
STAND = {"lighthouse-for-the-front": "board", "boat-on-the-shingle": "top", "clump-of-thrift": "top",
         "bream-with-scales": "top", "gull-for-the-side": "side", "heron-for-the-side": "side"}  # fmt: skip


def drawn(cake: WholeCake) -> CakeElevation:
    found = elevation(cake, "a cake")
    assert found is not None
    return found


def scale_of(svg: str) -> float:
    return float(svg.partition('data-px-per-mm="')[2].partition('"')[0])


def check(cake: WholeCake) -> None:
    """Every tier and the board in the drawing against the cake's own figures; and no box in another's way."""
    svg = drawn(cake).svg
    upright = [tier for tier in cake.tiers if tier.cake and tier.cake.solid == "upright"]
    rects = [box(rect) for rect in shapes(svg, "tb-tier") if "width" in rect]
    assert len(rects) == len(upright)
    for (left, top, right, bottom), tier in zip(rects, upright, strict=True):
        level = cake.level(tier)
        assert level is not None
        assert right - left == pytest.approx(tier.guide_mm[0], abs=WITHIN_MM)
        assert top - bottom == pytest.approx(tier.high_mm, abs=WITHIN_MM)
        assert (bottom, top) == pytest.approx((level.foot_mm, level.top_mm), abs=WITHIN_MM)
        assert left == pytest.approx(-right, abs=WITHIN_MM)
    boards = [box(rect) for rect in shapes(svg, "tb-drum")]
    drum = cake.stacked.drum
    if drum is not None and drum.board.size_mm:
        assert boards[0][2] - boards[0][0] == pytest.approx(drum.board.size_mm[0], abs=WITHIN_MM)
        assert boards[0][1] == pytest.approx(cake.stacked.drum_mm, abs=WITHIN_MM)
    laid = [box(rect) for rect in shapes(svg, "tb-laid")]
    if drum is not None and drum.board.size_mm and cake.stacked.paste_mm:
        assert (laid[0][3], laid[0][1]) == pytest.approx((cake.stacked.drum_mm, cake.stacked.deck_mm), abs=WITHIN_MM)
        assert laid[0][2] - laid[0][0] == pytest.approx(drum.board.size_mm[0], abs=WITHIN_MM)
    cards = [box(rect) for rect in shapes(svg, "tb-card")]
    assert len(cards) == (len(cake.stacked.levels) if len(cake.stacked.levels) > 1 else 0)
    for (left, top, right, bottom), level, tier in zip(cards, cake.stacked.levels, cake.tiers, strict=False):
        assert (bottom, top) == pytest.approx((level.foot_mm - level.card_mm, level.foot_mm), abs=WITHIN_MM)
        assert right - left == pytest.approx(tier.asked.tin.bounds_mm[0], abs=WITHIN_MM)
    boards += cards + (laid if cake.stacked.covered == "whole" else [])
    px = 1.0 / scale_of(svg)
    there = placed(cake, 1.0 / px, 62.0, 20.0)
    figures = [copy for each in there for copy in each.copies]
    assert [len(each.copies) + each.behind for each in there] == [figure.count for figure in cake.figures]
    for one, other in combinations([*rects, *boards, *figures], 2):
        wide = min(one[2], other[2]) - max(one[0], other[0])
        high = min(one[1], other[1]) - max(one[3], other[3])
        assert min(wide, high) <= 0.2, (one, other)
    view = [float(each) for each in svg.partition('viewBox="')[2].partition('"')[0].split()]
    for left, top, right, bottom in [*rects, *boards, *figures]:
        assert view[0] <= left and right <= view[0] + view[2]
        assert -top >= view[1] and -bottom <= view[1] + view[3]
    heights = sorted(float(each["y"]) for each in shapes(svg, "tb-end") if each.get("data-of") == "height")
    assert all(low - high >= 17.5 * px for high, low in pairwise(heights))


def figures_in(svg: str) -> list[tuple[float, float]]:
    """The lowest and the highest point of each figure, as its paths have them."""
    found = []
    for group in re.findall(r'<g class="tb-stands"[^>]*>(.*?)</g>', svg):
        points = [tuple(map(float, each)) for each in re.findall(r"(-?[0-9.]+) (-?[0-9.]+)", group)]
        found.append((-max(y for _, y in points), -min(y for _, y in points)))
    return found


def check_figures(cake: WholeCake) -> None:
    """Each in the drawing as high as the table has it, and the cake no higher than it says."""
    ends = figures_in(str(drawn(cake).svg))
    assert len(ends) == len(cake.figures)
    for (foot, top), figure in zip(ends, cake.figures, strict=True):
        sloped = figure.on == TOP and cake.tiers[figure.tier].cake.solid != "upright"  # type: ignore[union-attr]
        assert top - foot == pytest.approx(figure.high_mm, abs=WITHIN_MM) or (sloped and figure.count > 1)
        if figure.on == BOARD:
            assert foot == pytest.approx(cake.stacked.deck_mm, abs=WITHIN_MM)
        if figure.on != SIDE:
            assert top <= cake.stacked.high_mm + WITHIN_MM
    tops = [top for (_, top), figure in zip(ends, cake.figures, strict=True) if figure.on != SIDE]
    highest = max([cake.stacked.levels[-1].top_mm, *tops])
    alone = len({nth for nth, figure in enumerate(cake.figures) if figure.on == TOP}) < 2
    assert highest == pytest.approx(cake.stacked.high_mm, abs=WITHIN_MM) or not alone


def test_the_demos_decorations_are_as_high_in_the_drawing_as_in_the_table(in_sizes: list[CakeInSize]) -> None:
    check_every(in_sizes, lambda size: check_figures(size.cake), lambda size: f"{size.cake.slug} {size.key}")


def test_the_demos_cakes_are_drawn_true_to_scale_in_every_size(in_sizes: list[CakeInSize]) -> None:
    check_every(in_sizes, lambda size: check(size.cake), lambda size: f"{size.cake.slug} {size.key}")


def test_a_drawing_agrees_with_the_table_by_name(demo: Loaded, in_sizes: list[CakeInSize]) -> None:
    for size in in_sizes:
        asked = Query(of=size.cake.slug, size=None if size.written else size.key)
        rows = cake_table(demo.book, demo.facts, asked).rows
        rects = [box(rect) for rect in shapes(drawn(size.cake).svg, "tb-tier")]
        for (_, top, _, bottom), row in zip(rects, rows, strict=False):
            assert (bottom, top) == pytest.approx((row["foot_mm"], row["top_mm"]), abs=WITHIN_MM)


def test_what_stands_everywhere_is_drawn_and_nothing_overlaps(made: Made) -> None:
    cake = made(FIGURED)
    check(cake)
    svg = drawn(cake).svg
    assert [each["data-figure"] for each in shapes(svg, "tb-stands")] == ["A", "B", "C", "D"]
    assert len(shapes(svg, "tb-pillar")) > 1 and len(shapes(svg, "tb-foam")) == 1
    figure = cake.figures[0]
    there = placed(cake, scale_of(svg), 62.0, 20.0)[0]
    assert there.top_mm - there.foot_mm == pytest.approx(figure.high_mm)
    assert there.foot_mm == cake.stacked.drum_mm + 3.0


def test_every_pillar_the_front_can_see_is_drawn(demo: Loaded, design: Design, bakes: Bakes) -> None:
    """n pillars on a circle, the first at the back: the k-th at r sin(2 π k / n) across, those right behind another
    hidden; r is 1½ in less than half the tier (the inset that dowels are published with)."""
    data = {"tiers": ["30 cm", {"tier": "20 cm", "on pillars": "8 cm"}], "mixture": "madeira-cake", "height": "10 cm"}
    for count, seen_n in ((6, 3), (7, 7), (8, 5)):
        house = in_house(demo.book, dowels=count)
        cake = whole_cake("tide-cake", design(data), house, demo.facts, bakes=bakes)
        dowels = cake.stacked.dowels[0]
        assert dowels is not None and dowels.plan.count == count
        r = cake.tins[1].bounds_mm[0] / 2.0 - 38.1
        seen = sorted({round(r * sin(2.0 * pi * k / count), 1) for k in range(count)})
        assert len(seen) == seen_n
        boxes = sorted(map(box, shapes(drawn(cake).svg, "tb-pillar")))
        assert [(left + right) / 2.0 for left, _, right, _ in boxes] == pytest.approx(seen, abs=WITHIN_MM)
        level = cake.stacked.levels[1]
        for _, top, _, foot in boxes:
            assert (foot, top) == pytest.approx(
                (level.foot_mm - 3.0 - level.gap_mm, level.foot_mm - 3.0), abs=WITHIN_MM
            )


def test_layers_show_where_no_paste_covers_them(made: Made) -> None:
    bare = {"tiers": "20 cm", "mixture": "madeira-cake", "height": "10 cm", "cover": "none"}
    layers = shapes(drawn(made(bare)).svg, "tb-inner")
    assert len(layers) == 1 and layers[0]["d"].count("M") == 2 * made(bare).tiers[0].cake.layers - 2  # type: ignore[union-attr]
    assert shapes(drawn(made({**bare, "cover": "sugarpaste", "colour": "hull blue"})).svg, "tb-inner") == []


def test_a_dome_and_a_ball_are_round_and_cups_are_not_drawn(made: Made) -> None:
    for tin, of in (("dome 15 cm", "d"), ("ball 15 cm", "cx")):
        cake = made({"tiers": tin, "mixture": "madeira-cake"})
        assert of in shapes(drawn(cake).svg, "tb-tier")[0]
    assert elevation(made({"tiers": "12 standard cups", "mixture": "madeira-cake"}), "cups") is None


@st.composite
def decorated(draw: st.DrawFn) -> dict[str, Any]:
    """A random cake with up to three decorations, each up to six times."""
    data = draw(cakes())
    count = len(data["tiers"]) if isinstance(data["tiers"], list) else 1
    made = []
    for _ in range(draw(st.integers(1, 3))):
        slug = draw(st.sampled_from(sorted(STAND)))
        each = {"technique": slug, "on": STAND[slug], "count": draw(st.integers(1, 6)), "sized for": "round 15 cm"}
        made.append(each if each["on"] != "side" else {**each, "tier": draw(st.integers(1, count))})
    return {**data, "decorations": made}


def check_sound(written: CakeDesign, desk: Desk) -> None:
    """A design that is sound and can be made is drawn true, its decorations too."""
    if list(cake_flaws(written, desk.book, desk.facts)):
        return
    try:
        cake = whole_cake("tide-cake", written, desk.book, desk.facts, bakes=desk.bakes)
    except AskError:
        return
    if elevation(cake, "a cake"):
        check(cake)
        check_figures(cake)


@given(data=decorated())
@many(40)
def test_random_decorations_are_drawn_in_their_places(desk: Desk, design: Any, data: dict[str, Any]) -> None:
    check_sound(design(data), desk)


@given(data=cakes())
@many(60)
def test_random_cakes_are_drawn_true_to_scale(desk: Desk, design: Any, data: dict[str, Any]) -> None:
    check_sound(design(data), desk)
