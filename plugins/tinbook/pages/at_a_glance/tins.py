"""Tins at a glance: the house's own tins, the factor from any to any of them, and what they hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from tinbook.pages.at_a_glance.all_tins import ADDRESS as ALL
from tinbook.pages.at_a_glance.all_tins import all_tins_pages
from tinbook.pages.at_a_glance.on_hand import shows_on_hand
from tinbook.pages.at_a_glance.tin_to_tin import Matrix, TinAnswer, answer, matrix, script_rows
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import WorkedView, worked_view
from tinbook.plans.base.shelf import Shelf, shelf


@dataclass(frozen=True)
class TinsView:
    """Everything the page of the house's tins says."""

    desk: Desk

    @cached_property
    def shelf(self) -> Shelf:
        """The sums."""
        return shelf(self.desk.book)

    @property
    def items(self) -> tuple[Matrix, ...]:
        """The one matrix."""
        tins = [(row.tin, row.owned) for row in self.shelf.house]
        return (matrix("Factors from tin to tin of the house", tins, tins, self.shelf.house_factors_shown),)

    @property
    def answer(self) -> TinAnswer:
        """From the first tin to the second."""
        return answer(*self.shelf.house[:2])

    @property
    def from_name(self) -> str:
        """The name of the tin the answer is from, for the script."""
        return self.shelf.house[0].tin.name

    @property
    def to_name(self) -> str:
        """And of the one it is to."""
        return self.shelf.house[1].tin.name

    @property
    def tins(self) -> dict[str, Any]:
        """What the browser is handed."""
        return script_rows(self.shelf.house)

    @property
    def all_tins(self) -> str:
        """Where the tins the house does not own are."""
        return ALL

    @property
    def on_hand(self) -> bool:
        """Whether there is a page of what the tins on hand allow."""
        return shows_on_hand(self.desk.book)

    @property
    def worked(self) -> WorkedView:
        """How it was worked out."""
        return worked_view((self.shelf.worked,), self.desk.facts)


def tins_pages(desk: Desk) -> Iterator[Page]:
    """The page of the house's tins, then that of all tins."""
    yield Page(address="tins", title="Tins at a glance", template="tins", view=TinsView(desk), section=("Tins",))
    yield from all_tins_pages(desk)
