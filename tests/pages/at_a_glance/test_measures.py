"""The page of measures."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.pages.at_a_glance.measures import MeasuresView, in_shell
from tinbook.pages.base.page import Desk


@pytest.fixture(scope="module")
def view(desk: Desk) -> MeasuresView:
    return MeasuresView(desk)


def test_every_table_is_there(filled: Callable[[str], str], view: MeasuresView) -> None:
    text = filled("measures")
    for words in ("Gas mark", "US cup", "UK large", "Baking powder", "of this house", "tb-sums", '"lost":0.02'):
        assert words in text
    for grid in view.items:
        assert f'href="#{grid.anchor}"' in text
        assert f"{{ #{grid.anchor} }}" in text
        assert f'id="{grid.anchor}-rows"' in text


def test_every_table_has_a_source_and_full_rows(view: MeasuresView) -> None:
    for grid in view.items:
        assert grid.worked is not None
        assert grid.worked.formulas
        assert grid.rows
        for row in grid.rows:
            assert len(row.cells) == len(grid.heads) - 1, grid.title
            assert all(cell.text for cell in row.cells), (grid.title, row)
    assert len({grid.anchor for grid in view.items}) == len(view.items)


def test_egg_ranges_in_words(view: MeasuresView) -> None:
    told = {row.egg_class: in_shell(row) for row in view.sums.eggs}
    assert told["UK large"] == "63 to under 73"
    assert told["UK small"] == "under 53"
    assert told["UK very large"] == "73 and over"
    (eggs,) = [grid for grid in view.items if grid.anchor == "eggs"]
    notes = {row.head: row.cells[1].note for row in eggs.rows}
    assert notes["UK large"] == "55–67" and notes["UK small"] == "to 49" and notes["UK very large"] == "from 64"


def test_a_private_card_is_in_no_table(desk: Desk) -> None:
    cards = {**desk.book.cards, "butter": desk.book.cards["butter"].model_copy(update={"private": True})}
    shown = MeasuresView(Desk(replace(desk.book, cards=cards), desk.facts, {}))
    (cups,) = [grid for grid in shown.items if grid.anchor == "cups"]
    assert "Butter" not in {row.head for row in cups.rows}
    assert cups.narrow
