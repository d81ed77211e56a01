"""From guests to tins, spelled."""

from __future__ import annotations

from collections.abc import Callable

from tinbook.pages.at_a_glance.guests import GuestsView, over_words, set_words
from tinbook.pages.base.page import Desk
from tinbook.plans.portions.guests import GUESTS, Wish, answers

N = "\u00a0"


def test_a_table_for_each_kind_of_portion(desk: Desk) -> None:
    grids = GuestsView(desk).items
    assert [grid.anchor for grid in grids] == ["dessert", "finger", "tea-slice"]
    for grid in grids:
        assert [row.head for row in grid.rows] == [str(guests) for guests in GUESTS]
        assert all(len(row.cells) == len(grid.heads) - 1 for row in grid.rows)


def test_a_set_in_words(desk: Desk) -> None:
    view = GuestsView(desk)
    (best,) = answers(view.choices, Wish(guests=20, stacked=True), 1)
    assert set_words(view.choices, best) == f"round 20 + 15{N}cm"
    assert over_words(best) == "serves 35, 15 over"
    (cups,) = answers(view.choices, Wish(guests=60, beside="cupcakes"), 1)
    assert set_words(view.choices, cups).endswith("and 36 standard cups")
    (none,) = answers(view.choices, Wish(guests=10, stacked=True), 1)
    assert over_words(none) == "serves 35, 25 over"


def test_supports_are_counted_in_and_out(filled: Callable[[str], str]) -> None:
    page = filled("guests")
    assert all(f"<b>{title}.</b>" in page for title in ("Dowels", "Moving and carrying"))
    assert "<b>Wires.</b>" not in page
    assert "Count everything in" in page


def test_the_browser_is_handed_all_sets(desk: Desk) -> None:
    data = GuestsView(desk).script_data
    assert len(data["sets"]) == len(GuestsView(desk).choices.sets)
    assert all(len(tin) == 7 for tin in data["tins"])
    assert [kind for kind, _ in data["kinds"]] == ["finger", "dessert", "tea slice"]
    assert desk.book.mixtures["madeira-cake"].name in [name for name, *_ in data["mixtures"]]
