"""Tins at a glance: the house's own tins, the factor from any to any of them, and what they hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from tinbook.pages.at_a_glance.all_tins import ADDRESS as ALL
from tinbook.pages.at_a_glance.all_tins import all_tins_pages
from tinbook.pages.at_a_glance.tin_to_tin import Matrix, MatrixHead, TinToTinView, matrix, script_rows
from tinbook.pages.base.page import Desk, Page


@dataclass(frozen=True)
class TinsView(TinToTinView):
    """Everything the page of the house's tins says."""

    @property
    def items(self) -> tuple[Matrix, ...]:
        """The one matrix."""
        tins = [(row.tin, row.owned) for row in self.shelf.house]
        return (matrix("Factors between our tins", tins, tins, self.shelf.house_factors_shown),)

    @property
    def chips(self) -> tuple[MatrixHead, ...]:
        """The tins a phone chooses from."""
        return self.items[0].heads

    @property
    def tins(self) -> dict[str, Any]:
        """What the browser gets."""
        return script_rows(self.shelf.house, self.desk.book)

    @property
    def all_tins(self) -> str:
        """Where the tins the house does not own are."""
        return ALL


def tins_pages(desk: Desk) -> Iterator[Page]:
    """The page of the house's tins, then that of all tins."""
    yield Page(address="tins", title="Tins at a glance", template="tins", view=TinsView(desk), section=("Tins",))
    yield from all_tins_pages(desk)
