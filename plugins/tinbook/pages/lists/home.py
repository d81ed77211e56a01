"""The first page: what is in the house."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.base.drawings import Plans, nested_plans
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import plural, tin_name
from tinbook.pages.base.sheets import sheet_with, sheets_of
from tinbook.pages.lists.lists import Group, cake_entry, kind_groups, technique_entry
from tinbook.pages.spelling import formats
from tinbook.tins import Tin

USES = {
    "cake": "Sponges and cakes",
    "filling": "Fillings",
    "coat": "Coatings and icings",
    "paste": "Pastes",
    "syrup": "Syrups",
}
DRAWN = ("round", "square")


ALL = "mixtures/index"
"""The list of all mixtures."""


@dataclass(frozen=True)
class HomeView:
    """The first page."""

    desk: Desk

    @property
    def name(self) -> str:
        """The book's name."""
        return self.desk.book.house.name

    @property
    def groups(self) -> tuple[Group, ...]:
        """What is in the house, by what it is for: cakes, fillings, coats, pastes, syrups."""
        by_use: dict[str, list[tuple[Group, str]]] = {}
        uses = {kind.title: kind.group for kind in self.desk.facts.kinds.values()}
        kinds, before = kind_groups(self.desk), 0
        sheets = sheets_of(ALL, sum(group.count for group in kinds))
        for group in kinds:
            by_use.setdefault(uses[group.title], []).append((group, sheet_with(sheets, before, ALL)))
            before += group.count
        return tuple(
            Group(
                USES[use],
                groups[0][1],
                tuple(entry for group, _ in groups for entry in group.entries),
                groups[0][0].anchor,
            )
            for use, groups in by_use.items()
        )

    @property
    def plans(self) -> Plans | None:
        """Its rounds and squares, drawn."""
        return nested_plans(own.tin for own in self.desk.book.tins if own.have)

    @property
    def others(self) -> tuple[str, ...]:
        """Its other tins, in words."""
        return tuple(
            formats.kept_together(_owned(own.have, own.tin))
            for own in self.desk.book.tins
            if own.have and own.tin.shape not in DRAWN
        )

    @property
    def technique_count(self) -> int:
        """How many techniques."""
        return len(self.desk.book.techniques)

    @property
    def technique_names(self) -> str:
        """Their names, in one line; the first few, if there are many."""
        entries = tuple(technique_entry(self.desk, slug) for slug in self.desk.book.techniques)
        return Group("Techniques", "techniques/index", entries).names

    @property
    def cakes(self) -> Group:
        """The cakes."""
        return Group("Cakes", "cakes/index", tuple(cake_entry(self.desk, slug) for slug in self.desk.book.cakes))

    @property
    def card_count(self) -> int:
        """How many ingredients."""
        return len(self.desk.book.cards)

    @property
    def broken(self) -> int:
        """How many pages cannot be shown."""
        return len(self.desk.broken)

    @property
    def broken_words(self) -> str:
        """That, in words."""
        return f"{plural(self.broken, 'page')} cannot be shown"


def _owned(count: int, tin: Tin) -> str:
    """`one 20 cm heart`, `one number 1 tin`, `tray holes for 24 standard cupcakes`; several as `2 × heart 20 cm`."""
    if tin.holes > 1:
        return f"tray holes for {tin_name(count, tin)}"
    if count > 1:
        return tin_name(count, tin)
    return formats.tin_words(f"one {tin.as_said.removeprefix('the ')}{' tin' if tin.called else ''}")


def home_pages(desk: Desk) -> Iterator[Page]:
    """Home."""
    yield Page(address="index", title="Home", template="home", view=HomeView(desk))
