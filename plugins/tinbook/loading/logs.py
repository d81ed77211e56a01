"""The house's logs: its bakes, and what its cakes really used, entry by entry."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import replace
from functools import cache
from typing import Any

from tinbook.facts import Facts
from tinbook.loading.intake import Intake, under
from tinbook.models import Baked, Book, Flaw, Used
from tinbook.models.register import SourceKind, kinds
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.used import used_flaws
from tinbook.plans.rules.bakes import bake_flaws
from tinbook.plans.rules.fields import link_flaws

BAKES, USED = kinds()["bakes"], kinds()["used"]


def read_bakes(intake: Intake, book: Book, facts: Facts) -> tuple[Baked, ...]:
    """The bakes that can be learned from; what is wrong with the others is reported."""

    @cache
    def batch_of(slug: str) -> Batch:
        return weigh(slug, book.mixtures[slug], book, facts)

    return _read_log(intake, BAKES, book, lambda entry: bake_flaws(entry, batch_of(entry.of), book, facts))


def read_used(intake: Intake, book: Book, facts: Facts) -> tuple[Used, ...]:
    """What cakes used, if it can be learned from; what is wrong with the rest is reported."""
    return _read_log(intake, USED, book, lambda entry: used_flaws(entry, book, facts))


def _read_log(intake: Intake, kind: SourceKind, book: Book, rule: Callable[[Any], Iterable[Flaw]]) -> tuple[Any, ...]:
    """The entries for the book's mixtures that keep a rule; none from a file of which any part cannot be trusted."""
    known = [*book.mixtures, *intake.written("mixtures/")]
    return tuple(entry for file in intake.years_of(kind) for entry in _read_file(intake, file, book, rule, known))


def _read_file(
    intake: Intake, kind: SourceKind, book: Book, rule: Callable[[Any], Iterable[Flaw]], known: Collection[str]
) -> list[Any]:
    data = intake.data_of(kind)
    if data is None:
        return []
    certain = kind.address not in intake.broken
    sound = []
    for path, entry in intake.entries(kind, data):
        flaws = [replace(flaw, path=("of",)) for flaw in link_flaws("of", [entry.of], known)]
        if entry.of in book.mixtures:
            flaws += rule(entry)
            if not flaws:
                sound.append(entry)
        intake.tell(kind.address, under(path, flaws))
    return sound if certain else []
