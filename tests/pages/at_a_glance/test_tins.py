"""Tins at a glance: the house's own tins, and the answer that stands in the page."""

import json
import re
from collections.abc import Callable
from dataclasses import replace

from tinbook.models import House
from tinbook.pages.at_a_glance.tin_to_tin import answer
from tinbook.pages.at_a_glance.tins import TinsView
from tinbook.pages.base.page import Desk
from tinbook.plans.base.shelf import shelf


def test_only_what_the_house_owns_stands_in_the_matrix(desk: Desk) -> None:
    (matrix,) = TinsView(desk).items
    owned = {row.tin.name for row in shelf(desk.book).tins if row.owned}
    assert {head.name for head in matrix.heads} == {line.head.name for line in matrix.lines} == owned
    assert all(head.owned for head in matrix.heads) and len(owned) == 15


def test_a_20_cm_round_in_a_25_cm_square(desk: Desk) -> None:
    """625 cm² over 314.16 cm² is 1.99, by any table of areas."""
    (matrix,) = TinsView(desk).items
    line = next(line for line in matrix.lines if line.head.name == "round 20 cm")
    column = next(at for at, head in enumerate(matrix.heads) if head.name == "square 25 cm")
    assert line.cells[column].text == "1.99" and line.cells[column].more


def test_a_house_with_one_tin_is_shown_rounds_and_squares(desk: Desk) -> None:
    book = replace(desk.book, tins=desk.book.tins[:1])
    (matrix,) = TinsView(replace(desk, book=book)).items
    assert {head.shape for head in matrix.heads} == {"Round", "Square"} and len(matrix.heads) > 20


def test_the_answer_stands_in_the_page_and_all_tins_are_one_touch_away(filled: Callable[[str], str]) -> None:
    page = filled("tins")
    assert '<b data-told="factor">1.44</b>' in page and '<td data-told="become-10">14</td>' in page
    assert "same depth of batter" in page and "filled as full as in the recipe" in page
    assert '<a href="/tins/all#">All tins</a>' in page
    assert page.index('id="tb-glance"') < page.index("tb-matrix") < page.index("Tap a tin")


def test_the_browser_is_handed_no_more_than_it_needs(desk: Desk, filled: Callable[[str], str]) -> None:
    assert len(filled("tins").encode()) < 30_000, "what surrounds it takes less than as much again"
    found = re.search(r'id="tb-tins">(.*?)</script>', filled("tins"), re.S)
    assert found and len(json.loads(found[1])["rows"]) == len(TinsView(desk).shelf.house)


def test_a_tin_to_itself_is_no_sum(desk: Desk) -> None:
    (matrix,) = TinsView(desk).items
    same = [cell.text for line in matrix.lines for cell in line.cells if cell.same]
    assert same == ["1"] * len(matrix.lines)


def test_the_house_can_bake_to_three_depths(desk: Desk, house: Callable[..., House]) -> None:
    assert [(deep.words, deep.usual) for deep in TinsView(desk).depths] == [("5", False), ("7.5", True), ("10", False)]
    inches = replace(desk, book=replace(desk.book, house=house(**{"tins sold in": "inches", "usual depth": "3 in"})))
    view = TinsView(inches)
    assert ([deep.words for deep in view.depths], view.unit) == (["2", "3", "4"], "in")


def test_the_smaller_tin_is_drawn_on_the_larger(desk: Desk) -> None:
    rows = {row.tin.name: row for row in TinsView(desk).shelf.house}
    small, large = rows["round 15 cm"], rows["square 25 cm"]
    for old, new, first in ((small, large, "tb-to"), (large, small, "tb-from")):
        plans = str(answer(old, new).plans)
        assert re.findall("tb-to|tb-from", plans)[0] == first
