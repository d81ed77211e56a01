"""How the house finishes its cakes: house/finish.yaml."""

from __future__ import annotations

from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.models import Book, Finish
from tinbook.models.register import kinds
from tinbook.plans.rules.fields import link_flaws
from tinbook.plans.rules.finish import finish_flaws

FINISH = kinds()["finish"]


def read_finish(intake: Intake, book: Book, facts: Facts) -> Finish:
    """The house's own figures; the trade's where the file is missing or cannot be used."""
    data = intake.data_of(FINISH)
    if data is None:
        return book.finish
    finish: Finish | None = intake.whole(FINISH, data)
    if finish is None or FINISH.address in intake.broken:
        return book.finish
    intake.tell(FINISH.address, finish_flaws(finish, replace(book, finish=finish), facts))
    if finish.made_with:
        slugs = finish.made_with.model_dump(by_alias=True, exclude_none=True)
        known = [*book.mixtures, *intake.written("mixtures/")]
        for role, slug in slugs.items():
            flaws = link_flaws("made with", [slug], known)
            intake.tell(FINISH.address, [replace(flaw, path=("made with", role)) for flaw in flaws])
    return book.finish if FINISH.address in intake.broken else finish
