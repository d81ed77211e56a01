"""The pages of plans: a plan for every tin and kind of portion, with its numbers and what a piece weighs."""

from __future__ import annotations

import re
from collections.abc import Callable

from tinbook.pages.at_a_glance.cuts import CutsView, shape_address, tin_anchor
from tinbook.pages.base.page import Desk
from tinbook.plans.base.shelf import all_outlines
from tinbook.tins import SHAPES, Tin

N = "\u00a0"


def test_every_tin_has_its_plans_on_its_shapes_page(desk: Desk, filled: Callable[[str], str]) -> None:
    for shape in ("round", "fluted ring", "cups"):
        page = filled(shape_address(shape))
        for tin, _ in all_outlines(desk.book):
            if tin.shape == shape:
                for kind in ("finger", "dessert", "tea-slice"):
                    assert f'id="{tin_anchor(tin)}-{kind}"' in page, tin.name
    assert CutsView(desk, "round").title == "Round"


def test_the_list_has_the_houses_tins_first_and_opens_each_plan(desk: Desk, filled: Callable[[str], str]) -> None:
    view, page = CutsView(desk, "round"), filled("portions/round")
    owned = [each.section.owned for each in view.plans]
    assert owned == sorted(owned, reverse=True) and [each.first for each in view.plans].index(True) == owned.index(
        False
    )
    figures = [figure for each in view.plans for figure in each.figures]
    assert all(f'<a href="#{figure.anchor}"' in page for figure in figures)
    assert all(len(each.figures) == len(view.columns) for each in view.plans)
    assert all(sum(figure.usual for figure in each.figures) == 1 for each in view.plans)


def test_numbers_on_the_page_are_the_counts(filled: Callable[[str], str]) -> None:
    for shape in SHAPES:
        page = filled(shape_address(shape))
        for count, body in re.findall(r"<figcaption><b>(\d+)</b>(.*?)</figure>", page, re.S):
            numbers = re.search(r"<g class=tb-nos[^>]*>(.*?)</g>", body, re.S)
            drawn = len(re.findall(r"<text", numbers[1])) if numbers else 0
            halves = 2 if shape == "ball" else 1
            assert drawn * halves == int(count) or shape == "cups"


def test_what_a_piece_weighs_and_how_it_prints(filled: Callable[[str], str]) -> None:
    page = filled("portions/round")
    figure = page[page.index('id="round-20-cm-dessert"') :]
    assert re.search(rf"About 65{N}g each, creamed sponge 10{N}cm high", figure)
    assert "On A4 scaled to fit, 1 : 1.2." in figure
    assert "On A4 at full size" in page[page.index('id="round-15-cm-dessert"') :]


def test_anchors_are_names_without_signs() -> None:
    assert tin_anchor(Tin(shape="oval", sizes_mm=(200.0, 280.0))) == "oval-20-x-28-cm"
    assert shape_address("tapered ring") == "portions/tapered-ring"
