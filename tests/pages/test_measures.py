"""The page of measures."""

from collections.abc import Callable

from tinbook.pages.measures import MeasuresView
from tinbook.pages.page import Desk


def test_every_table_is_there(filled: Callable[[str], str]) -> None:
    text = filled("measures")
    for words in ("Gas mark", "US cup", "UK large", "Baking powder", "of this house"):
        assert words in text


def test_egg_ranges_in_words(desk: Desk) -> None:
    told = {row.egg_class: shell for row, shell in MeasuresView(desk).egg_lines}
    assert told["UK large"] == "63 to under 73"
    assert told["UK small"] == "under 53"
    assert told["UK very large"] == "73 and over"
