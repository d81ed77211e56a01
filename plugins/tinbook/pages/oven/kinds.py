"""The oven's tables with a row for each mixture, in a large book: a page for each kind of mixture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.grids import Grid
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import plural
from tinbook.pages.base.sheets import ListSheet, sheets_of
from tinbook.pages.oven.tables import loads_grid, ways_grid
from tinbook.plans.baking.times import Baking

MANY = 100
"""More mixtures than this that are baked in tins, and each kind has a page."""


@dataclass(frozen=True, slots=True)
class KindLine:
    """A kind of mixture: its name, its page, and how many of it are baked in tins."""

    name: str
    address: str
    count: str


@dataclass(frozen=True, slots=True)
class OvenPart:
    """What one page says of its mixtures."""

    ways: Grid
    loads: Grid


@dataclass(frozen=True)
class OvenKindView:
    """The mixtures of one kind. `items` are the parts of its pages."""

    desk: Desk
    kind: str
    sheets: tuple[ListSheet, ...]

    @property
    def title(self) -> str:
        """What the page is called."""
        return _title(self.desk, self.kind)

    @property
    def known(self) -> list[Baking]:
        """What is known about each."""
        batches = (self.desk.batches[slug] for slug in baked_by_kind(self.desk)[self.kind])
        return [baking for batch in batches if (baking := self.desk.bakes.of(batch))]

    @cached_property
    def items(self) -> tuple[OvenPart, ...]:
        """One for each sheet."""
        known = self.known
        lots = [known[sheet.first : sheet.end] for sheet in self.sheets] or [known]
        return tuple(OvenPart(ways_grid(self.desk, lot), loads_grid(self.desk, lot)) for lot in lots)


def baked_by_kind(desk: Desk) -> dict[str, list[str]]:
    """The mixtures baked in tins, by the key of their kind."""
    baked: dict[str, list[str]] = {key: [] for key, kind in desk.facts.kinds.items() if kind.bake}
    for slug, mixture in desk.book.mixtures.items():
        if mixture.tins and mixture.kind in baked:
            baked[mixture.kind].append(slug)
    return {key: slugs for key, slugs in baked.items() if slugs}


def _address(kind: str) -> str:
    return f"oven/{'-'.join(kind.split())}"


def _title(desk: Desk, kind: str) -> str:
    return f"Oven: {desk.facts.kinds[kind].title}"


def kind_lines(desk: Desk) -> tuple[KindLine, ...]:
    """The kinds and their pages; none in a book small enough for one page."""
    baked = baked_by_kind(desk)
    if sum(map(len, baked.values())) <= MANY:
        return ()
    kinds = desk.facts.kinds
    return tuple(
        KindLine(kinds[key].title, _address(key), plural(len(slugs), "mixture")) for key, slugs in baked.items()
    )


def kind_pages(desk: Desk) -> Iterator[Page]:
    """Those pages."""
    if not kind_lines(desk):
        return
    for key, slugs in baked_by_kind(desk).items():
        address, title = _address(key), _title(desk, key)
        sheets = sheets_of(address, len(slugs))
        view = OvenKindView(desk, key, sheets)
        whole = Page(address=address, title=title, template="oven_kind", view=view, section=("Oven",))
        yield from whole.in_sheets(sheets)
