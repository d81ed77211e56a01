"""Everything Find can answer with, and the page that lists it for readers without a script."""

from __future__ import annotations

from collections.abc import Iterator

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import plural
from tinbook.pages.finding.cakes import cakes_found
from tinbook.pages.finding.find import Find
from tinbook.pages.finding.recipes import mixtures_found, techniques_found
from tinbook.pages.finding.stores import cards_found, colours_found, tins_found
from tinbook.pages.lists.lists import Entry, Group, ListView, cake_entry, in_sheets, kind_groups, technique_entry
from tinbook.pages.spelling import formats

ADDRESS, TITLE = "find", "Everything in the book"
KINDS = (mixtures_found, techniques_found, cakes_found, cards_found, tins_found, colours_found)
"""What comes from the book's sources; pages that nobody asks for by name come with the site."""


def finds(desk: Desk) -> tuple[Find, ...]:
    """All of it, related things side by side."""
    return tuple(found for kind in KINDS for found in kind(desk))


def find_pages(desk: Desk) -> Iterator[Page]:
    """The list of everything by its name."""
    mixtures = [entry for group in kind_groups(desk) for entry in group.entries]
    techniques = [technique_entry(desk, slug) for slug in desk.book.techniques]
    cakes = [cake_entry(desk, slug) for slug in desk.book.cakes]
    cards = [
        Entry(address=address, name=formats.title(name), left="", second=", ".join(desk.book.cards[name].also))
        for name, address in desk.card_pages.items()
    ]
    named = {"Mixtures": mixtures, "Techniques": techniques, "Cakes": cakes, "Ingredients": cards}
    groups = tuple(
        Group(title, "", tuple(sorted(entries, key=_by_name)), f"all-{title.lower()}")
        for title, entries in named.items()
        if entries
    )
    view = ListView(title=TITLE, lead=f"{plural(sum(group.count for group in groups), 'page')}, by name.", items=groups)
    yield from in_sheets(Page(address=ADDRESS, title=TITLE, template="list", view=view, listed=False))


def _by_name(entry: Entry) -> str:
    return entry.name.casefold()
