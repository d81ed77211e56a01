"""Pastes for every cake, spelled."""

import re
from collections.abc import Callable

from tests.pages.conftest import both, owned_first

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.pastes import PastesView, rolled
from tinbook.plans.finish.covering import paste_table

N = "\u00a0"
Filled = Callable[[str], str]


def cells(rows: object) -> list[list[str]]:
    return [
        [cell.replace(",", "") for cell in re.findall(r"<td[^>]*>([^<]*)", row)]
        for row in str(rows).strip().split("\n")
    ]


def test_pastes_say_what_their_plan_says(desk: Desk, filled: Filled) -> None:
    made = PastesView(desk.batches["marzipan"], desk)
    plan = owned_first(paste_table(made.batch, desk.book, desk.facts).rows)
    for told, row in zip(cells(both(made.rows)), plan, strict=True):
        low, high = told[1].split("–")
        assert float(low) <= float(told[0]) <= float(high)
        assert told[2] == rolled(row)
        assert [float(told[i]) for i in (0, 3, 4, 5)] == [
            row.net_shown_g, row.made_shown_g, row.back_shown_g, row.batches,
        ]  # fmt: skip
        more = row.net_high_shown_g > row.made_shown_g
        assert told[6] == (f"{row.net_high_shown_g:g}" if more else "no more")
        assert len(told) == len(made.heads)
    assert made.heads[6].name == "Some cake makers allow"
    assert "1 of your cakes took" in made.lead and f"5{N}mm thick on the cake" in made.lead
    text = filled("mixtures/marzipan/tables")
    assert "## Cover " in text and "one chart for marzipan works out at 5.2 to 9.3 mm" in text


def test_a_disc_and_a_rectangle_in_words(desk: Desk) -> None:
    rows = paste_table(desk.batches["marzipan"], desk.book, desk.facts).rows
    by_name = {row.cake.tin.name: rolled(row) for row in rows}
    assert by_name["round 20 cm"].endswith(" across") and "×" not in by_name["round 20 cm"]
    # by hand: 20 cm, coats of 6 mm on all sides, twice 10 cm and the coat on top, 5 cm over; up to the half cm
    assert by_name["square 20 cm"] == f"47.5{N}×{N}47.5"
    assert 200 + 12 + 2 * 106 + 50 == 474
