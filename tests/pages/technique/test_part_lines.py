"""Parts and marks in lines."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.technique.part_lines import NONE, PartNote, mark_line, part_line, told_once
from tinbook.plans.techniques.parts import Decoration, decoration


def made(demo: Loaded, slug: str) -> Decoration:
    technique = demo.book.techniques[slug]
    assert technique.parts_for is not None
    return decoration(technique, technique.parts_for, demo.book, demo.facts)


def test_what_to_make_is_told_with_its_sizes(demo: Loaded) -> None:
    every = [part for slug, each in demo.book.techniques.items() if each.parts for part in made(demo, slug).parts]
    makes = {part.form: part_line(part, 0.15).make for part in every}
    assert makes["rope"].startswith("rope: ") and "sheet" in makes["sheet"]
    pressed = [part_line(part, 0.15).make for part in every if part.flattened]
    assert pressed and all(
        "flattened" in make and make.endswith(" mm thick") and ", pressed to " in make for make in pressed
    )
    assert not any("_" in part_line(part, 0.15).make for part in every)


def test_a_weight_far_off_is_told(demo: Loaded) -> None:
    part = made(demo, "lighthouse-for-the-front").parts[0]
    light = replace(part, weighed_g=part.computed_g * 0.5)
    assert any(words.endswith("50% off: measure it again") for words in part_line(light, 0.15).more)
    near = replace(part, weighed_g=part.computed_g * 0.9)
    assert not any("off" in words for words in part_line(near, 0.15).more)
    assert not any("weighed" in words for words in part_line(replace(part, weighed_g=None), 0.15).more)


def test_marks_that_are_pressed_in_have_no_grams(demo: Loaded) -> None:
    (repeat, *_) = made(demo, "boat-on-the-shingle").repeats
    pressed = mark_line(replace(repeat, each_g=None))
    assert (pressed.each, pressed.total) == (NONE, NONE) and "pressed in" in pressed.more
    assert pressed.count == str(repeat.count) and pressed.grams_for_one == ""


def test_what_parts_share_is_said_once(demo: Loaded) -> None:
    lines = [part_line(part, 0.15) for part in made(demo, "lighthouse-for-the-front").parts]
    notes = told_once(lines)
    assert notes[0] == PartNote("A to G", "on the board")
    said = [words for note in notes for words in note.words.split("; ")]
    assert sorted(said) == sorted({words for line in lines for words in line.more})
    letters = {words: note.letters for note in notes for words in note.words.split("; ")}
    assert letters["lamp red carries a statutory warning (E129)"] == "B and E"
    assert letters["small and hard: keep away from small children"] == "D to F"
