"""Small tables for a page: heads, rows and spelled cells, for the one template that prints them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from tinbook.pages.base.shared import WorkedView

UNWORKED: Mapping[str, str] = {
    "differs": "These amounts have not been scaled: both columns are as given in the recipes.",
    "allergens": "By the cards of the ingredients, each of which says what the packet does.",
    "cuts": "Tap a figure for its plan; “Portions at a glance” explains how portions are counted.",
}
"""Tables without a section on how they were worked out, and the word shown there instead."""


@dataclass(frozen=True, slots=True)
class Head:
    """A column's head: what it is, and the unit below. `words`: it holds words, not figures."""

    name: str
    unit: str = ""
    words: bool = False


ROOM_PX, FIGURE_PX, LETTER_PX, GAP_PX = 626.0, 40.0, 8.3, 8.0
"""Widths on an upright tablet: beside a tin's name, for four digits, for a letter of a head, between columns."""


def heads_stand(heads: Sequence[Head]) -> bool:
    """Whether a table's heads are turned upright: side by side, their longest words would not fit an upright tablet."""
    words = [[*head.name.replace("-", "- ").split(), *head.unit.split()] for head in heads]
    wide = (max(FIGURE_PX, *(LETTER_PX * len(word) for word in each)) + GAP_PX for each in words)
    return sum(wide) > ROOM_PX


@dataclass(frozen=True, slots=True)
class Cell:
    """A figure or a few words; `main` for what the table is read for, `note` for a second line, `grams` as they are
    before rounding, where a script multiplies them."""

    text: str
    main: bool = False
    note: str = ""
    grams: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class GridRow:
    """A row: what is looked up, a word on it, its page or none, and what it gives. `first` opens a new group.

    `lent`: it is for a tin the house does not own. `marks`: what it tells the script that narrows tables.
    """

    head: str
    cells: tuple[Cell, ...]
    note: str = ""
    address: str = ""
    first: bool = False
    lent: bool = False
    marks: tuple[tuple[str, str], ...] = ()


class Titled(NamedTuple):
    """A table's title and anchor, for a page laid out before its tables are worked out."""

    title: str
    anchor: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A table with its title and anchor, words before and after it, and how it was worked out.

    `narrow`: it is long, and its rows can be narrowed under that name. `sums`: the page's own sums come before it.
    `short` is its title in a link. `captions`: names for the choices that narrow it, by the rows' marks.
    """

    title: str
    anchor: str
    heads: tuple[Head, ...]
    rows: tuple[GridRow, ...]
    worked: WorkedView | None = None
    lead: str = ""
    after: str = ""
    narrow: str = ""
    sums: bool = False
    short: str = ""
    captions: tuple[tuple[str, str], ...] = ()

    @property
    def name(self) -> str:
        """What a link to it says."""
        return self.short or self.title


def cells(*texts: str, main: int = 0) -> tuple[Cell, ...]:
    """Cells of a row; the first `main` of them are what the table is read for."""
    return tuple(Cell(text, index < main) for index, text in enumerate(texts))


def own_first(rows: Iterable[GridRow]) -> tuple[GridRow, ...]:
    """Rows of tins, the house's before those that are lent, with a rule between them."""
    rows = tuple(rows)
    own, lent = ([row for row in rows if row.lent is is_lent] for is_lent in (False, True))
    return (*own, *(replace(row, first=place == 0) for place, row in enumerate(lent)))
