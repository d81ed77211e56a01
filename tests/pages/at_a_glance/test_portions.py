"""The page of portions: the counts of the plans, the chart, grams."""

from __future__ import annotations

from tinbook.pages.at_a_glance.portions import PortionsView
from tinbook.pages.base.page import Desk
from tinbook.plans.base.shelf import all_outlines

N = "\u00a0"


def test_a_row_for_every_tin(desk: Desk) -> None:
    view = PortionsView(desk)
    rows = {line.name: line for line in (*view.own.lines, *view.others.lines)}
    assert len(rows) == len(all_outlines(desk.book))
    assert view.is_folded and all(line.owned for line in view.own.lines)
    assert not any(line.owned for line in view.others.lines)
    row = rows[f"round 20{N}cm"]
    assert ([cell.text for cell in row.counts], row.way) == (["49", "24", "15"], "strips 5+7+7+5")
    assert "dessert 25" in view.lead and f"10{N}cm high" in view.lead


def test_the_chart_stands_beside_ours(desk: Desk) -> None:
    against, grams, same = PortionsView(desk).items
    row = next(row for row in against.rows if row.head == f"round 8{N}in")
    assert [cell.text for cell in row.cells] == ["24", "24", "0", "20", "16", "−20"]
    assert len(against.rows) == 37
    assert all(len(row.cells) == len(grams.heads) - 1 for row in grams.rows)
    assert [row.head for row in same.rows] == [f"10{N}cm", f"7.5{N}cm", f"15{N}cm"]
    assert [cell.text for cell in same.rows[2].cells] == ["25 × 17", "25 × 33", "40 × 33"]
