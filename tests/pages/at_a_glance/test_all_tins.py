"""All tins: factors to every round and every square, and what each holds."""

from collections.abc import Callable

import pytest

from tinbook.pages.at_a_glance.all_tins import AllTinsView
from tinbook.pages.base.page import Desk


def test_a_matrix_to_rounds_and_one_to_squares(desk: Desk) -> None:
    view = AllTinsView(desk)
    rounds, squares = view.items
    assert {head.shape for head in rounds.heads} == {"Round"} and {head.shape for head in squares.heads} == {"Square"}
    for matrix in (rounds, squares):
        assert [line.head.name for line in matrix.lines] == [tin.name for tin, _ in view.shelf.matrix]
    line = next(line for line in squares.lines if line.head.name == "round 20 cm")
    column = next(at for at, head in enumerate(squares.heads) if head.name == "square 25 cm")
    assert line.cells[column].text == "1.99" and line.cells[column].more


def test_the_matrix_is_one_where_a_tin_meets_itself(desk: Desk) -> None:
    met = 0
    for matrix in AllTinsView(desk).items:
        for line in matrix.lines:
            for head, cell in zip(matrix.heads, line.cells, strict=True):
                assert cell.same == (head.name == line.head.name)
                if cell.same:
                    met += 1
                    assert cell.text == "1" and not cell.more
    assert met == len(AllTinsView(desk).shelf.matrix)


def test_sizes_are_found_by_both_names(filled: Callable[[str], str]) -> None:
    page = filled("tins/all")
    assert "20 cm or 8 inch" in page and 'id="holds-square"' in page


def test_the_browser_compares_the_same_ml(desk: Desk) -> None:
    told = AllTinsView(desk).tins
    ml = {row[told["heads"].index("name")]: row[told["heads"].index("ml")] for row in told["rows"]}
    assert len(ml) == len(AllTinsView(desk).shelf.tins)
    assert ml["square 25 cm"][0] / ml["round 20 cm"][0] == pytest.approx(625 / (3.14159265 * 100), rel=1e-6)
