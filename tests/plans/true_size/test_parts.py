"""Templates of parts and of marks: true to their plans, each part once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from shapely import Polygon
from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Technique
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.pages.technique.cake_templates import label_mm
from tinbook.plans.techniques.parts import decoration
from tinbook.plans.true_size.drawn import Stroke, Template, bounds
from tinbook.plans.true_size.parts import SMALL_MM, has_templates, marks_template, part_templates
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
    made = part_templates(decoration(boat, read_tin(cake)[1], kitchen, facts), label_mm)
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
    assert f"Roll the full length against a ruler: E coil {12 * s:g} × {690 * s:g} mm." in " ".join(
        spelled_all(made[0].notes)
    )
    assert {template.cake.name for template in made} == {cake}


def test_letters_and_words(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = part_templates(decoration(boat, read_tin("round 20 cm")[1], kitchen, facts), label_mm)
    assert [spell(template.name) for template in made] == [
        "Parts A, B, D, E", "Part C, quay", "Marks F, dimple on quay", "Marks G, stone on quay",
    ]  # fmt: skip
    assert [spell(label.text) for label in made[0].labels] == [
        "A sail, 2 of", "30 × 20 mm", "B buoy", "22 × 22 mm", "D band", "120 × 15 mm",
        "E coil", "690 × 12 mm, part of it",
    ]  # fmt: skip
    assert spell(made[0].notes[0]) == "As written, for round 20 cm."
    assert len({template.key for template in made}) == len(made)
    smaller = part_templates(decoration(boat, read_tin("round 15 cm")[1], kitchen, facts), label_mm)
    assert spell(smaller[0].notes[0]) == "Written for round 20 cm: lengths × 0.75."


@every("across", range(100, 301, 20))
def test_small_parts_share_a_sheet_and_never_touch(demo: Loaded, across: int) -> None:
    book, facts = demo.book, demo.facts
    for technique in book.techniques.values():
        if not technique.parts:
            continue
        made = decoration(technique, Tin(shape="round", sizes_mm=(float(across),)), book, facts)
        for template in part_templates(made, label_mm):
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
        templates = part_templates(made, label_mm)
        labels = [spell(label.text) for template in templates for label in template.labels if label.strong]
        for part in made.parts:
            assert sum(text.startswith(f"{part.letter} {part.name}") for text in labels) == 1, part.name


def test_marks_stand_where_they_are_planned(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = decoration(boat, read_tin("round 20 cm")[1], kitchen, facts)
    dimples, stones = (each for each in part_templates(made, label_mm) if each.key.startswith("marks"))
    for repeat, template, size in zip(made.repeats, (dimples, stones), ((6.0, 6.0), (12.0, 6.0)), strict=True):
        marks = [Polygon(stroke.points) for stroke in rings(template, "inner")]
        assert len(marks) == repeat.count > 50
        middles = sorted((round(mark.centroid.x, 3), round(-mark.centroid.y, 3)) for mark in marks)
        assert middles == sorted((round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y in repeat.points)
        assert set(sizes(rings(template, "inner"))) == {size}
        assert sizes(rings(template)) == [(190.0, 60.0)]


def test_marks_that_the_edge_cuts_are_told_of(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = decoration(boat, read_tin("round 20 cm")[1], kitchen, facts)
    for repeat in made.repeats:
        (note,) = spelled_all(marks_template(repeat, made.cake).notes)
        assert note.startswith(f"{repeat.count} marks ") and "Prick through the middle of each." in note
        assert ("Cut off whatever hangs over the edge." in note) == bool(repeat.cut)


def test_what_has_anything_to_draw(boat: Technique, kitchen: Book, facts: Facts) -> None:
    made = decoration(boat, read_tin("round 20 cm")[1], kitchen, facts)
    assert has_templates(made)
    assert not has_templates(replace(made, parts=(), repeats=()))


def test_words_wider_than_a_part_take_their_room(boat: Technique, kitchen: Book, facts: Facts) -> None:
    """Pages say how wide words are: of narrow ones some stand side by side, wide ones each in a row of its own."""
    made = decoration(boat, read_tin("round 20 cm")[1], kitchen, facts)
    narrow, wide = (part_templates(made, width) for width in (lambda _: 1.0, lambda _: 170.0))
    columns = [{label.at[0] for label in templates[0].labels if label.strong} for templates in (narrow, wide)]
    assert len(columns[0]) > len(columns[1]) == 1
