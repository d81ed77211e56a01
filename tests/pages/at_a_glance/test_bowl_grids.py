"""Eggs and small sums on the page of measures."""

from tinbook.pages.at_a_glance.bowl_grids import egg_grid, in_shell, left_grid
from tinbook.pages.base.page import Desk
from tinbook.plans.measures.eggs import egg_rows
from tinbook.plans.measures.pieces import small_sums


def test_egg_ranges_in_words(desk: Desk) -> None:
    told = {row.egg_class: in_shell(row) for row in egg_rows(desk.book, desk.facts)}
    assert told["UK large"] == "63 to under 73"
    assert told["UK small"] == "under 53"
    assert told["UK very large"] == "73 and over"
    notes = {row.head: row.cells[1].note for row in egg_grid(desk.book, desk.facts).rows}
    assert notes["UK large"] == "55–67" and notes["UK small"] == "to 49" and notes["UK very large"] == "from 64"


def test_what_is_left_is_the_same_recipe_on_the_diagonal(desk: Desk) -> None:
    grid = left_grid(small_sums(desk.book, desk.facts), desk.facts)
    for place, row in enumerate(grid.rows):
        assert [cell.main for cell in row.cells].index(True) == place
        assert row.cells[place].text == "1.00"
