"""Tins at a glance."""

from collections.abc import Callable

import pytest

from tinbook.pages.at_a_glance.tins import TinsView
from tinbook.pages.base.page import Desk


def test_a_20_cm_round_in_a_25_cm_square(desk: Desk) -> None:
    """625 cm² over 314.16 cm² is 1.99, by any table of areas."""
    view = TinsView(desk)
    line = next(line for line in view.lines if (line.head.shape, line.head.metric) == ("Round", "20"))
    column = next(at for at, head in enumerate(view.heads) if (head.shape, head.metric) == ("Square", "25"))
    assert line.cells[column].text == "1.99" and line.cells[column].more


def test_the_matrix_is_one_where_a_tin_meets_itself(desk: Desk) -> None:
    for at, line in enumerate(TinsView(desk).lines):
        assert line.cells[at].same and line.cells[at].text == "1.00" and not line.cells[at].more


def test_sizes_are_found_by_both_names(filled: Callable[[str], str]) -> None:
    assert "20 cm or 8 inch" in filled("tins")


def test_the_browser_compares_the_same_ml(desk: Desk) -> None:
    view = TinsView(desk)
    ml = {tin["name"]: tin["ml"] for tin in view.tins}
    assert ml["square 25 cm"] / ml["round 20 cm"] == pytest.approx(625 / (3.14159265 * 100), rel=1e-6)
