"""Parts on the page and on a sheet, spelled from the rows."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.colour_lines import mixed
from tinbook.pages.technique.parts import PartsView, cake_parts, heavy_words
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.sheet_file import as_plain
from tinbook.pages.technique.view import TechniqueView
from tinbook.tins import read_tin

PHRASE = "may have an adverse effect on activity and attention in children"
"""Regulation (EC) 1333/2008, Annex V, word for word."""


def view(demo: Loaded, slug: str) -> PartsView:
    return PartsView(slug=slug, technique=demo.book.techniques[slug], book=demo.book, facts=demo.facts)


def test_one_cake_is_shown_and_the_others_wait(demo: Loaded) -> None:
    cakes = view(demo, "lighthouse-for-the-front").cakes
    assert [each.cake for each in cakes if each.shown] == ["round 20 cm"]
    assert len({each.total for each in cakes}) == len(cakes)
    (shown,) = (each for each in cakes if each.shown)
    tower = shown.table.rows[0].line
    assert (tower.letter, tower.name, tower.colour, tower.count) == ("A", "tower", "gull white", "1")
    assert any(words.startswith("tower: 68 g weighed, ") for words in tower.more)
    assert any("lolly stick" in words and "55 mm into the tower" in words for words in tower.more)


def test_the_table_has_the_cake_in_hand_between_two_others(demo: Loaded) -> None:
    cakes = {each.cake: each for each in view(demo, "lighthouse-for-the-front").cakes}
    table = cakes["round 20 cm"].table
    assert [row.line.letter for row in table.rows] == list("ABCDEFGH")
    assert [(size.cake, size.chosen) for size in table.sizes] == [
        ("round 15 cm", False), ("round 20 cm", True), ("round 25 cm", False),
    ]  # fmt: skip
    for nth, size in enumerate(table.sizes):
        # what a neighbour's column says is what that cake's own table says
        own = cakes[size.cake].table
        chosen = [each.chosen for each in own.sizes].index(True)
        assert [row.grams[nth].figure for row in table.rows] == [row.grams[chosen].figure for row in own.rows]
        assert table.sums[nth].figure == cakes[size.cake].total
    assert table.rows[-1].grams[1].figure == "none" and table.rows[-1].grams[1].for_one == ""


def test_marks_shown_on_the_parts_put_together_are_not_drawn_again(demo: Loaded) -> None:
    assert view(demo, "lighthouse-for-the-front").marks == ()
    assert view(demo, "bream-with-scales").marks == ()
    # the bank lies flat, and its marks are on top of it
    assert len(view(demo, "boat-on-the-shingle").marks) == 1


def test_the_grid_is_of_every_cake(demo: Loaded) -> None:
    made = view(demo, "boat-on-the-shingle")
    assert [row.head for row in made.grid.rows] == [each.cake for each in made.cakes]
    assert all(len(row.cells) + 1 == len(made.grid.heads) for row in made.grid.rows)
    assert made.grid.worked is not None


def test_colours_that_carry_a_warning(demo: Loaded) -> None:
    made = view(demo, "lighthouse-for-the-front")
    (warning,) = made.warnings
    assert warning.startswith(
        "Lamp red contains E129 (allura red): may have an adverse effect on activity and attention"
    )
    (red,) = (each for each in made.cakes[0].colours if each.name == "Lamp red")
    assert (red.warning, red.swatch, red.label) == (
        f"statutory warning: E129 (allura red): {PHRASE}",
        "#B3261E",
        "white",
    )
    assert view(demo, "coil-of-rope").warnings == ()


def test_weight_on_the_side_is_told(demo: Loaded) -> None:
    made = view(demo, "heron-for-the-side")
    assert "hangs on the side" in made.heavy
    assert "That is heavy" not in made.heavy
    assert heavy_words(view(demo, "coil-of-rope").written) == ""


@pytest.mark.parametrize("cake", [None, "round 30 cm", "square 15 cm"])
def test_the_sheet_is_for_the_cake_in_hand(demo: Loaded, cake: str | None) -> None:
    desk = Desk(demo.book, demo.facts, {})
    tin = read_tin(cake)[1] if cake else None
    seen = view(demo, "lighthouse-for-the-front")
    all_made = seen.made_for(tin)
    sheet = sheet_of("lighthouse-for-the-front", desk, cake=tin)
    assert sheet.shown is not None and sheet.shown.cake == (cake or "round 20 cm")
    assert len(sheet.cakes) == len(all_made) == (1 if cake else 9) and sheet.chooses == (cake is None)
    for told, made in zip(
        sheet.cakes, [cake_parts(sums, seen.all, seen.ready(sums)) for sums in all_made], strict=True
    ):
        assert told.cake == made.cake and told.templates
        (paste,) = made.ready
        assert f"Have {paste.total} g of Boatshed modelling paste ready" in told.ready[0]
        assert told.table == made.table and told.high and told.drawings
        assert tuple((each.title, each.text) for each in told.colours) == mixed(made.colours, (paste.paste,))
        assert any(PHRASE in each.text for each in told.colours)
        (law,) = (note for note in told.table.notes if "lamp red carries a statutory warning (E129)" in note.words)
        assert law.letters == "B and E"
        notes = [words.text for page in told.templates for words in page.words]
        assert any("in lamp red: E129" in text for text in notes)
    assert any("E129" in each.text for each in sheet.cautions)
    assert any("lolly stick" in words for words in sheet.counted)
    (plain,) = as_plain(sheet)["cakes"]
    assert plain["cake"] == sheet.shown.cake and "templates" not in plain


def test_a_technique_without_parts_has_none(demo: Loaded) -> None:
    assert (
        TechniqueView(
            slug="rope-edge", technique=demo.book.techniques["rope-edge"], desk=Desk(demo.book, demo.facts, {})
        ).parts
        is None
    )
