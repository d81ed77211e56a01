"""Layers on a cake's page: every tin, the drawing, what the cake does in its own way."""

import re
from collections.abc import Callable

import pytest
from tests.pages.conftest import both, owned_first

from tinbook.models import Finish
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.layers import LayersView, has_layers, own_words
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.layers import stack_table

N = "\u00a0"
Filled = Callable[[str], str]


def batch(desk: Desk, slug: str) -> Batch:
    return weigh(slug, desk.book.mixtures[slug], desk.book, desk.facts)


def view(desk: Desk, slug: str) -> LayersView:
    return LayersView(tin_table(batch(desk, slug), desk.book, desk.facts), desk)


def test_a_row_says_what_its_plan_says(desk: Desk) -> None:
    made = view(desk, "creamed-butter-sponge")
    rows = both(made.rows).split("\n")
    plan = owned_first(stack_table(made.table, desk.book, desk.facts).rows)
    assert len(rows) == len(plan)
    for row, each in zip(rows, plan, strict=True):
        stack = each.stack
        cells = [cell.replace(",", "") for cell in re.findall(r"<td[^>]*>([^<]*)", row)]
        told = (
            stack.tins, stack.layers, stack.layer_shown_mm, stack.stack_shown_mm, stack.coated_shown_mm,
            stack.weight_shown_g, stack.batter_shown_mm, stack.baked_shown_mm, stack.levelled_shown_mm,
        )  # fmt: skip
        assert cells == [f"{figure:g}" for figure in told]


def test_heads_and_cells_are_as_many(filled: Filled) -> None:
    table = (
        filled("mixtures/creamed-butter-sponge/tables").partition("Layers from each tin")[2].partition("</table>")[0]
    )
    head, _, body = table.partition("<tbody")
    rows = body.partition(">")[2].strip().split("\n")
    assert {row.count("<td") + row.count("<th") for row in rows} == {head.count("<th scope")}


def test_the_drawing_and_its_figures(filled: Filled, desk: Desk) -> None:
    text = filled("mixtures/creamed-butter-sponge/tables")
    assert "## Layers" in text
    found = re.search(r'<svg viewBox="0 0 460 [^"]*"[^>]* aria-label="([^"]+)"', text)
    assert found and "4 layers of" in found[1] and "crumb coat" in found[1]
    (drawn,) = view(desk, "creamed-butter-sponge").drawn
    assert drawn.told.startswith(f"batter 41{N}mm deep, baked 60{N}mm, levelled 54{N}mm, each cut into 2: 4{N}layers")
    assert f"<b>{drawn.tins}:</b> {drawn.told}" in text
    assert "layer = levelled / number of layers cut from each cake" in text


def test_what_a_cake_does_in_its_own_way(filled: Filled, desk: Desk) -> None:
    made = view(desk, "rich-fruit-cake")
    assert (
        made.own
        == "For this cake: no filling, no crumb coat, no final coat and the cake not cut; the rest is as usual."
    )
    (drawn,) = made.drawn
    assert "coated" not in drawn.told and f"1{N}layer" in drawn.told
    assert made.own in filled("mixtures/rich-fruit-cake/tables")
    assert view(desk, "creamed-butter-sponge").own == ""


@pytest.mark.parametrize(
    ("own", "told"),
    [
        ({"level_off": 0.05, "filling": 8.0}, f"For this cake: dome cut off 5% and filling 8{N}mm;"),
        ({"layers": 6, "cut": 3}, "For this cake: layers in a tier 6 and each cake cut into 3;"),
    ],
)
def test_own_figures_in_words(own: dict[str, float], told: str, desk: Desk) -> None:
    finish = Finish.model_construct(**{**Finish().model_dump(), **own})
    assert own_words(finishing(desk.book.finish, desk.facts, finish), finish).startswith(told)


def test_cups_and_fillings_have_no_layers(filled: Filled, desk: Desk) -> None:
    assert not has_layers(batch(desk, "cupcakes")) and not has_layers(batch(desk, "dark-ganache"))
    assert has_layers(batch(desk, "madeira-cake"))
    for slug in ("cupcakes", "dark-ganache"):
        assert "## Layers" not in filled(f"mixtures/{slug}/tables")
