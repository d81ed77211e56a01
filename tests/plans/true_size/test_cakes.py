"""Templates of boards and of cuts: true to their plans."""

from __future__ import annotations

import pytest
from shapely import Polygon, unary_union

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError
from tinbook.plans.finish.boards import board_table
from tinbook.plans.finish.cakes import usual_cakes
from tinbook.plans.true_size.cakes import cutting_template, ring_template
from tinbook.plans.true_size.drawn import Stroke, Template, bounds
from tinbook.plans.true_size.sides import coated_mm
from tinbook.tins import read_tin


def rings(template: Template, kind: str = "cut") -> list[Stroke]:
    return [stroke for stroke in template.strokes if stroke.kind == kind]


def sizes(strokes: list[Stroke]) -> list[tuple[float, float]]:
    found = [bounds([stroke]) for stroke in strokes]
    return [(round(right - left, 3), round(low - top, 3)) for left, top, right, low in found]


@pytest.mark.parametrize("cake", ["round 20 cm", "square 25 cm", "heart 25 cm", "oval 20 cm x 15 cm"])
def test_the_ring_is_the_one_of_the_board_table(kitchen: Book, facts: Facts, cake: str) -> None:
    _, tin = read_tin(cake)
    template = ring_template(tin, kitchen, facts)
    rows = {row.cake.tin.name: row for row in board_table(usual_cakes(kitchen, facts), kitchen, facts).rows}
    (edge,) = rings(template)
    guide = max(rings(template, "inner"), key=lambda stroke: bounds([stroke])[2])
    out = 2 * coated_mm(kitchen, facts)
    settled = [tin.bounds_mm[0] + out, tin.bounds_mm[1] + out]
    if row := rows.get(tin.name):
        assert row.chosen.board.size_mm is not None
        assert sizes([edge]) == [pytest.approx(row.chosen.board.size_mm, abs=0.01)]
        assert row.guide_mm == pytest.approx(settled)
    wide, long = sizes([guide])[0]
    assert wide == pytest.approx(settled[0], abs=1.0) and long >= settled[1] - 0.1
    assert Polygon(edge.points).contains(Polygon(guide.points))


def test_no_board(kitchen: Book, facts: Facts) -> None:
    with pytest.raises(AskError, match="there is no board large enough for the 60 cm round"):
        ring_template(read_tin("round 60 cm")[1], kitchen, facts)
    with pytest.raises(AskError, match="do not stand on a board"):
        ring_template(read_tin("12 standard cups")[1], kitchen, facts)


@pytest.mark.parametrize("cake", ["round 20 cm", "square 20 cm", "heart 25 cm", "ring 25 cm"])
def test_the_pieces_of_a_cutting_plan_are_the_cake(kitchen: Book, facts: Facts, cake: str) -> None:
    _, tin = read_tin(cake)
    template = cutting_template(tin, "dessert", kitchen, facts)
    outer, *holes = (Polygon(stroke.points) for stroke in rings(template))
    whole = outer.difference(unary_union(holes))
    pieces = [Polygon(stroke.points) for stroke in rings(template, "inner")]
    assert sum(piece.area for piece in pieces) == pytest.approx(whole.area, rel=0.01)
    assert spell(template.labels[-1].text) == str(len(template.labels))
    assert f"{len(template.labels)} dessert portions" in spell(template.notes[0])


def test_cuts_that_cannot_be(kitchen: Book, facts: Facts) -> None:
    _, tin = read_tin("round 20 cm")
    with pytest.raises(AskError, match='there is no portion called "slab"'):
        cutting_template(tin, "slab", kitchen, facts)
    with pytest.raises(AskError, match="cannot be cut into portions of 300 × 400 mm"):
        cutting_template(tin, (300.0, 400.0), kitchen, facts)
    with pytest.raises(AskError, match="are not cut"):
        cutting_template(read_tin("12 standard cups")[1], "dessert", kitchen, facts)
    assert "50 portions" not in spell(cutting_template(tin, (50.0, 60.0), kitchen, facts).name)
