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
    assert over_words(best) == "serves 35, 15 left over"
    (cups,) = answers(view.choices, Wish(guests=60, beside="cupcakes"), 1)
    assert set_words(view.choices, cups).endswith("and 36 standard cupcakes")
    (none,) = answers(view.choices, Wish(guests=10, stacked=True), 1)
    assert over_words(none) == "serves 35, 25 left over"


def test_supports_are_counted_in_and_out(filled: Callable[[str], str]) -> None:
    page = filled("guests")
    assert all(f"<b>{title}.</b>" in page for title in ("Dowels", "Moving and carrying"))
    assert "<b>Wires.</b>" not in page
    assert "Count everything in" in page


def test_the_browser_is_handed_all_sets(desk: Desk) -> None:
    data = GuestsView(desk).script_data
    assert len(data["sets"]) == len(GuestsView(desk).choices.sets)
    assert all(len(tin) == 8 for tin in data["tins"])
    assert [kind for kind, _ in data["kinds"]] == ["finger", "dessert", "tea slice"]
    assert "madeira-cake" in [slug for slug, *_ in data["mixtures"]]


def test_own_tins_first_others_apart(desk: Desk) -> None:
    view = GuestsView(desk)
    owned = {tier.tin.name for tier in view.choices.tiers if tier.owned}
    own, others = (
        [each.name.replace(N, " ").split(" + ") for each in sets] for sets in (view.own_sets, view.other_sets)
    )
    assert own and all(set(names) <= owned for names in own)
    assert others and all(not set(names) <= owned for names in others)
    assert all(each.serves >= view.usual_guests for each in (*view.own_sets, *view.other_sets))
    best = view.own_sets[0]
    assert best.name == f"round 23{N}cm + round 15{N}cm" and best.tiers_mm == (150, 230)
    assert best.note.startswith("serves 43, 3 left over; 1.88") and best.note.endswith("l of batter")


def test_the_first_answer_stands_in_the_page_before_any_words(filled: Callable[[str], str]) -> None:
    page = filled("guests")
    assert (
        page.index('name="guests"')
        < page.index("round 23")
        < page.index("With tins you would have to borrow")
        < page.index("Cakes are 10")
    )
