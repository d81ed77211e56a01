"""A list over sheets has every row once."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tinbook.pages.base.sheets import FOLDER, ROWS, sheet_address, sheet_with, sheets_of


@given(st.integers(0, 400), st.integers(1, 40), st.integers(0, 60))
def test_every_row_is_on_one_sheet(rows: int, most: int, later: int) -> None:
    """Every sheet links to all of them, so of two thousand the test would look at millions of links."""
    sheets = sheets_of("mixtures/index", rows, most, later)
    assert bool(sheets) == (rows > most)
    assert [row for sheet in sheets for row in range(sheet.first, sheet.end)] == list(range(rows if sheets else 0))
    for place, sheet in enumerate(sheets):
        assert sheet.number == place + 1 and 0 < sheet.end - sheet.first <= (later or most if place else most)
        assert [link.address for link in sheet.links] == [each.address for each in sheets]
        assert [link.number for link in sheet.links if link.here] == [sheet.number]
        assert sheet.next == (sheets[place + 1].address if place + 1 < len(sheets) else "")
    assert len({sheet.address for sheet in sheets}) == len(sheets)
    for row in (0, rows // 2, rows - 1):
        wanted = [sheet.address for sheet in sheets if row in range(sheet.first, sheet.end)]
        assert sheet_with(sheets, row, "mixtures/index") == (wanted[0] if wanted else "mixtures/index")


def test_a_page_says_which_rows_it_has() -> None:
    first, second = sheets_of("tags/dates", ROWS + 1)
    assert (first.said, second.said) == (f"1 to {ROWS} of {ROWS + 1}", f"{ROWS + 1} to {ROWS + 1} of {ROWS + 1}")
    assert (first.titled("Dates"), second.titled("Dates")) == ("Dates", "Dates, page 2")
    assert (first.is_first, second.is_first) == (True, False)


def test_sheets_are_out_of_the_way_of_whatever_a_baker_calls_a_file() -> None:
    assert sheet_address("mixtures/index", 1) == "mixtures/index"
    assert sheet_address("mixtures/index", 3) == f"{FOLDER}mixtures/3" == "lists/mixtures/3"
    assert sheet_address("mixtures/kinds/mud", 2) == "lists/mixtures/kinds/mud/2"
