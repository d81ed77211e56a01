"""A list too long for one page continues on sheets: pages of their own, each with a row of links to all of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

FOLDER = "lists/"
"""Where all sheets except the first are: no name a baker gives a file can clash with it."""
ROWS = 150
"""How many rows a page holds. A row weighs up to 0.6 kB."""


@dataclass(frozen=True, slots=True)
class SheetLink:
    """One sheet of the list, as the row of links has it."""

    number: int
    address: str
    here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ListSheet:
    """A part of a list: its `number`, from 1, and its rows, from `first` up to but without `end`, of `rows` in all.

    `base`: the address of the whole list, where its first sheet is.
    """

    base: str
    number: int
    of: int
    first: int
    end: int
    rows: int

    @property
    def address(self) -> str:
        """Where this sheet is."""
        return sheet_address(self.base, self.number)

    @property
    def is_first(self) -> bool:
        """Whether the list begins on it."""
        return self.number == 1

    @property
    def said(self) -> str:
        """Which rows it has: `151 to 300 of 1000`."""
        return f"{self.first + 1} to {self.end} of {self.rows}"

    @property
    def links(self) -> tuple[SheetLink, ...]:
        """All of them, in order."""
        numbers = range(1, self.of + 1)
        return tuple(SheetLink(each, sheet_address(self.base, each), each == self.number) for each in numbers)

    @property
    def next(self) -> str:
        """Where the list continues; empty on its last sheet."""
        return sheet_address(self.base, self.number + 1) if self.number < self.of else ""

    def titled(self, title: str) -> str:
        """The title of this page of a list called `title`."""
        return title if self.is_first else f"{title}, page {self.number}"


def sheet_address(base: str, number: int) -> str:
    """Where a sheet of the list at `base` is; the first is there itself."""
    return base if number == 1 else f"{FOLDER}{base.removesuffix('/index')}/{number}"


def sheets_of(base: str, rows: int, most: int = ROWS, later: int = 0) -> tuple[ListSheet, ...]:
    """The sheets of a list with this many rows; none if one page holds it. `later`: how many a sheet after the first
    holds."""
    if rows <= most:
        return ()
    ends = [*range(most, rows, later or most), rows]
    return tuple(
        ListSheet(base=base, number=place + 1, of=len(ends), first=first, end=end, rows=rows)
        for place, (first, end) in enumerate(zip([0, *ends], ends, strict=False))
    )


def sheet_with(sheets: Sequence[ListSheet], row: int, base: str) -> str:
    """Where a row of the list at `base` is."""
    return next((sheet.address for sheet in sheets if sheet.first <= row < sheet.end), base)
