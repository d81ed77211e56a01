"""Book and facts become pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, field
from datetime import datetime
from functools import cached_property

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import Ledger, entries, watched
from tinbook.pages.at_a_glance.boards import boards_pages
from tinbook.pages.at_a_glance.colours import colours_pages
from tinbook.pages.at_a_glance.covering import covering_pages
from tinbook.pages.at_a_glance.guests import guests_pages
from tinbook.pages.at_a_glance.measures import measures_pages
from tinbook.pages.at_a_glance.on_hand import on_hand_pages
from tinbook.pages.at_a_glance.portions import portions_pages
from tinbook.pages.at_a_glance.tins import tins_pages
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.pictures import photo_address
from tinbook.pages.cake.view import cake_pages
from tinbook.pages.finding.everything import find_pages, finds
from tinbook.pages.finding.find import Find
from tinbook.pages.labels.allergens import allergens_pages
from tinbook.pages.lists.broken import broken_pages
from tinbook.pages.lists.home import home_pages
from tinbook.pages.lists.ingredients import ingredients_pages
from tinbook.pages.lists.lists import list_pages
from tinbook.pages.lists.rules import rules_pages
from tinbook.pages.lists.sources import sources_pages
from tinbook.pages.lists.tags import tag_pages
from tinbook.pages.mixture.view import mixture_pages
from tinbook.pages.money.view import money_pages
from tinbook.pages.orders.view import order_pages
from tinbook.pages.oven.oven import oven_pages
from tinbook.pages.reference.view import reference_pages
from tinbook.pages.technique.cake_templates import TemplateFile, template_files
from tinbook.pages.technique.view import technique_pages
from tinbook.problems import Problem

PAGE_KINDS: tuple[Callable[[Desk], Iterator[Page]], ...] = (
    home_pages,
    list_pages,
    tag_pages,
    mixture_pages,
    technique_pages,
    cake_pages,
    tins_pages,
    on_hand_pages,
    portions_pages,
    guests_pages,
    covering_pages,
    boards_pages,
    colours_pages,
    oven_pages,
    measures_pages,
    ingredients_pages,
    rules_pages,
    allergens_pages,
    sources_pages,
    reference_pages,
    broken_pages,
    order_pages,
    money_pages,
    find_pages,
)
"""The register of pages: a new kind of page is one line here."""


@dataclass(frozen=True, kw_only=True)
class Site:
    """Every page of the book, by address (`mixtures/madeira-cake`), in the order of the contents; photos by path.

    `templates` are files to print, by path, still to be set. The `ledger` knows what each page reads in the book.
    """

    name: str
    measures: str
    pages: Mapping[str, Page]
    photos: Mapping[str, bytes] = field(default_factory=dict)
    templates: Mapping[str, TemplateFile] = field(default_factory=dict)
    ledger: Ledger = field(default_factory=Ledger)
    desk: Desk | None = None

    @cached_property
    def finds(self) -> tuple[Find, ...]:
        """What Find answers with."""
        return finds(self.desk) if self.desk else ()

    def group_of(self, address: str) -> str:
        """The first of the pages that share a view with this one: they read the book together."""
        return self._groups[address]

    def reading(self, address: str) -> AbstractContextManager[None]:
        """While a page, or one that shares its view, is being made; nothing for a page written by hand."""
        return self.ledger.reading(self.group_of(address)) if address in self.pages else nullcontext()

    @cached_property
    def _groups(self) -> Mapping[str, str]:
        first: dict[int, str] = {}
        return {address: first.setdefault(id(page.view), address) for address, page in self.pages.items()}


def build_site(
    book: Book,
    facts: Facts,
    broken: Mapping[str, tuple[Problem, ...]],
    ledger: Ledger | None = None,
    now: datetime | None = None,
) -> Site:
    """All pages of a book; `broken` are the problems of the pages that cannot be shown.

    `ledger`: what is known about earlier work; `now`: the moment orders are planned from.
    """
    ledger = ledger or Ledger()
    desk = Desk(watched(book, ledger), facts, entries("broken", broken, ledger), now)
    pages = (page for kind in PAGE_KINDS for page in kind(desk))
    copies = (copy for picture in book.pictures.values() for copy in picture.copies)
    photos = {photo_address(copy): copy.content for copy in copies}
    templates = {each.path: each for each in template_files(desk)}
    return Site(
        name=book.house.name,
        measures=book.house.measures,
        pages={page.address: page for page in pages},
        photos=photos,
        templates=templates,
        ledger=ledger,
        desk=desk,
    )
