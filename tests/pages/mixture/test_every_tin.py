"""A mixture for every tin, as the plans have it."""

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.every_tin import EveryTinView
from tinbook.pages.mixture.view import MixtureView

N = "\u00a0"


def every_tin(desk: Desk, slug: str) -> EveryTinView:
    return MixtureView(desk.batches[slug], desk).every_tin


def test_a_fold_says_how_far_rounding_leads(desk: Desk) -> None:
    said = every_tin(desk, "creamed-butter-sponge").lead
    assert said.startswith("Whole eggs, and everything follows them.") and "of a weight" in said


@pytest.mark.parametrize("slug", ["creamed-butter-sponge", "cupcakes"])
def test_a_line_each_tin_and_a_cell_each_head(desk: Desk, slug: str) -> None:
    made = every_tin(desk, slug)
    ingredients = len(made.batch.ingredients)
    lines, exact_lines = list(made.lines), list(made.exact_lines)
    assert len(lines) == len(exact_lines) == len(made.table.rows)
    assert len(made.heads) == len(made.exact_heads) == ingredients
    # each ingredient, check and done, then weight, depth, factor and how far off; mixes and bakes are words
    assert {len(line.cells) for line in lines} == {ingredients + 6}
    assert {len(line.cells) for line in exact_lines} == {ingredients + 1}


def test_eggs_are_counted_by_the_class_the_house_buys(desk: Desk) -> None:
    made = every_tin(desk, "creamed-butter-sponge")
    place = next(at for at, line in enumerate(made.batch.ingredients) if line.whole_egg)
    assert made.heads[place].unit == desk.book.house.eggs
    assert made.exact_heads[place].unit == "g"


def test_it_says_how_the_baking_was_worked_out_too(desk: Desk) -> None:
    made = every_tin(desk, "creamed-butter-sponge")
    assert made.baking is not None
    assert len(made.worked.formulas) == 3
    assert made.tin_count == f"2{N}tins"
