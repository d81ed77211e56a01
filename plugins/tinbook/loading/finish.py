"""How the house finishes its cakes: house/finish.yaml."""

from __future__ import annotations

from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.models import Book, Finish
from tinbook.models.register import kinds
from tinbook.plans.rules.finish import finish_flaws, made_flaws

FINISH = kinds()["finish"]


def read_finish(intake: Intake, book: Book, facts: Facts) -> Finish:
    """The house's own figures, or the trade's if the file is missing or unusable."""
    data = intake.data_of(FINISH)
    if data is None:
        return book.finish
    finish: Finish | None = intake.whole(FINISH, data)
    if finish is None or FINISH.address in intake.broken:
        return book.finish
    intake.tell(FINISH.address, finish_flaws(finish, replace(book, finish=finish), facts))
    intake.tell(FINISH.address, made_flaws(finish, book, facts, intake.written("mixtures/")))
    return book.finish if FINISH.address in intake.broken else finish
