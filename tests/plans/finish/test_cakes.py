"""Which cakes are finished: the house's usual ones, or those a mixture bakes; one figure for one cake, wherever asked."""

from __future__ import annotations

from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.finished import FinishedView
from tinbook.plans.base.asking import Query
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import weigh
from tinbook.plans.finish.cakes import baked_cakes, usual_cakes
from tinbook.plans.finish.layers import stack_table
from tinbook.plans.tables import TABLES

SPONGE = "creamed-butter-sponge"


def asked(demo: Loaded, table: str, tin: str, **query: Any) -> dict[str, Any]:
    rows = TABLES[table].rows(demo.book, demo.facts, Query(**query)).rows
    (row,) = [row for row in rows if row["tin"] == tin]
    return dict(row)


def test_no_cups_among_the_cakes_of_the_house(kitchen: Book, facts: Facts) -> None:
    cakes = list(usual_cakes(kitchen, facts, 100.0).with_room(6.0))
    assert {cake.tin.shape for cake, _ in cakes} >= {"round", "square", "rectangle", "loaf", "ring"}
    assert not any(cake.tin.kind.in_trays for cake, _ in cakes)
    assert any(owned for _, owned in cakes)


def test_a_cake_stands_as_high_as_it_bakes(demo: Loaded) -> None:
    table = tin_table(weigh(SPONGE, demo.book.mixtures[SPONGE], demo.book, demo.facts), demo.book, demo.facts)
    stacks = {row.stack.tin: row.stack for row in stack_table(table, demo.book, demo.facts).rows}
    cakes = baked_cakes(table, demo.book, demo.facts)
    for cake, _ in cakes.rows:
        if cake.solid == "upright":
            assert (cake.height_mm, cake.layers) == (stacks[cake.tin].stack_mm, stacks[cake.tin].layers)
    with pytest.raises(ValueError, match="a height of its own"):
        _ = cakes.usual_mm


@pytest.mark.parametrize("tin", ["round 15 cm", "square 20 cm", "heart 20 cm"])
def test_the_cakes_own_height_drives_all_that_finishes_it(demo: Loaded, tin: str) -> None:
    """The sponge stands over 12 cm: coats, cover, box and ribbon are for that, not for the house's usual 10 cm."""
    own, usual = asked(demo, "coats", tin, of=SPONGE), asked(demo, "coats", tin, of="american-buttercream")
    assert own["height_mm"] > 110 > usual["height_mm"]
    assert own["made_g"] > usual["made_g"] and own["mixture"] == usual["mixture"]
    cover, flat = asked(demo, "covers", tin, of=SPONGE), asked(demo, "covers", tin, of="sugarpaste")
    assert cover["on_the_cake_g"] > flat["on_the_cake_g"] and cover["roll_out_g"] > flat["roll_out_g"]
    board, low = asked(demo, "boards", tin, of=SPONGE), asked(demo, "boards", tin)
    for drum in ("least", "usual", "wide"):
        higher = board[f"{drum}_box_height_mm"] - low[f"{drum}_box_height_mm"]
        assert higher == pytest.approx(own["height_mm"] - usual["height_mm"], abs=5.1)
    assert asked(demo, "portions", tin, of=SPONGE)["stands_mm"] == own["height_mm"]


def test_asked_at_that_height_it_is_the_same_cake(demo: Loaded) -> None:
    own = asked(demo, "coats", "round 20 cm", of=SPONGE)
    same = asked(demo, "coats", "round 20 cm", of=own_mixture(demo), height_mm=own["height_mm"])
    for key in ("filling_g", "crumb_coat_g", "final_coat_g", "border_g", "made_g", "batches"):
        assert same[key] == pytest.approx(own[key], rel=1e-4)


def own_mixture(demo: Loaded) -> str:
    made = demo.book.finish.made_with
    assert made and made.filling
    return made.filling


def test_the_page_says_what_the_tables_say(demo: Loaded) -> None:
    batch = weigh(SPONGE, demo.book.mixtures[SPONGE], demo.book, demo.facts)
    table = tin_table(batch, demo.book, demo.facts)
    view = FinishedView(table, stack_table(table, demo.book, demo.facts), Desk(demo.book, demo.facts, {}))
    row = next(row for row in view.made.rows if row.cake.tin.name == "round 15 cm")
    (made,) = row.made
    told, paste = asked(demo, "coats", "round 15 cm", of=SPONGE), asked(demo, "covers", "round 15 cm", of=SPONGE)
    assert (round(made.made_g, 2), made.batches) == (told["made_g"], told["batches"])
    assert row.paste and round(row.paste.made_g, 2) == paste["roll_out_g"]
    assert f"{made.made_shown_g:g} ({made.batches})" in view.rows
