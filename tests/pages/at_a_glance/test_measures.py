"""The page of measures."""

from collections.abc import Callable

import pytest

from tinbook.pages.at_a_glance.measures import MeasuresView
from tinbook.pages.base.page import Desk


@pytest.fixture(scope="module")
def view(desk: Desk) -> MeasuresView:
    return MeasuresView(desk)


def test_every_table_is_there(filled: Callable[[str], str], view: MeasuresView) -> None:
    text = filled("measures")
    for words in ("Gas mark", "US cup", "UK large", "Baking powder", "used here", "tb-sums", '"lost":0.02'):
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
