"""Covering at a glance, spelled."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.models import Finish
from tinbook.pages.at_a_glance.covering import CoveringView
from tinbook.pages.base.page import Desk

N = "\u00a0"


def test_every_row_is_whole(desk: Desk) -> None:
    view = CoveringView(desk)
    (grid,) = view.items
    assert [head.name for head in grid.heads] == [
        "Tin", "Filling", "Crumb coat", "Final coat", "In all", "On the cake", "To roll", "Roll out to", "Drum",
        "Ribbon", "Ribbon",
    ]  # fmt: skip
    assert len(grid.rows) == len(view.table.rows) > 30
    for row in grid.rows:
        assert len(row.cells) == len(grid.heads) - 1 and all(cell.text for cell in row.cells)
        assert dict(row.marks)["tag"] == ("others" if row.lent else "on hand")
    (ours,) = [row for row in grid.rows if row.head == f"round 20{N}cm"]
    plan = next(row for row in view.table.rows if row.cake.tin.name == "round 20 cm")
    assert ours.cells[3].text == f"{plan.made[0].made_shown_g:g}" and ours.cells[3].note == f"2{N}batches"
    # bought is what is rolled out, in whole packs; what the most generous chart comes to stands beside it
    assert plan.paste and plan.paste.net_high_shown_g > plan.paste.made_shown_g
    assert ours.cells[5].note == f"1000{N}g + 250{N}g; some cake makers allow {plan.paste.net_high_shown_g:g}{N}g"
    assert (ours.cells[7].text, ours.cells[7].note) == (f"28{N}cm", f"11{N}in")
    # the house's own tins first, and one rule before the others
    lent = [row.lent for row in grid.rows]
    assert lent == sorted(lent) and [row.first for row in grid.rows].index(True) == lent.index(True)
    assert sum(row.first for row in grid.rows) == 1


def test_the_mixtures_are_named_linked_and_their_log_told(filled: Callable[[str], str], desk: Desk) -> None:
    text = filled("covering")
    for words in ("/mixtures/american-buttercream#", "/ingredients/sugarpaste#", "/boards#", "3 of your cakes took",
                  "Filling, crumb coat and final coat", "stays in the bowl", 'data-narrow="cakes"',
                  'data-narrow-kind="Shape"', "How this was worked out"):  # fmt: skip
        assert words in text
    assert "is named yet" not in text


def test_a_house_that_has_named_nothing_is_told_where(desk: Desk) -> None:
    bare = CoveringView(Desk(replace(desk.book, finish=Finish()), desk.facts, {}))
    assert bare.plays == () and bare.missing == "filling, crumb coat, final coat and cover"
    (grid,) = bare.items
    assert [head.name for head in grid.heads] == ["Tin", "Drum", "Ribbon", "Ribbon"]


def test_a_mixture_that_is_held_back_is_not_named(desk: Desk) -> None:
    mixtures = {slug: mix for slug, mix in desk.book.mixtures.items() if slug != "american-buttercream"}
    shown = CoveringView(Desk(replace(desk.book, mixtures=mixtures), desk.facts, {}))
    assert [each.address for each in shown.plays] == ["ingredients/sugarpaste"]
    assert shown.missing == "filling, crumb coat and final coat"
