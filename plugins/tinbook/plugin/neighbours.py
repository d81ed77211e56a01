"""What the contents say about a page's neighbours: nearly everything, and the same for all pages in a folder."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from mkdocs.structure.nav import Navigation, Section
from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url, normalize_url

MANY = 30
"""More pages side by side than this are not all listed."""
BESIDE = 6
"""How many of them are, to either side of the page that is open."""
LINK = '<li><a href="{}">{}</a></li>\n'
"""A page beside the current one, or a section it is not in."""


class Run(NamedTuple):
    """An `entry` that the template draws, its `place` in the list, counted from 1, and the links before it.

    After the last such entry come only links, without an `entry`.
    """

    links: str
    entry: Page | Section | None
    place: int


class Neighbours:
    """The runs of each list of a book, as its pages ask for them. `prune`: a section that is not open is a link."""

    def __init__(self, prune: bool) -> None:
        self._prune = prune
        self._links: dict[tuple[int, str], list[str]] = {}

    def runs(self, entries: Sequence[Any], page: Page | None, base: str, top: bool = False) -> list[Run]:
        """What the list holds; all but the `top` one without the first page of their section, which is its head.

        Of a long list only what is near the page that is open, however large the book: the section's own page has it
        all. Without a `page`, as on the 404 page, addresses begin at the book's `base`.
        """
        links = self._seen_from(entries, page) if page else _links(entries, lambda url: normalize_url(url, base=base))
        start = 1 if not top and isinstance(entries[0], Page) and entries[0].is_index else 0
        shown = _near(entries, start, page)
        found, before = [], start
        for place in shown:
            entry = entries[place]
            if entry is page or (entry.children and (entry.active or not self._prune)):
                found.append(Run("".join(links[each] for each in shown if before <= each < place), entry, place + 1))
                before = place + 1
        return [*found, Run("".join(links[each] for each in shown if each >= before), None, 0)]

    def frame(self, nav: Navigation, page: Page) -> object:
        """Everything a page's header and contents say about other pages, as plain values."""
        beside = (page.previous_page, page.next_page)
        return page.title, [each and each.url for each in beside], self.outline(nav.items, page, top=True)

    def outline(self, entries: Sequence[Any], page: Page, top: bool = False) -> list[Any]:
        """What `runs` says about the list and the sections open in it, seen from a page: names and addresses."""
        start = 1 if not top and isinstance(entries[0], Page) and entries[0].is_index else 0
        said: list[Any] = []
        for place in _near(entries, start, page):
            entry = entries[place]
            said.append((entry.title, _url(entry), entry is page))
            if entry.children and (entry in page.ancestors or not self._prune):
                said.append(self.outline(entry.children, page))
        return said

    def _seen_from(self, entries: Sequence[Any], page: Page) -> list[str]:
        """A link to each entry. From a page's own folder, entries in it have an address of their own."""
        if any(url.startswith(page.url) for url in map(_url, entries) if url != page.url):
            return _links(entries, _from(page.url))
        folder, slash = page.url.rstrip("/").rpartition("/")[0], page.url[-1:] == "/"
        key = id(entries), folder
        if key not in self._links:
            self._links[key] = _links(entries, _from(f"{folder}/{'-/' if slash else '-.html'}".lstrip("/")))
        return self._links[key]


def _near(entries: Sequence[Any], start: int, page: Page | None) -> Sequence[int]:
    """The places of a list that are shown: all of a short one; of a long one its sections, and the pages by the open
    one."""
    places = range(start, len(entries))
    if sum(not entries[place].children for place in places) <= MANY:
        return places
    here = next((place for place in places if entries[place] is page), None)
    near = range(0) if here is None else range(here - BESIDE, here + BESIDE + 1)
    return [place for place in places if place in near or entries[place].children]


def _from(place: str) -> Callable[[str], str]:
    return lambda url: url if "://" in url else get_relative_url(url, place)


def _links(entries: Sequence[Any], way: Callable[[str], str]) -> list[str]:
    return [LINK.format(way(_url(entry)), entry.title) for entry in entries]


def _url(entry: Any) -> str:
    """Where it leads: a section to its first page."""
    while entry.children:
        entry = entry.children[0]
    return entry.url or ""
