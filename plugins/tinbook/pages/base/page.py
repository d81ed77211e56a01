"""A page, whatever way it is served."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from types import MappingProxyType
from typing import Any

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import once
from tinbook.pages.base.render import render
from tinbook.pages.base.shared import file_names
from tinbook.pages.base.sheets import ListSheet
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.problems import Problem

Link = Callable[..., str]
"""`link(address, anchor="")`: where a page is, seen from the page being written."""

NONE_READY: Mapping[str, str] = MappingProxyType({})
PART = re.compile(r"<!--tinbook:([a-z_/]+)(?: (\d+))?-->")


@dataclass(frozen=True)
class Desk:
    """What every page can draw on. `broken` holds the problems of pages that cannot be shown; `now` is the
    moment that orders are planned from.

    It is not part of how a page's view is written out: the book's ledger knows what is read in it.
    """

    book: Book = field(repr=False)
    facts: Facts = field(repr=False)
    broken: Mapping[str, tuple[Problem, ...]] = field(repr=False)
    now: datetime | None = field(default=None, repr=False)

    @cached_property
    def batches(self) -> Mapping[str, Batch]:
        """Every mixture, weighed."""
        return weigh_all(self.book, self.facts)

    @cached_property
    def bakes(self) -> Bakes:
        """What the book knows about baking times."""
        return Bakes(self.book, self.facts, self.batches)

    def __post_init__(self) -> None:
        _ = self.bakes  # so that the ledger knows how to ask for what a kind's mixtures say

    @property
    def card_pages(self) -> Mapping[str, str]:
        """Where each ingredient's page is, by the name on its card, in alphabetical order.

        A card that is private as a whole has none.
        """
        return _card_pages(self.book)

    def page_of(self, word: str) -> str:
        """Where the page of a mixture or ingredient is; empty if it is private."""
        return f"mixtures/{word}" if word in self.book.mixtures else self.card_pages.get(word, "")


@once
def _card_pages(book: Book) -> Mapping[str, str]:
    shown = (name for name, card in book.cards.items() if card.private is not True)
    return {name: f"ingredients/{slug}" for name, slug in file_names(sorted(shown, key=str.lower)).items()}


def cross_contact(desk: Desk) -> str:
    """What else the kitchen handles, in the house's own words; empty if it says nothing."""
    return " ".join((desk.book.house.cross_contact or "").split())


class Views:
    """The views that pages are filled from, each a copy.

    Whatever a view works out stays with the copy, which is dropped when a page of another view comes: a large book
    would fill the memory. Pages of one view that follow each other, as a mixture's two pages do, share a copy.
    """

    def __init__(self) -> None:
        self._of: Any = None
        self._copy: Any = None

    def copy_of(self, view: Any) -> Any:
        """The copy to fill a page of `view` from."""
        if self._of is not view:
            self._of, self._copy = view, replace(view)
        return self._copy


@dataclass(frozen=True, kw_only=True)
class Page:
    """One page: its address (`mixtures/madeira-cake`), title, place in the contents, and what its templates get.

    The Markdown template holds headings and prose; where it says `<!--tinbook:tables/tins-->`, that template's HTML
    goes in after Markdown has run. `<!--tinbook:parts/list 2-->` gives it the third of the view's `items`. A page that
    is not `listed` is not in the contents, only where others link to it. `part`: which of its view's `items`
    it has, where several pages share a view; `sheet`: which sheet it is of a list that is too long for one page.
    """

    address: str
    title: str
    template: str
    view: Any
    section: tuple[str, ...] = ()
    listed: bool = True
    part: int = 0
    sheet: ListSheet | None = None

    @cached_property
    def markdown(self) -> str:
        """Headings and prose, from a view whose results are dropped afterwards."""
        return render(f"pages/{self.template}.md", view=replace(self.view), page=self)

    def parts(self, link: Link, views: Views | None = None) -> dict[str, str]:
        """The HTML of every late part, by its mark in the Markdown. `views`: those of the pages filled before it."""
        late = self._late(link, views or Views())
        return {mark[0]: late(mark) for mark in PART.finditer(self.markdown)}

    def fill(self, content: str, link: Link, ready: Mapping[str, str] = NONE_READY, views: Views | None = None) -> str:
        """The page's HTML with every late part in its place: those `ready` from `parts`, the others made now."""
        late = self._late(link, views or Views())
        return PART.sub(lambda mark: ready[mark[0]] if mark[0] in ready else late(mark), content)

    def in_sheets(self, sheets: Sequence[ListSheet]) -> Iterator[Page]:
        """The same page for each of the sheets its list continues on; just itself, if there are none. The first stands
        in the contents for all."""
        if not sheets:
            yield self
        for part, sheet in enumerate(sheets):
            title, listed = sheet.titled(self.title), self.listed and sheet.is_first
            yield replace(self, address=sheet.address, title=title, listed=listed, part=part, sheet=sheet)

    def _late(self, link: Link, views: Views) -> Callable[[re.Match[str]], str]:
        def late(mark: re.Match[str]) -> str:
            view = views.copy_of(self.view)
            item = view.items[int(mark.group(2))] if mark.group(2) else None
            return render(f"{mark.group(1)}.html", view=view, page=self, link=link, item=item)

        return late
