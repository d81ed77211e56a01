"""How the house finishes its cakes, and what it really used: house/finish.yaml and house/used.yaml."""

from __future__ import annotations

from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.models import Book, Finish, Used, UsedLog
from tinbook.plans.finish.used import used_flaws
from tinbook.plans.rules.fields import link_flaws
from tinbook.plans.rules.finish import finish_flaws

FINISH, USED = "house/finish", "house/used"


def read_finish(intake: Intake, book: Book, facts: Facts) -> Finish:
    """The house's own figures; the trade's where the file is missing or cannot be used."""
    data = intake.open(FINISH) if FINISH in intake.sources else None
    if data is None:
        return book.finish
    finish = intake.part(FINISH, Finish, data, "how the house finishes its cakes", ())
    if finish is None or FINISH in intake.broken:
        return book.finish
    intake.tell(FINISH, finish_flaws(finish, replace(book, finish=finish), facts))
    if finish.made_with:
        slugs = finish.made_with.model_dump(by_alias=True, exclude_none=True)
        known = [*book.mixtures, *intake.written("mixtures/")]
        for role, slug in slugs.items():
            flaws = link_flaws("made with", [slug], known)
            intake.tell(FINISH, [replace(flaw, path=("made with", role)) for flaw in flaws])
    return book.finish if FINISH in intake.broken else finish


def read_used(intake: Intake, book: Book, facts: Facts) -> tuple[Used, ...]:
    """The entries that can be learned from; what is wrong with the others is told."""
    data = intake.open(USED) if USED in intake.sources else None
    if data is None:
        return ()
    certain, found = USED not in intake.broken, []
    known = [*book.mixtures, *intake.written("mixtures/")]
    what = "what a cake used", "the log of what was used"
    for path, entry in intake.entries(USED, data, "used", (Used, UsedLog), what):
        flaws = [replace(flaw, path=("of",)) for flaw in link_flaws("of", [entry.of], known)]
        if entry.of in book.mixtures:
            flaws += used_flaws(entry, book, facts)
            if not flaws:
                found.append(entry)
        intake.tell(USED, [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws])
    return tuple(found if certain else ())
