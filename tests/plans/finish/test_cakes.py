"""Which cakes are finished: the house's usual ones, or those a mixture bakes; one figure for one cake, wherever asked."""

from __future__ import annotations

import math
import re
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
from tinbook.plans.finish.used import learned
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


CELL = re.compile(r"<t[hd][^>]*>([^<\n]*)")


@pytest.mark.parametrize("slug", [SPONGE, "madeira-cake", "rich-fruit-cake"])
def test_the_page_says_what_the_tables_say(slug: str, demo: Loaded) -> None:
    """Every tin's line of the page, cell by cell, by the tables of coats, covers, boards and portions."""
    batch = weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts)
    table = tin_table(batch, demo.book, demo.facts)
    view = FinishedView(table, stack_table(table, demo.book, demo.facts), Desk(demo.book, demo.facts, {}))
    rows = view.rows.own + view.rows.rest
    lines = [CELL.findall(line) for line in rows.split("<tr") if "<td" in line]
    told = {name: by_tin(demo, name, slug) for name in ("covers", "boards", "portions")}
    coats = by_tin(demo, "coats", slug) if len(view.heads) == 10 else {}
    assert len(lines) == len(view.made.rows) == len(told["boards"]) == len(told["covers"]) > 30
    owned_first = sorted(view.made.rows, key=lambda row: not row.owned)
    for row, (_, *cells) in zip(owned_first, lines, strict=True):
        tin = row.cake.tin.name
        cover, board, served = (told[name][tin] for name in ("covers", "boards", "portions"))
        left = iter(cells)
        high_mm = board["height_mm"]
        assert float(next(left)) * 10 == pytest.approx(high_mm, abs=0.51)
        assert (cover["height_mm"], served["stands_mm"]) == (high_mm, high_mm)
        if coats:
            made, batches = next(left).split(" ")
            assert coats[tin]["height_mm"] == high_mm and batches == f"({coats[tin]['batches']})"
            assert 0 <= float(made) - coats[tin]["made_g"] < 5.0
        rolled, *allowed = next(left).split(" ")
        assert 0 <= float(rolled) - cover["roll_out_g"] < 5.0
        assert bool(allowed) == (round(cover["some_makers_allow_g"] / 5) * 5 > float(rolled))
        assert [float(most.strip("()")) for most in allowed] in (
            [],
            [pytest.approx(cover["some_makers_allow_g"], abs=2.51)],
        )
        across, ribbon, cake_ribbon, box = (next(left) for _ in range(4))
        assert -0.06 <= float(cake_ribbon) * 10 - board["cake_ribbon_mm"] < 5.0
        if board["taken_width_mm"] is None:
            assert (across, ribbon, box) == ("not a stock size", "–", "–")
        else:
            assert float(across.split("×")[0]) * 10 == pytest.approx(board["taken_width_mm"], abs=5.0)
            assert -0.06 <= float(ribbon) * 10 - board["usual_ribbon_mm"] < 5.0
            sides = [board[f"usual_box_{side}_mm"] for side in ("width", "length", "height")]
            assert [float(side) * 10 for side in box.split("×")] == sides
        for kind in ("finger", "dessert", "tea_slice"):
            count, *grams = next(left).split(" ")
            assert int(count) == served[f"{kind}_count"]
            each_g = served[f"{kind}_g"]
            assert [float(gram.strip("()")) for gram in grams] == (
                [] if each_g is None else [pytest.approx(each_g, abs=0.51)]
            )
        assert not list(left)


def by_tin(demo: Loaded, table: str, of: str) -> dict[object, dict[str, Any]]:
    return {row["tin"]: dict(row) for row in TABLES[table].rows(demo.book, demo.facts, Query(of=of)).rows}


def test_a_dome_is_as_high_as_it_is_round_and_filled_by_slices(demo: Loaded) -> None:
    """A half ball stands half as high as it is wide, whatever height is asked and whatever is baked in it."""
    icing = "american-buttercream"
    for query in ({"of": icing, "height_mm": 123.0}, {"of": icing}, {"of": SPONGE}):
        row = asked(demo, "coats", "dome 15 cm", **query)
        assert (row["height_mm"], row["layers"]) == (75.0, 4)
        # four slices of a half ball of 75 mm radius, cut at 18.75, 37.5 and 56.25 mm; the dam of 10 mm is left out
        radii_mm = [math.sqrt(75**2 - cut**2) - 10 for cut in (18.75, 37.5, 56.25)]
        volume_ml = sum(math.pi * radius_mm**2 for radius_mm in radii_mm) * 5 / 1000
        weighs = demo.facts.kinds["buttercream"].gravity.typical * learned_factor(demo)
        assert row["filling_g"] == pytest.approx(volume_ml * weighs, abs=0.01)
    assert asked(demo, "boards", "dome 15 cm", of=SPONGE) == asked(demo, "boards", "dome 15 cm", height_mm=200.0)


def learned_factor(demo: Loaded) -> float:
    """What the demo's log of cakes moves its icing by."""
    batch = weigh("american-buttercream", demo.book.mixtures["american-buttercream"], demo.book, demo.facts)
    return learned(batch, demo.book, demo.facts).factor
