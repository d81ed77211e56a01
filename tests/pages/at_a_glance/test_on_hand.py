"""The page of what the tins on hand allow."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.pages.at_a_glance.on_hand import OnHandView, on_hand_pages
from tinbook.pages.base.page import Desk


def test_every_line_says_what_its_plan_says(desk: Desk) -> None:
    view = OnHandView(desk)
    assert len(view.lines) == len(view.table.rows) > 3
    for line, row in zip(view.lines, view.table.rows, strict=True):
        assert line.name == row.batch.mixture.name
        assert [float(each.factor) for each in line.choices] == [each.factor_shown for each in row.choices]
        assert [each.verdict == "as in the recipe" for each in line.choices] == [each.written for each in row.choices]
        assert [each.best for each in line.choices] == [True, *[False] * (len(row.choices) - 1)][: len(row.choices)]


def test_it_is_linked_and_whole(filled: Callable[[str], str]) -> None:
    text = filled("on-hand")
    assert "as in the recipe" in text and "No tin is needed for" in text
    assert 'class="tb-plan tb-round"' in text
    assert "on-hand" in filled("tins") and "on-hand" in filled("mixtures/index")


def test_a_house_without_tins_has_no_such_page(desk: Desk) -> None:
    assert not list(on_hand_pages(replace(desk, book=replace(desk.book, tins=()))))
