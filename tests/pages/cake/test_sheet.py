"""A cake's sheet says what its page says: every figure of the table, every line of the work, each ingredient's sum."""

from __future__ import annotations

from tests.every import check_every

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import cake_sheet_of
from tinbook.pages.cake.view import CakeView


def test_the_table_and_the_work_are_those_of_the_page(views: dict[str, CakeView], desk: Desk) -> None:
    def check(view: CakeView) -> None:
        for size in view.sizes:
            sheet = cake_sheet_of(view.slug, size.size, desk)
            assert [row.portions for row in sheet.tiers] == [row.portions for row in size.table.rows]
            assert [[cell.text for cell in row.cells] for row in sheet.tiers] == [
                [cell.text for cell in row.cells] for row in size.table.rows
            ]
            told = [line.figure for group in sheet.jobs for line in group.lines]
            assert told == [line.figure for group in size.jobs for line in group.lines]
            assert sheet.contains and sheet.cautions and sheet.facts == size.facts

    check_every(views.values(), check)


def test_what_is_weighed_out_sums_to_everything_used(views: dict[str, CakeView], desk: Desk) -> None:
    """Grams of each ingredient over all weighings, against the list of everything used; spoons and pieces apart."""
    size = views["estuary-wedding-cake"].written
    sheet = cake_sheet_of("estuary-wedding-cake", size.size, desk)
    sums: dict[str, float] = {}
    for group in sheet.weighings:
        for line in group.lines:
            if line.unit == "g":
                sums[line.name.lower()] = sums.get(line.name.lower(), 0.0) + float(line.figure)
    used = {one.name.lower(): one.shown_g for one in size.every.ingredients if not one.pieces}
    # sugarpaste is also bought in packs to cover with, and needs no weighing out
    for name in sums.keys() - {"sugarpaste"}:
        assert sums[name] == used[name], name
    assert "butter" in sums and "self-raising flour" in sums


def test_a_thing_stands_once(views: dict[str, CakeView], desk: Desk) -> None:
    def check(view: CakeView) -> None:
        sheet = cake_sheet_of(view.slug, view.written.size, desk)
        lines = [(line.name, line.note) for group in (*sheet.jobs, *sheet.things) for line in group.lines]
        assert len(lines) == len(set(lines))

    check_every(views.values(), check)
