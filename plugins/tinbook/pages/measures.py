"""Measures: oven, spoons and cups, eggs, ingredients by the cup, self-raising flour."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages import formats
from tinbook.pages.page import Desk, Page
from tinbook.pages.shared import WorkedView, card_anchor, worked_view
from tinbook.plans.conversions import Conversions, CupRow, EggRow, conversions


@dataclass(frozen=True)
class MeasuresView:
    """Everything the page of measures says."""

    desk: Desk

    @cached_property
    def sums(self) -> Conversions:
        """The tables."""
        return conversions(self.desk.book, self.desk.facts)

    @property
    def egg_lines(self) -> tuple[tuple[EggRow, str], ...]:
        """Each class with its range in the shell, in words."""
        return tuple((row, _in_shell(row)) for row in self.sums.eggs)

    @property
    def cup_lines(self) -> tuple[tuple[CupRow, str], ...]:
        """Each ingredient whose card is shown, with its anchor."""
        cards = self.desk.book.cards
        return tuple(
            (row, card_anchor(row.ingredient)) for row in self.sums.cups if cards[row.ingredient].private is not True
        )

    @property
    def oven_worked(self) -> WorkedView:
        """How the oven table was worked out."""
        return worked_view((self.sums.oven_worked,), self.desk.facts)

    @property
    def spoons_worked(self) -> WorkedView:
        """How the spoons were."""
        return worked_view((self.sums.spoons_worked,), self.desk.facts)

    @property
    def eggs_worked(self) -> WorkedView:
        """How the eggs were."""
        return worked_view((self.sums.eggs_worked,), self.desk.facts)

    @property
    def cups_worked(self) -> WorkedView:
        """How the cups were."""
        return worked_view((self.sums.cups_worked,), self.desk.facts)

    @property
    def flour_worked(self) -> WorkedView:
        """How the flour was."""
        return worked_view((self.sums.flour_worked,), self.desk.facts)


def _in_shell(row: EggRow) -> str:
    low, high = row.shell_low_g, row.shell_high_g
    if low and high:
        return f"{formats.number(low)} to under {formats.number(high)}"
    if high:
        return f"under {formats.number(high)}"
    return f"{formats.number(low)} and over" if low else "no bound"


def measures_pages(desk: Desk) -> Iterator[Page]:
    """The one page of measures."""
    yield Page("measures", "Measures", "measures", MeasuresView(desk), ("Measures",))
