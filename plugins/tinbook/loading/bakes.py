"""The house's bake log: house/bakes.yaml."""

from __future__ import annotations

from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.models import Baked, BakeLog, Book
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.rules.bakes import bake_flaws
from tinbook.plans.rules.fields import link_flaws

BAKES = "house/bakes"


def read_bakes(intake: Intake, book: Book, facts: Facts) -> tuple[Baked, ...]:
    """The entries that can be learned from; what is wrong with the others is told."""
    data = intake.open(BAKES) if BAKES in intake.sources else None
    if data is None:
        return ()
    certain, found = BAKES not in intake.broken, []
    known = {*book.mixtures, *intake.written("mixtures/")}
    weighed: dict[str, Batch] = {}
    for path, entry in intake.entries(BAKES, data, "bakes", (Baked, BakeLog), ("a bake", "the bake log")):
        flaws = [replace(flaw, path=("of",)) for flaw in link_flaws("of", [entry.of], known)]
        if entry.of in book.mixtures:
            if entry.of not in weighed:
                weighed[entry.of] = weigh(entry.of, book.mixtures[entry.of], book, facts)
            flaws += bake_flaws(entry, weighed[entry.of], book, facts)
            if not flaws:
                found.append(entry)
        intake.tell(BAKES, [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws])
    return tuple(found if certain else ())
