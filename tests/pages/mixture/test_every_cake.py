"""Fillings, icings and pastes for every cake, spelled."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.models import Finish
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.every_cake import CoatsView, FinishView, PastesView, bowl_words, rolled
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.covering import coat_table, paste_table

N = "\u00a0"
Filled = Callable[[str], str]


def batch(desk: Desk, slug: str) -> Batch:
    return weigh(slug, desk.book.mixtures[slug], desk.book, desk.facts)


def cells(rows: object) -> list[list[str]]:
    return [
        [cell.replace(",", "") for cell in re.findall(r"<td[^>]*>([^<]*)", row)]
        for row in str(rows).strip().split("\n")
    ]


def without(desk: Desk, **figures: object) -> Desk:
    finish = Finish.model_construct(**{**Finish().model_dump(), **figures})
    return Desk(replace(desk.book, finish=finish), desk.facts, {})


def test_what_each_mixture_has(desk: Desk) -> None:
    def of(slug: str) -> tuple[bool, bool, bool]:
        made = FinishView(batch(desk, slug), desk, lambda: pytest.fail("no table is needed to know"))
        return made.is_cut, made.fills, made.covers

    assert of("madeira-cake") == (True, False, False)
    assert of("royal-icing") == of("lemon-curd") == (False, True, False)
    assert of("marzipan") == (False, False, True)
    assert of("modelling-paste") == of("sugar-syrup") == of("cupcakes") == (False, False, False)


def test_coats_say_what_their_plan_says(desk: Desk) -> None:
    made = CoatsView(batch(desk, "american-buttercream"), desk)
    first, low, high = (coat_table(made.batch, desk.book, desk.facts, mm) for mm in (100.0, 75.0, 150.0))
    rows = cells(made.rows)
    assert len(rows) == len(first.rows)
    assert [head.name for head in made.heads] == [
        "Filling", "Crumb coat", "Final coat", "Border", "In all", "Batches", "Over", f"7.5{N}cm high", f"15{N}cm high",
    ]  # fmt: skip
    for told, one, lower, higher in zip(rows, first.rows, low.rows, high.rows, strict=True):
        assert told == [
            f"{figure:g}"
            for figure in (
                one.filling_shown_g, one.crumb_shown_g, one.final_shown_g, one.border_shown_g, one.made_shown_g,
                one.batches, one.over_shown_g, lower.made_shown_g, higher.made_shown_g,
            )
        ]  # fmt: skip


def test_chocolate_and_cream_stand_there_for_the_amount_made(desk: Desk, filled: Filled) -> None:
    made = CoatsView(batch(desk, "dark-ganache"), desk)
    names = [head.name for head in made.split_heads]
    lines = list(made.split_lines)
    chocolate, cream = (next(i for i, name in enumerate(names) if word in name) for word in ("chocolate", "cream"))
    written = {line.name: line.mass_g for line in made.batch.ingredients}
    ratio = next(g for name, g in written.items() if "chocolate" in name) / next(
        g for name, g in written.items() if "cream" in name
    )
    for line, row in zip(lines, made.tables[0].rows, strict=True):
        got = [float(cell.replace(",", "")) for cell in line.cells]
        assert got[chocolate] / got[cream] == pytest.approx(ratio, rel=0.03)
        # all parts together are the amount made, but for the rounding of each
        assert sum(got[:-1]) == pytest.approx(row.made_g * made.batch.mass_g / made.batch.makes_g, abs=10)
    assert "What goes into that much" in filled("mixtures/dark-ganache")


def test_what_only_fills_has_no_coats(desk: Desk, filled: Filled) -> None:
    made = CoatsView(batch(desk, "lemon-curd"), desk)
    assert [head.name for head in made.heads] == ["Filling", "In all", "Batches", "Over"]
    assert "crumb" not in made.lead and "border" not in made.lead and f"inside a dam of 10{N}mm" in made.lead
    assert {len(row) for row in cells(made.rows)} == {4}


def test_the_lead_says_thickness_bowl_and_log(desk: Desk, filled: Filled) -> None:
    lead = CoatsView(batch(desk, "american-buttercream"), desk).lead
    for words in (f"10{N}cm high in 4{N}layers", f"crumb coat 2{N}mm", "The dam is counted as final coat",
                  f"5{N}% stays in the bowl", "From 3 of your cakes:"):  # fmt: skip
        assert words in lead
    assert lead.replace("'", "&#39;") in filled("mixtures/american-buttercream")
    assert "of your cakes" not in CoatsView(batch(desk, "royal-icing"), desk).lead


def test_columns_of_nothing_are_left_out(desk: Desk) -> None:
    bare = without(desk, crumb_coat=0.0, heights=(100.0,), stays_in_the_bowl=0.0)
    made = CoatsView(batch(bare, "american-buttercream"), bare)
    assert [head.name for head in made.heads] == ["Filling", "Final coat", "In all", "Batches", "Over"]
    assert "crumb" not in made.lead and "bowl" not in made.lead
    assert bowl_words(finishing(bare.book.finish, bare.facts)) == ""


def test_pastes_say_what_their_plan_says(desk: Desk, filled: Filled) -> None:
    made = PastesView(batch(desk, "marzipan"), desk)
    plan = paste_table(made.batch, desk.book, desk.facts).rows
    for told, row in zip(cells(made.rows), plan, strict=True):
        low, high = told[1].split("–")
        assert float(low) <= float(told[0]) <= float(high)
        assert told[2] == rolled(row)
        assert [float(told[i]) for i in (0, 3, 4, 5)] == [
            row.net_shown_g, row.made_shown_g, row.back_shown_g, row.batches,
        ]  # fmt: skip
        assert len(told) == len(made.heads)
    assert "From 1 of your cakes" in made.lead and f"5{N}mm on the cake" in made.lead
    text = filled("mixtures/marzipan")
    assert "## For every cake" in text and "published amounts differ" in text


def test_a_disc_and_a_rectangle_in_words(desk: Desk) -> None:
    rows = paste_table(batch(desk, "marzipan"), desk.book, desk.facts).rows
    by_name = {row.cake.tin.name: rolled(row) for row in rows}
    assert by_name["round 20 cm"].endswith(" across") and "×" not in by_name["round 20 cm"]
    # by hand: 20 cm, coats of 6 mm on all sides, twice 10 cm and the coat on top, 5 cm over; up to the half cm
    assert by_name["square 20 cm"] == f"47.5{N}×{N}47.5"
    assert 200 + 12 + 2 * 106 + 50 == 474
