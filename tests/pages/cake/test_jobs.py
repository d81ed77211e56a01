"""Lines of work: everything the cake takes, each amount as its totals give it."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.cake.conftest import FIGURED
from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.pages.cake.jobs import cut_line, jobs, paste_line, together
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.used import CutUsed, things_cut


def test_every_bake_mixture_paste_decoration_and_board_has_its_line(demo: Loaded, made: Made) -> None:
    cake = made({**FIGURED, "coat": "american-buttercream", "cover": "sugarpaste", "colour": "hull blue"})
    groups = {group.title: group.lines for group in jobs(cake, "written", demo.book, demo.facts)}
    assert list(groups) == ["Bake", "Fill and coat", "Paste, by colour", "Decorations", "Board and stacking"]
    baked = [tier.baked for tier in cake.tiers if tier.baked]
    assert [line.figure for line in groups["Bake"]] == [formats.number(each.whole.mass_shown_g) for each in baked]
    assert [line.figure for line in groups["Fill and coat"]] == [
        formats.number(total.made_shown_g) for total in cake.mixtures
    ]
    assert [line.figure for line in groups["Paste, by colour"]] == [
        formats.number(total.shown_g) for total in cake.pastes
    ]
    assert [line.figure for line in groups["Decorations"]] == ["A", "2", "C", "D"]
    assert len(groups["Board and stacking"]) == len(list(together(things_cut(cake, demo.book, demo.facts)))) + 1
    assert all(line.link for title in ("Bake", "Decorations") for line in groups[title])


def test_a_decoration_says_where_it_stands_and_how_large_its_parts_are(demo: Loaded, made: Made) -> None:
    lines = {group.title: group.lines for group in jobs(made(FIGURED), "written", demo.book, demo.facts)}["Decorations"]
    board, top, side, _ = (line.note for line in lines)
    assert board.startswith("On the board, in front; ") and "sized for a 25" in board
    assert top.startswith("B, on top, top; ") and side.startswith("On the side, middle; ")
    part = made(FIGURED).figures[0].parts.parts[0]
    assert f"{part.name} " in board and "parts: " in board


def test_a_paste_says_what_is_kneaded_in_and_where_it_goes(made: Made) -> None:
    cake = made({**FIGURED, "cover": "sugarpaste", "colour": "hull blue", "decorations": []})
    line = paste_line(cake.pastes[0])
    assert line.name == "sugarpaste, hull blue" and "knead in " in line.note and line.swatch
    assert line.note.startswith("base ")


def test_things_alike_are_one_line() -> None:
    def dowels(count: int, long_mm: float) -> CutUsed:
        return CutUsed(what="dowel", count=count, long_mm=long_mm, wide_mm=6.0, hidden=True)

    assert list(together([dowels(5, 111.0), dowels(4, 90.0), dowels(5, 111.0)])) == [dowels(10, 111.0), dowels(4, 90.0)]


def test_what_is_cut_to_length_says_how_long_and_is_no_food() -> None:
    def cut(what: str, long_mm: float, count: int = 1, wide_mm: float = 15.0) -> CutUsed:
        return CutUsed(what=what, count=count, long_mm=long_mm, wide_mm=wide_mm, hidden=False)

    assert cut_line(cut("dowel", 111.0, 5, 6.35), "cm").note == "111\u00a0mm long, 6 mm thick"
    assert cut_line(cut("through-dowel", 333.0, 1, 12.0), "cm").note == "333\u00a0mm long, 12 mm thick"
    # how thick a pillar is, its seller says
    assert cut_line(cut("pillar", 191.0, 5, 6.35), "cm").note == "191\u00a0mm long"
    assert cut_line(cut("separator-plate", 150.0, 1, 150.0), "cm").note == "15\u00a0cm"
    assert cut_line(cut("drum", 380.0, 1, 250.0), "cm").note == "25 × 38\u00a0cm"
    assert cut_line(cut("ribbon", 875.0), "cm").note == "87.5\u00a0cm long, 15 mm wide"
    drum = cut_line(CutUsed(what="drum", count=1, long_mm=300.0, wide_mm=300.0, hidden=False), "cm")
    assert (drum.name, drum.note, drum.flag) == ("drum", "30\u00a0cm", "not food")
    assert cut_line(cut("dowel", 111.0, 5), "cm").name == "dowels"


def test_colour_too_little_to_weigh_is_a_speck(made: Made) -> None:
    """0.2 g of black go into 100 g of heron grey: 0.05 g into the 25 g round a bird, and 2 mg into 1 g of it."""
    cake = made({"tiers": "20 cm", "mixture": "madeira-cake", "colour": "heron grey"})
    (total,) = [each for each in cake.pastes if each.colour]
    amount = total.amounts[0]
    small = replace(total, amounts=(replace(amount, mass_g=1.0, shown_g=1.0),))
    assert "knead in a speck of black gel food colour and a speck of estuary blue" in paste_line(small).note
    larger = replace(total, amounts=(replace(amount, mass_g=25.0, shown_g=25.0),))
    assert "knead in 0.05\u00a0g black gel food colour and 0.03\u00a0g estuary blue" in paste_line(larger).note


def test_a_last_batch_that_would_mostly_be_left_over_says_how_much_of_the_recipe_does(made: Made, demo: Loaded) -> None:
    cake = made({"tiers": "20 cm", "mixture": "madeira-cake", "filling": "american-buttercream"})
    (total,) = cake.mixtures
    for times, said in (
        (1.2, "1.2 times the recipe, or 2\u00a0batches; "),
        (1.8, "2\u00a0batches; "),
        (0.2, "1\u00a0batch; "),
    ):
        amount = replace(total.amounts[0], mass_g=times * total.batch.makes_g)
        scaled = replace(cake, mixtures=(replace(total, amounts=(amount,)),))
        lines = {group.title: group.lines for group in jobs(scaled, "written", demo.book, demo.facts)}
        assert lines["Fill and coat"][0].note.startswith(said)
