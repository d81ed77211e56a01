"""Book and facts become pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.pages.at_a_glance.boards import boards_pages
from tinbook.pages.at_a_glance.colours import colours_pages
from tinbook.pages.at_a_glance.covering import covering_pages
from tinbook.pages.at_a_glance.guests import guests_pages
from tinbook.pages.at_a_glance.measures import measures_pages
from tinbook.pages.at_a_glance.on_hand import on_hand_pages
from tinbook.pages.at_a_glance.oven import oven_pages
from tinbook.pages.at_a_glance.portions import portions_pages
from tinbook.pages.at_a_glance.tins import tins_pages
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.pictures import photo_address
from tinbook.pages.finding.everything import find_pages, finds
from tinbook.pages.finding.find import Find
from tinbook.pages.lists.broken import broken_pages
from tinbook.pages.lists.home import home_pages
from tinbook.pages.lists.ingredients import ingredients_pages
from tinbook.pages.lists.lists import list_pages
from tinbook.pages.lists.rules import rules_pages
from tinbook.pages.lists.sources import sources_pages
from tinbook.pages.mixture.view import mixture_pages
from tinbook.pages.reference.view import reference_pages
from tinbook.pages.technique.cake_templates import TemplateFile, template_files
from tinbook.pages.technique.view import technique_pages
from tinbook.problems import Problem

PAGE_KINDS: tuple[Callable[[Desk], Iterator[Page]], ...] = (
    home_pages,
    list_pages,
    mixture_pages,
    technique_pages,
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
    sources_pages,
    reference_pages,
    broken_pages,
    find_pages,
)
"""The register of pages: a new kind of page is one line here."""


@dataclass(frozen=True, kw_only=True)
class Site:
    """Every page of the book, by address (`mixtures/madeira-cake`), in the order of the contents; photos by path.

    `templates` are files to print, by path, still to be set. `finds` is what Find answers with.
    """

    name: str
    measures: str
    pages: Mapping[str, Page]
    photos: Mapping[str, bytes] = field(default_factory=dict)
    templates: Mapping[str, TemplateFile] = field(default_factory=dict)
    finds: tuple[Find, ...] = ()


def build_site(book: Book, facts: Facts, broken: Mapping[str, tuple[Problem, ...]]) -> Site:
    """All pages of a book; `broken` are the problems of the pages that cannot be shown."""
    desk = Desk(book, facts, broken)
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
        finds=finds(desk),
    )
