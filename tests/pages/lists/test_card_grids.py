"""The grids of an ingredient's page."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tinbook.models import Card
from tinbook.pages.base.page import Desk
from tinbook.pages.lists.card_grids import egg_grid, swap_grid, weight_grid
from tinbook.plans.measures.ingredients import weights
from tinbook.plans.measures.swaps import swap_table


@pytest.mark.parametrize(("part", "grams"), [("whole egg", "50"), ("egg white", "33"), ("egg yolk", "17")])
def test_an_egg_by_weight_class_by_class(desk: Desk, part: str, grams: str) -> None:
    """Of a US large egg the USDA says 50, 33 and 17 g."""
    grid = egg_grid(part, desk)
    assert grid.title == "By weight"
    assert next(row.cells[0].text for row in grid.rows if row.head == "US large") == grams
    assert [row.head for row in grid.rows if row.note] == ["UK large"]


def test_what_it_weighs_with_its_range(desk: Desk) -> None:
    """USDA SR28: a US cup of butter is 227 g."""
    grid = weight_grid("butter", weights(desk.book.cards["butter"], desk.book, desk.facts), desk.facts)
    assert grid is not None and grid.title == "Butter by cup and spoon"
    cup = next(row for row in grid.rows if row.head == "US cup")
    assert (cup.cells[0].text, cup.cells[2].text, cup.note) == ("227", "8", "used here")
    assert {"Metric tablespoon", "Australian tablespoon"} <= {row.head for row in grid.rows}
    assert grid.after.endswith("Source: USDA SR28.")


def test_a_weight_of_the_houses_own_has_no_range(desk: Desk, card: Callable[..., Card]) -> None:
    grid = weight_grid("oats", weights(card(weighs="90 g per US cup"), desk.book, desk.facts), desk.facts)
    assert grid is not None
    assert {row.cells[1].text for row in grid.rows} == {"weighed here"}
    assert grid.after.endswith("Weighed in this kitchen.")


def test_what_has_no_volume_measure_has_no_grid(desk: Desk) -> None:
    weight = weights(desk.book.cards["sugarpaste"], desk.book, desk.facts)
    assert weight_grid("sugarpaste", weight, desk.facts) is None


def test_every_swap_has_a_cell_for_each_part(desk: Desk) -> None:
    for key, swap in desk.facts.swaps.items():
        grid = swap_grid(swap_table(key, desk.book, desk.facts), desk.facts)
        assert len(grid.heads) == len(swap.parts) + 1
        assert [len(row.cells) for row in grid.rows] == [len(swap.parts)] * len(swap.amounts), key


def test_a_swap_says_what_it_brings_and_what_is_left_out(desk: Desk) -> None:
    grid = swap_grid(swap_table("salted for unsalted", desk.book, desk.facts), desk.facts)
    assert "This swap contains milk (an allergen)." in grid.after
    assert "g, left out" in [head.unit for head in grid.heads]
