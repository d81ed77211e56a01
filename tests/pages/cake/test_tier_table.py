"""The table by tier: every figure is that of `tinbook table cake`, columns without anything are left out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from tests.every import check_every
from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.tier_table import UNBROKEN, TierTable, tier_table
from tinbook.pages.spelling import formats
from tinbook.plans.base.asking import Query
from tinbook.plans.cakes.tables import cake as cake_table

COLUMNS = {
    "Batter": "mixture_shown_g", "Layers": "layers_count", "Filling": "filling_shown_g", "Coat": "coat_shown_g",
    "Cover": "paste_shown_g", "Dowels, card": "dowels_count", "Bake": "bake_check_min",
}  # fmt: skip
"""What each column is in the table by name."""


def cells(table: TierTable, nth: int) -> dict[str, str]:
    return {head.name: cell.text for head, cell in zip(table.heads, table.rows[nth].cells, strict=True)}


def same(shown: Mapping[str, str], row: Mapping[str, Any]) -> None:
    for name, text in shown.items():
        if name in COLUMNS:
            value = row[COLUMNS[name]]
            assert text == (formats.number(value) if value else "none"), name


def test_every_figure_is_that_of_the_table_by_name(demo: Loaded, in_sizes: list[CakeInSize]) -> None:
    def check(size: CakeInSize) -> None:
        asked = Query(of=size.cake.slug, size=None if size.written else size.key)
        *rows, in_all = cake_table(demo.book, demo.facts, asked).rows
        table, stacked = size.table, len(size.cake.design.tiers)
        # from the top down, then what stands beside it
        for nth, row in enumerate([*reversed(rows[:stacked]), *rows[stacked:]]):
            same(cells(table, nth), row)
            assert table.rows[nth].portions == str(row["portions_count"])
            baked_in = f"{row['tins_count']} ×" if nth < stacked else f"{row['portions_count']} standard cupcakes"
            assert table.rows[nth].tins.startswith(baked_in)
            bake = next(
                cell for head, cell in zip(table.heads, table.rows[nth].cells, strict=True) if head.name == "Bake"
            )
            assert bake.note.startswith(f"{row['bake_low_min']:g}{UNBROKEN}{row['bake_high_min']:g}")
        sums = {head.name: cell.text for head, cell in zip(table.heads, table.sums, strict=True)}
        assert sums.pop("Bake") == str(in_all["bakes_count"])
        same(sums, in_all)
        assert table.portions == str(in_all["portions_count"])

    check_every(in_sizes, check, lambda size: f"{size.cake.slug} {size.key}")


def test_printed_totals_sum_the_printed_rows(in_sizes: list[CakeInSize]) -> None:
    def figures(size: CakeInSize, name: str) -> tuple[list[float], float]:
        place = [head.name for head in size.table.heads].index(name)
        column = [row.cells[place].text for row in size.table.rows]
        return [float(text) for text in column if text != "none"], float(size.table.sums[place].text)

    for size in in_sizes:
        for head in size.table.heads:
            if head.name != "Bake":
                parts, whole = figures(size, head.name)
                assert sum(parts) == pytest.approx(whole), (size.key, head.name)


def test_tiers_stand_in_the_order_they_are_stacked_with_what_is_beside_below(desk: Desk, made: Made) -> None:
    cake = made({
        "tiers": ["28 cm", "23 cm", {"tier": "18 cm", "dummy": "yes"}, "13 cm"], "mixture": "madeira-cake",
        "height": "10 cm", "beside": "12 standard cups",
    })  # fmt: skip
    table = tier_table(cake, "written", desk)
    assert [row.place for row in table.rows] == ["Top", "Tier 3", "Tier 2", "Base", "Beside it"]
    foam, cups = table.rows[1], table.rows[-1]
    assert foam.bench is None and foam.plan is None and foam.mixture == "dummy of foam"
    assert cups.bench and cups.plan is None and cups.portions == "12"
    assert table.lines == len(table.heads) + 2


def test_a_column_nothing_is_in_is_left_out(desk: Desk, made: Made) -> None:
    plain = {"tiers": "20 cm", "mixture": "madeira-cake", "height": "10 cm", "cover": "none", "coat": "none"}
    named = [head.name for head in tier_table(made({**plain, "filling": "none"}), "written", desk).heads]
    assert named == ["Batter", "Layers", "Bake"]
