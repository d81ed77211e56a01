"""Lines of work: everything the cake takes, each amount as its totals give it."""

from __future__ import annotations

from tests.pages.cake.conftest import FIGURED
from tests.plans.cakes.conftest import Made

from tinbook.loading import Loaded
from tinbook.pages.cake.jobs import cut_line, jobs, paste_line, together
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.used import CutUsed, things_cut


def test_every_bake_mixture_paste_decoration_and_board_has_its_line(demo: Loaded, made: Made) -> None:
    cake = made({**FIGURED, "coat": "american-buttercream", "cover": "sugarpaste", "colour": "hull blue"})
    groups = {group.title: group.lines for group in jobs(cake, "written", demo.facts)}
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
    assert len(groups["Board and stacking"]) == len(list(together(things_cut(cake, demo.facts)))) + 1
    assert all(line.link for title in ("Bake", "Decorations") for line in groups[title])


def test_a_decoration_says_where_it_stands_and_how_large_its_parts_are(demo: Loaded, made: Made) -> None:
    lines = {group.title: group.lines for group in jobs(made(FIGURED), "written", demo.facts)}["Decorations"]
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
    def cut(what: str, long_mm: float, count: int = 1) -> CutUsed:
        return CutUsed(what=what, count=count, long_mm=long_mm, wide_mm=15.0, hidden=False)

    assert cut_line(cut("dowel", 111.0, 5), "cm").note == "111\u00a0mm long"
    assert cut_line(cut("ribbon", 875.0), "cm").note == "87.5\u00a0cm long, 15 mm wide"
    drum = cut_line(CutUsed(what="drum", count=1, long_mm=300.0, wide_mm=300.0, hidden=False), "cm")
    assert (drum.name, drum.note, drum.flag) == ("drum", "30\u00a0cm", "not food")
    assert cut_line(cut("dowel", 111.0, 5), "cm").name == "dowels"
