"""Paste to have ready for the parts of a decoration: what its parts take, and what stays on hands and board."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Technique
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.techniques.kit import kit
from tinbook.plans.techniques.parts import Decoration, decoration


@dataclass(frozen=True, slots=True)
class PasteReady:
    """One paste for one cake each for everyone working, g: `parts_g` in the parts and marks; `ready_g` with what stays
    on hands and board, None if the materials do not name it."""

    paste: str
    parts_g: float
    ready_g: float | None

    @property
    def spare(self) -> float | None:
        """What is spare, as a share of what the parts take."""
        return None if self.ready_g is None else self.ready_g / self.parts_g - 1.0


def pastes_ready(technique: Technique, sums: Decoration, book: Book, facts: Facts) -> tuple[PasteReady, ...]:
    """Each paste of the parts at a cake, in the order they first appear.

    At the cake the technique is written for, what the materials list; at another, more or less in proportion to what
    its parts take. Materials that a class shares are shared here too.
    """
    name = ("pastes_ready", Itself(technique), Itself(sums), Itself(facts))
    return ledger_of(book).lately(name, lambda: _pastes_ready(technique, sums, book, facts))


def _pastes_ready(technique: Technique, sums: Decoration, book: Book, facts: Facts) -> tuple[PasteReady, ...]:
    here = _by_paste(sums)
    written = here
    if not sums.as_written:
        written = _by_paste(decoration(technique, sums.written_for, book, facts, sums.people))
    listed: dict[str, float] = {}
    for row in kit(technique, book, facts, sums.people).materials:
        if row.mass_g:
            listed[row.name] = listed.get(row.name, 0.0) + row.mass_g
    return tuple(
        PasteReady(paste, parts_g, listed[paste] * parts_g / written[paste] if paste in listed else None)
        for paste, parts_g in here.items()
    )


def _by_paste(sums: Decoration) -> dict[str, float]:
    """What the parts and marks take of each paste, if they take any."""
    taken: dict[str, float] = {}
    for need in sums.colours:
        if need.mass_g:
            taken[need.paste.name] = taken.get(need.paste.name, 0.0) + need.mass_g
    return taken
