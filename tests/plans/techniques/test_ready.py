"""Paste to have ready: what stands among the materials at the written cake, and as much more as the parts take."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Technique, read_model
from tinbook.plans.techniques.parts import decoration
from tinbook.plans.techniques.ready import pastes_ready
from tinbook.tins import read_tin

BUOY = {
    "name": "A buoy", "purpose": "For the front.", "steps": ["Model it."], "parts for": "round 20 cm",
    "parts": [{"part": "buoy", "solid": "cylinder 20 mm x 50 mm", "paste": "water"}],
}  # fmt: skip


def buoy(**more: Any) -> Technique:
    technique, flaws = read_model(Technique, {**BUOY, **more}, "it")
    assert technique is not None, flaws
    return technique


def ready(technique: Technique, book: Book, facts: Facts, cake: str, people: int = 1) -> list[tuple[str, float, float]]:
    sums = decoration(technique, read_tin(cake)[1], book, facts, people)
    return [(need.paste, need.parts_g, need.ready_g or 0.0) for need in pastes_ready(technique, sums, book, facts)]


def test_at_the_written_cake_it_is_what_the_materials_say(kitchen: Book, facts: Facts) -> None:
    ((paste, parts_g, ready_g),) = ready(buoy(materials=["20 g water"]), kitchen, facts, "round 20 cm")
    # 3.1416 × 10² × 50 mm³ are 15.7 ml
    assert (paste, ready_g) == ("water", 20.0)
    assert parts_g == pytest.approx(15.708, rel=1e-4)


def test_a_larger_cake_keeps_the_share_that_stays_on_the_board(kitchen: Book, facts: Facts) -> None:
    ((_, parts_g, _),) = ready(buoy(materials=["20 g water"]), kitchen, facts, "round 20 cm")
    ((_, larger_g, more_g),) = ready(buoy(materials=["20 g water"]), kitchen, facts, "round 30 cm")
    assert larger_g / parts_g == pytest.approx(1.5**3)
    assert more_g == pytest.approx(20.0 * 1.5**3)


def test_two_lines_of_a_paste_are_one_and_people_have_one_each(kitchen: Book, facts: Facts) -> None:
    made = buoy(materials=["15 g water", "5 g water"])
    assert ready(made, kitchen, facts, "round 20 cm", people=4)[0][2] == pytest.approx(80.0)


def test_a_paste_that_no_material_names_is_not_told(kitchen: Book, facts: Facts) -> None:
    sums = decoration(buoy(), read_tin("round 20 cm")[1], kitchen, facts)
    (need,) = pastes_ready(buoy(), sums, kitchen, facts)
    assert (need.ready_g, need.spare) == (None, None)


def test_the_materials_of_the_demo_hold_what_its_parts_take(demo: Loaded) -> None:
    """And no more than half as much again: what stays on hands and board (our own judgement)."""
    told = 0
    for technique in demo.book.techniques.values():
        if technique.parts_for is not None:
            sums = decoration(technique, technique.parts_for, demo.book, demo.facts)
            for need in pastes_ready(technique, sums, demo.book, demo.facts):
                assert need.spare is not None and 0.0 <= need.spare <= 0.5, (technique.name, need)
                told += 1
    assert told >= 6


def test_of_a_book_without_its_mixtures_it_says_what_it_knows(demo: Loaded) -> None:
    book = replace(demo.book, mixtures={})
    technique = demo.book.techniques["lighthouse-for-the-front"]
    sums = decoration(technique, read_tin("round 20 cm")[1], book, demo.facts)
    assert all(need.parts_g > 0 for need in pastes_ready(technique, sums, book, demo.facts))
