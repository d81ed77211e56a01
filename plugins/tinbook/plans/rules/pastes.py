"""The paste among a technique's materials against what its parts take."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.engine.tolerance import fits, whole_up
from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Technique
from tinbook.plans.techniques.kit import kit
from tinbook.plans.techniques.parts import decoration
from tinbook.plans.techniques.ready import pastes_ready


def paste_flaws(technique: Technique, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Each paste that the parts take more of, at the cake they are written for, than the materials list. The parts
    themselves must be sound."""
    if technique.parts_for is None or not (technique.parts or technique.repeats):
        return
    materials = kit(technique, book, facts).materials
    for need in pastes_ready(technique, decoration(technique, technique.parts_for, book, facts), book, facts):
        if need.ready_g is None or fits(need.parts_g, need.ready_g):
            continue
        index = next(row.index for row in materials if row.name == need.paste)
        least_g = whole_up(need.parts_g)
        message = f"the parts take {least_g} g of {need.paste}, but only {need.ready_g:g} g is listed"
        hint = f"write at least {least_g} g, plus what stays on your hands and the board"
        yield Flaw(code="paste", path=("materials", index), message=message, hint=hint)
