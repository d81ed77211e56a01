"""The supplies and the stock: read once the cards are known, entry by entry."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from tinbook.facts import Facts
from tinbook.loading.intake import Intake, under
from tinbook.models import Book
from tinbook.models.register import SourceKind, kinds
from tinbook.models.supplies import Supply
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.stock import stock_flaws, supply_flaws
from tinbook.plans.shopping.things import Things

SUPPLIES, STOCK = kinds()["supplies"], kinds()["stock"]


def with_stock(intake: Intake, book: Book, facts: Facts, spoilt: Spoilt, today: date | None) -> Book:
    """The book with its supplies and its stock; none from a file of which any part cannot be trusted, as it is told.
    `spoilt`: cards lost by a problem told elsewhere; `today`: the day the stock is held against, if it is."""
    book = replace(book, others={**book.others, SUPPLIES.name: _supplies(intake)})
    things = Things(book, facts)
    stock = tuple(entry for file in intake.years_of(STOCK) for entry in _entries(intake, file, things, spoilt, today))
    return replace(book, others={**book.others, STOCK.name: stock})


def _supplies(intake: Intake) -> tuple[Supply, ...]:
    data = intake.data_of(SUPPLIES)
    found: list[Supply] = []
    for path, supply in intake.entries(SUPPLIES, data) if data is not None else ():
        intake.tell(SUPPLIES.address, under(path, supply_flaws(supply, found)))
        found.append(supply)
    return () if SUPPLIES.address in intake.broken else tuple(found)


def _entries(intake: Intake, file: SourceKind, things: Things, spoilt: Spoilt, today: date | None) -> tuple[Any, ...]:
    data = intake.data_of(file)
    found: list[Any] = []
    for path, entry in intake.entries(file, data) if data is not None else ():
        intake.tell(file.address, under(path, stock_flaws(entry, things, spoilt, today)))
        found.append(entry)
    return () if file.address in intake.broken else tuple(found)
