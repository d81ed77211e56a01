"""Parts and marks in lines."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.technique.part_lines import NONE, mark_line, part_line, spoken
from tinbook.plans.techniques.parts import Decoration, decoration


def made(demo: Loaded, slug: str) -> Decoration:
    technique = demo.book.techniques[slug]
    assert technique.parts_for is not None
    return decoration(technique, technique.parts_for, demo.book, demo.facts)


def test_what_to_make_is_told_with_its_sizes(demo: Loaded) -> None:
    every = [part for slug, each in demo.book.techniques.items() if each.parts for part in made(demo, slug).parts]
    makes = {part.form: part_line(part, 0.15).make for part in every}
    assert makes["rope"].startswith("rope: thick ") and "sheet" in makes["sheet"]
    pressed = [part_line(part, 0.15).make for part in every if part.flattened]
    assert pressed and all(
        "flattened" in make and make.endswith(" mm thick") and ", pressed to " in make for make in pressed
    )
    assert not any("_" in part_line(part, 0.15).make for part in every)


def test_a_weight_far_off_is_told(demo: Loaded) -> None:
    part = made(demo, "lighthouse-for-the-front").parts[0]
    light = replace(part, weighed_g=part.computed_g * 0.5)
    assert any(words.endswith("50\N{NO-BREAK SPACE}% off: measure it again") for words in part_line(light, 0.15).more)
    near = replace(part, weighed_g=part.computed_g * 0.9)
    assert not any("off" in words for words in part_line(near, 0.15).more)
    assert not any("weighed" in words for words in part_line(replace(part, weighed_g=None), 0.15).more)


def test_marks_that_are_pressed_in_have_no_grams(demo: Loaded) -> None:
    (repeat, *_) = made(demo, "boat-on-the-shingle").repeats
    pressed = mark_line(replace(repeat, each_g=None))
    assert (pressed.each, pressed.total) == (NONE, NONE) and "pressed in" in pressed.more
    ((title, text),) = spoken([pressed])
    assert title == f"{pressed.letter} {pressed.name}"
    assert text.startswith(f"{repeat.count} × ") and text.endswith(".") and " g each" not in text
