"""Fillings and icings for every cake, spelled."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.pages.conftest import both, owned_first

from tinbook.models import Finish
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.coats import CoatsView, bowl_words
from tinbook.plans.base.finishing import finishing
from tinbook.plans.finish.covering import coat_table

N = "\u00a0"
Filled = Callable[[str], str]


def cells(rows: object) -> list[list[str]]:
    return [
        [cell.replace(",", "") for cell in re.findall(r"<td[^>]*>([^<]*)", row)]
        for row in str(rows).strip().split("\n")
    ]


def without(desk: Desk, **figures: object) -> Desk:
    finish = Finish.model_construct(**{**Finish().model_dump(), **figures})
    return Desk(replace(desk.book, finish=finish), desk.facts, {})


def test_coats_say_what_their_plan_says(desk: Desk) -> None:
    made = CoatsView(desk.batches["american-buttercream"], desk)
    tables = (coat_table(made.batch, desk.book, desk.facts, mm) for mm in (100.0, 75.0, 150.0))
    first, low, high = (owned_first(table.rows) for table in tables)
    rows = cells(both(made.rows))
    assert len(rows) == len(first)
    assert [head.name for head in made.heads] == [
        "Filling", "Crumb coat", "Final coat", "Border", "In all", "Batches", "Spare", f"7.5{N}cm high", f"15{N}cm high",
    ]  # fmt: skip
    for told, one, lower, higher in zip(rows, first, low, high, strict=True):
        assert told == [
            f"{figure:g}"
            for figure in (
                one.filling_shown_g, one.crumb_shown_g, one.final_shown_g, one.border_shown_g, one.made_shown_g,
                one.batches, one.over_shown_g, lower.made_shown_g, higher.made_shown_g,
            )
        ]  # fmt: skip


def test_chocolate_and_cream_stand_there_for_the_amount_made(desk: Desk, filled: Filled) -> None:
    made = CoatsView(desk.batches["dark-ganache"], desk)
    names = [head.name for head in made.split_heads]
    lines = cells(both(made.split_rows))
    chocolate, cream = (next(i for i, name in enumerate(names) if word in name) for word in ("chocolate", "cream"))
    written = {line.name: line.mass_g for line in made.batch.ingredients}
    ratio = next(g for name, g in written.items() if "chocolate" in name) / next(
        g for name, g in written.items() if "cream" in name
    )
    for line, row in zip(lines, owned_first(made.tables[0].rows), strict=True):
        got = [float(cell.replace(",", "")) for cell in line]
        # each is rounded to 5 g
        assert got[chocolate] == pytest.approx(ratio * got[cream], abs=2.5 * (1.0 + ratio))
        # all parts together are the amount made, but for the rounding of each
        assert sum(got[:-1]) == pytest.approx(row.made_g * made.batch.mass_g / made.batch.makes_g, abs=10)
    assert "Ingredients for those amounts" in filled("mixtures/dark-ganache/tables")


def test_what_only_fills_has_no_coats(desk: Desk, filled: Filled) -> None:
    made = CoatsView(desk.batches["lemon-curd"], desk)
    assert [head.name for head in made.heads] == ["Filling", "In all", "Batches", "Spare"]
    assert "crumb" not in made.lead and "border" not in made.lead and f"inside a dam of 10{N}mm" in made.lead
    assert {len(row) for row in cells(both(made.rows))} == {4}


def test_the_lead_says_thickness_bowl_and_log(desk: Desk, filled: Filled) -> None:
    lead = CoatsView(desk.batches["american-buttercream"], desk).lead
    for words in (f"10{N}cm high in 4{N}layers", f"crumb coat 2{N}mm", "The dam is counted as final coat",
                  "5% stays in the bowl", "3 of your cakes took"):  # fmt: skip
        assert words in lead
    assert lead.replace("'", "&#39;") in filled("mixtures/american-buttercream/tables")
    assert "of your cakes" not in CoatsView(desk.batches["royal-icing"], desk).lead


def test_columns_of_nothing_are_left_out(desk: Desk) -> None:
    bare = without(desk, crumb_coat=0.0, heights=(100.0,), stays_in_the_bowl=0.0)
    made = CoatsView(bare.batches["american-buttercream"], bare)
    assert [head.name for head in made.heads] == ["Filling", "Final coat", "In all", "Batches", "Spare"]
    assert "crumb" not in made.lead and "bowl" not in made.lead
    assert bowl_words(finishing(bare.book.finish, bare.facts)) == ""
