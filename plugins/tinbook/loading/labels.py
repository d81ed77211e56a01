"""What the house says about its labels, and the packs it opens: held against the cards, entry by entry."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from tinbook.loading.intake import Intake, under
from tinbook.models import Book
from tinbook.models.opened import PackOpened
from tinbook.models.register import SourceKind, kinds
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.labels import labelling_flaws, opened_flaws

LABELS, OPENED = kinds()["labels"], kinds()["opened"]


def with_labels(intake: Intake, book: Book, spoilt: Spoilt, today: date | None) -> Book:
    """The book with its opened packs; labels that cannot be printed as they are written count as not written."""
    others = dict(book.others)
    said = others[LABELS.name]
    if LABELS.address in intake.sources and said is not LABELS.nothing:
        intake.tell(LABELS.address, labelling_flaws(said))
        if LABELS.address in intake.broken:
            others[LABELS.name] = LABELS.nothing
    packs = [entry for file in intake.years_of(OPENED) for entry in _entries(intake, file, book, spoilt, today)]
    return replace(book, others={**others, OPENED.name: tuple(packs)})


def _entries(
    intake: Intake, file: SourceKind, book: Book, spoilt: Spoilt, today: date | None
) -> tuple[PackOpened, ...]:
    data = intake.data_of(file)
    found: list[PackOpened] = []
    for path, entry in intake.entries(file, data) if data is not None else ():
        intake.tell(file.address, under(path, opened_flaws(entry, book, spoilt, today)))
        found.append(entry)
    return () if file.address in intake.broken else tuple(found)
