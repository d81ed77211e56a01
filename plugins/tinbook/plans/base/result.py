"""The answer of a computed table: rows, and how they were worked out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from typing import Any

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.base.worked import Worked
from tinbook.problems import nearest

Cell = str | Saying | float | int | bool | None
Row = Mapping[str, Cell]


@dataclass(frozen=True)
class Result:
    """The rows of one table, what was asked, and how it was worked out. `places`: the decimals of what is money."""

    title: Saying | str
    rows: tuple[Row, ...]
    worked: Worked
    places: int = 2


def plain_rows(rows: Iterable[Any]) -> tuple[Row, ...]:
    """Rows whose field names already carry their units, unchanged."""
    return tuple({key: short(cell) for key, cell in asdict(row).items()} for row in rows)


def short(cell: Cell) -> Cell:
    """A number to the millionth."""
    return round(cell, 6) if isinstance(cell, float) else cell


UNIT_KEYS: Mapping[str, str] = {"g": "g", "ml": "ml", "tsp": "tsp", "tbsp": "tbsp", "cup": "cups", "": "pieces"}
"""The unit that ends a column's key; empty for a count."""


def in_units(name: str, amount: Cell, unit: str, units: Iterable[str]) -> Row:
    """An amount under the key of its unit, and None under those of the other `units`."""
    return {f"{name}_{UNIT_KEYS[each]}": amount if each == unit else None for each in units}


def batch_asked(book: Book, facts: Facts, query: Query) -> Batch:
    """The mixture the question is about. Raises AskError if the book has none by that name."""
    slugs = sorted(book.mixtures)
    if query.of is None:
        raise AskError("this table needs a mixture", "say which, such as --of " + (slugs[0] if slugs else "NAME"))
    if query.of not in book.mixtures:
        close = nearest(query.of, slugs)
        hint = f'did you mean "{close}"?' if close else "it has " + ", ".join(slugs)
        raise AskError(f'the book has no mixture "{query.of}"', hint)
    return weigh(query.of, book.mixtures[query.of], book, facts)
