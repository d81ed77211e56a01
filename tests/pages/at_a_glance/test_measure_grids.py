"""Kitchen measures on the page of measures."""

from dataclasses import replace

from tinbook.pages.at_a_glance.measure_grids import cup_grid, oven_grid, pound_grids, spoon_grid
from tinbook.pages.base.page import Desk


def test_a_private_card_is_in_no_table(desk: Desk) -> None:
    cards = {**desk.book.cards, "butter": desk.book.cards["butter"].model_copy(update={"private": True})}
    cups = cup_grid(Desk(replace(desk.book, cards=cards), desk.facts, {}))
    assert "Butter" not in {row.head for row in cups.rows}
    assert cups.narrow


def test_measures_go_by_their_names(desk: Desk) -> None:
    """GNU units: a US cup is 8 US fluid ounces, a UK pint 20 of its own."""
    heads = {row.head: row for row in spoon_grid(desk.book, desk.facts).rows}
    assert {"US cup", "Metric tablespoon", "Australian tablespoon", "Pinch"} <= set(heads)
    assert heads["US cup"].cells[1].text == "8"
    *_, pints = pound_grids(desk.facts)
    notes = {row.head: row.note for row in pints.rows}
    assert (notes["4"], notes["5"], notes["20"], notes["1"]) == ("US ½ cup", "UK ¼ pint", "UK pint", "")


def test_a_range_of_an_oven_keeps_both_ends(desk: Desk) -> None:
    """The fan is 20 °C less at either end of what is printed."""
    for row in oven_grid(desk.facts).rows:
        conventional, fan, *_ = (cell.text for cell in row.cells)
        assert [float(end) + 20 for end in fan.split("–")] == [float(end) for end in conventional.split("–")]
