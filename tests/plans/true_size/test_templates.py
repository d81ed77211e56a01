"""Templates of parts, marks, boards and cuts: true to their plans, each part once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from shapely import Polygon, unary_union

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Technique
from tinbook.plans.base.asking import AskError
from tinbook.plans.finish.boards import board_table
from tinbook.plans.techniques.parts import decoration
from tinbook.plans.true_size.drawn import Stroke, Template, bounds
from tinbook.plans.true_size.sides import coated_mm
from tinbook.plans.true_size.templates import SMALL_MM, cutting_template, part_templates, ring_template
from tinbook.tins import Tin, read_tin

PARTS = [
    {"part": "sail", "sheet": "M0 0H30V20Z", "thick": "1 mm", "paste": "sugarpaste", "count": "2"},
    {"part": "buoy", "solid": "ball 22 mm", "paste": "sugarpaste"},
    {"part": "quay", "sheet": "rectangle 190 mm x 60 mm", "thick": "3 mm", "paste": "sugarpaste"},
    {"part": "band", "strip": "15 mm x 120 mm", "thick": "2 mm", "paste": "sugarpaste"},
    {"part": "coil", "rope": "12 mm x 690 mm", "paste": "sugarpaste"},
]
REPEATS = [
    {"repeat": "dimple", "on": "quay", "mark": "6 mm", "gap": "4 mm", "set": "staggered"},
    {"repeat": "stone", "on": "quay", "mark": "12 mm x 6 mm", "gap": "4 mm", "set": "bricks"},
]


@pytest.fixture
def boat(read: Callable[..., Any]) -> Technique:
    return read(
        Technique,
        {
            "name": "Boat",
            "purpose": "So.",
            "parts for": "round 20 cm",
            "parts": PARTS,
            "repeats": REPEATS,
            "steps": ["Roll."],
        },
    )  # type: ignore[no-any-return]


@pytest.fixture
def read() -> Callable[..., Any]:
    from tinbook.models import read_model

    def made(cls: type[Any], data: dict[str, Any]) -> Any:
        model, flaws = read_model(cls, data, "it")
        assert model is not None, flaws
        return model

    return made


def rings(template: Template, kind: str = "cut") -> list[Stroke]:
    return [stroke for stroke in template.strokes if stroke.kind == kind]


def sizes(strokes: list[Stroke]) -> list[tuple[float, float]]:
    found = [bounds([stroke]) for stroke in strokes]
    return [(round(right - left, 3), round(low - top, 3)) for left, top, right, low in found]


@pytest.mark.parametrize(("cake", "s"), [("round 10 cm", 0.5), ("round 20 cm", 1.0), ("round 30 cm", 1.5)])
def test_outlines_are_as_large_as_the_parts(boat: Technique, kitchen: Book, facts: Facts, cake: str, s: float) -> None:
    """By hand: lengths × s."""
    made = part_templates(decoration(boat, read_tin(cake)[1], kitchen, facts))
    drawn = [size for template in made if template.key.startswith("part") for size in sizes(rings(template))]
    assert (30 * s, 20 * s) in drawn and (190 * s, 60 * s) in drawn
    assert [size for size in drawn if size == pytest.approx((22 * s, 22 * s), abs=0.01)]
    assert (120 * s, 15 * s) in drawn, "a strip is drawn however long it is"
    # of a rope longer than a sheet a piece of its thickness: two level lines
    level = [size for template in made for size in sizes(rings(template, "inner")) if not size[1]]
    assert level == [(120.0, 0.0)] * 2
    inner = [stroke.points for template in made for stroke in rings(template, "inner")]
    sides = [points[0][1] for points in inner if len(points) == 2]
    assert abs(sides[1] - sides[0]) == pytest.approx(12 * s)
    assert f"Roll all of it by a ruler: E coil {12 * s:g} × {690 * s:g} mm." in " ".join(made[0].notes)
    assert {template.cake.name for template in made} == {cake}


def test_letters_and_words(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = part_templates(decoration(boat, read_tin("round 20 cm")[1], kitchen, facts))
    assert [template.name for template in made] == [
        "Parts A, B, D, E", "Part C, quay", "Marks F, dimple on quay", "Marks G, stone on quay",
    ]  # fmt: skip
    assert [label.text for label in made[0].labels] == [
        "A sail, 2 of", "30 × 20 mm", "B buoy", "22 × 22 mm", "D band", "120 × 15 mm",
        "E coil", "690 × 12 mm, a piece of it",
    ]  # fmt: skip
    assert made[0].notes[0] == "As it is written, for round 20 cm."
    assert len({template.key for template in made}) == len(made)
    smaller = part_templates(decoration(boat, read_tin("round 15 cm")[1], kitchen, facts))
    assert smaller[0].notes[0] == "Written for round 20 cm: lengths × 0.75."


@pytest.mark.parametrize("across", range(100, 301, 20))
def test_small_parts_share_a_sheet_and_never_touch(demo: Loaded, across: int) -> None:
    book, facts = demo.book, demo.facts
    for technique in book.techniques.values():
        if not technique.parts:
            continue
        made = decoration(technique, Tin(shape="round", sizes_mm=(float(across),)), book, facts)
        for template in part_templates(made):
            outlines = [Polygon(stroke.points) for stroke in rings(template) if template.key.startswith("parts")]
            for index, one in enumerate(outlines):
                assert all(
                    not one.intersects(other) or one.contains(other) or other.contains(one)
                    for other in outlines[:index]
                )
            if template.key.startswith("parts"):
                left, top, right, low = template.bounds_mm
                assert right - left <= SMALL_MM[0] + 1e-6 and low - top <= SMALL_MM[1] + 1e-6


def test_every_demo_part_is_drawn_once(demo: Loaded) -> None:
    techniques = [each for each in demo.book.techniques.values() if each.parts]
    assert techniques
    for technique in techniques:
        assert technique.parts_for
        made = decoration(technique, technique.parts_for, demo.book, demo.facts)
        templates = part_templates(made)
        labels = [label.text for template in templates for label in template.labels if label.strong]
        for part in made.parts:
            assert sum(text.startswith(f"{part.letter} {part.name}") for text in labels) == 1, part.name


def test_marks_stand_where_they_are_planned(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = decoration(boat, read_tin("round 20 cm")[1], kitchen, facts)
    dimples, stones = (each for each in part_templates(made) if each.key.startswith("marks"))
    for repeat, template, size in zip(made.repeats, (dimples, stones), ((6.0, 6.0), (12.0, 6.0)), strict=True):
        marks = [Polygon(stroke.points) for stroke in rings(template, "inner")]
        assert len(marks) == repeat.count > 50
        middles = sorted((round(mark.centroid.x, 3), round(-mark.centroid.y, 3)) for mark in marks)
        assert middles == sorted((round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y in repeat.points)
        assert set(sizes(rings(template, "inner"))) == {size}
        assert sizes(rings(template)) == [(190.0, 60.0)]


@pytest.mark.parametrize("cake", ["round 20 cm", "square 25 cm", "heart 25 cm", "oval 20 cm x 15 cm"])
def test_the_ring_is_the_one_of_the_board_table(kitchen: Book, facts: Facts, cake: str) -> None:
    _, tin = read_tin(cake)
    template = ring_template(tin, kitchen, facts)
    rows = {row.cake.tin.name: row for row in board_table(kitchen, facts).rows}
    (edge,) = rings(template)
    guide = max(rings(template, "inner"), key=lambda stroke: bounds([stroke])[2])
    out = 2 * coated_mm(kitchen, facts)
    settled = [tin.bounds_mm[0] + out, tin.bounds_mm[1] + out]
    if row := rows.get(tin.name):
        assert row.chosen.size_mm is not None
        assert sizes([edge]) == [pytest.approx(row.chosen.size_mm, abs=0.01)]
        assert row.guide_mm == pytest.approx(settled)
    wide, long = sizes([guide])[0]
    assert wide == pytest.approx(settled[0], abs=1.0) and long >= settled[1] - 0.1
    assert Polygon(edge.points).contains(Polygon(guide.points))


def test_no_board(kitchen: Book, facts: Facts) -> None:
    with pytest.raises(AskError, match="no board is sold that is large enough for round 60 cm"):
        ring_template(read_tin("round 60 cm")[1], kitchen, facts)
    with pytest.raises(AskError, match="stand on no board"):
        ring_template(read_tin("12 standard cups")[1], kitchen, facts)


@pytest.mark.parametrize("cake", ["round 20 cm", "square 20 cm", "heart 25 cm", "ring 25 cm"])
def test_the_pieces_of_a_cutting_plan_are_the_cake(kitchen: Book, facts: Facts, cake: str) -> None:
    _, tin = read_tin(cake)
    template = cutting_template(tin, "dessert", kitchen, facts)
    outer, *holes = (Polygon(stroke.points) for stroke in rings(template))
    whole = outer.difference(unary_union(holes))
    pieces = [Polygon(stroke.points) for stroke in rings(template, "inner")]
    assert sum(piece.area for piece in pieces) == pytest.approx(whole.area, rel=0.01)
    assert template.labels[-1].text == str(len(template.labels))
    assert f"{len(template.labels)} dessert portions" in template.notes[0]


def test_cuts_that_cannot_be(kitchen: Book, facts: Facts) -> None:
    _, tin = read_tin("round 20 cm")
    with pytest.raises(AskError, match='no portion is called "slab"'):
        cutting_template(tin, "slab", kitchen, facts)
    with pytest.raises(AskError, match="is not cut into portions 300 × 400 mm"):
        cutting_template(tin, (300.0, 400.0), kitchen, facts)
    with pytest.raises(AskError, match="are not cut"):
        cutting_template(read_tin("12 standard cups")[1], "dessert", kitchen, facts)
    assert "50 portions" not in cutting_template(tin, (50.0, 60.0), kitchen, facts).name
