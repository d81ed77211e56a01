"""A mixture for every tin, as the plans have it."""

from dataclasses import replace

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.every_tin import MOST_LINES, EveryTinView, TinSheet
from tinbook.pages.mixture.view import MixtureView

N = "\u00a0"


def cells_of(sheet: TinSheet) -> list[int]:
    """How many cells each row has."""
    return [row.count("<td") for body in sheet.bodies for row in str(body.rows).split("\n")]


def every_tin(desk: Desk, slug: str) -> EveryTinView:
    return MixtureView(desk.batches[slug], desk).every_tin


def test_a_fold_says_how_far_rounding_leads(desk: Desk) -> None:
    said = every_tin(desk, "creamed-butter-sponge").lead
    assert (
        said.startswith("Eggs stay whole and everything else is scaled to match.")
        and "Rounding changes a weight by at most" in said
    )


@pytest.mark.parametrize("slug", ["creamed-butter-sponge", "cupcakes"])
def test_a_line_each_tin_and_a_cell_each_head(desk: Desk, slug: str) -> None:
    made = every_tin(desk, slug)
    ingredients = len(made.batch.ingredients)
    own = sum(row.owned for row in made.table.rows)
    assert made.rest_count == len(made.table.rows) - own > 10
    # each ingredient, check and done, then weight, depth, factor and how far off
    for sheets, many in ((made.own, own), (made.rest, made.rest_count)):
        (sheet,) = sheets
        assert cells_of(sheet) == [ingredients + 6] * many and len(sheet.heads) == ingredients + 6
    # the exact amounts are all in one table, the house's tins first
    (exact,) = made.exact
    assert cells_of(exact) == [ingredients + 1] * (own + made.rest_count) and len(exact.heads) == ingredients + 1
    assert [(body.lent, body.rows.count("<tr")) for body in exact.bodies] == [(False, own), (True, made.rest_count)]
    assert [body.lent for sheet in (*made.own, *made.rest) for body in sheet.bodies] == [False, True]


def test_a_long_list_leaves_the_oven_to_a_table_of_its_own(desk: Desk) -> None:
    made = every_tin(desk, "rich-fruit-cake")
    ingredients = len(made.batch.ingredients)
    amounts, oven = made.own
    assert ingredients > MOST_LINES and len(amounts.heads) == ingredients and len(oven.heads) == 6
    assert set(cells_of(amounts)) == {ingredients} and set(cells_of(oven)) == {6}
    # the browser works out what carries a factor: the amounts alone
    assert "data-factor" in amounts.bodies[0].rows and "data-factor" not in oven.bodies[0].rows
    # the sizes in inches stand in the first of the two
    assert "8\u00a0in" in amounts.bodies[0].rows and "8\u00a0in" not in oven.bodies[0].rows
    assert (amounts.oven, oven.oven) == (False, True)
    assert amounts.stands and not oven.stands


def test_a_house_without_tins_sees_them_all(desk: Desk) -> None:
    bare = Desk(replace(desk.book, tins=()), desk.facts, {})
    made = every_tin(bare, "creamed-butter-sponge")
    assert made.rest == () and made.rest_count == 0 and len(cells_of(made.own[0])) == len(made.table.rows)


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
