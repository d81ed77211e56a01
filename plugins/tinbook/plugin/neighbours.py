"""The plain links of a list of contents: in a large book nearly all of it, and alike for all pages of a folder."""

from __future__ import annotations

from typing import Any, NamedTuple

from mkdocs.structure.nav import Section
from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url, normalize_url

LINK = '<li class="md-nav__item"><a href="{}" class="md-nav__link"><span class="md-ellipsis">{}</span></a></li>\n'
"""What the theme says of a page beside the one that is read."""


class Run(NamedTuple):
    """An `entry` of a list with its `place` there, counted from 1, and the plain links before it.

    After the last such entry come links alone, with no `entry`.
    """

    links: str
    entry: Page | Section | None
    place: int


class Neighbours:
    """The runs of each section of a book, as its pages ask for them."""

    def __init__(self) -> None:
        self._links: dict[tuple[int, str], list[str]] = {}

    def runs(self, section: Section, page: Page) -> list[Run]:
        """What of `section` the page's list holds, but for the section's own first page, which is its head."""
        entries: list[Any] = section.children
        links = self._seen_from(section, page)
        found, start = [], 1 if isinstance(entries[0], Page) and entries[0].is_index else 0
        for place in range(start, len(entries)):
            if entries[place].children or entries[place] is page:
                found.append(Run("".join(links[start:place]), entries[place], place + 1))
                start = place + 1
        return [*found, Run("".join(links[start:]), None, 0)]

    def _seen_from(self, section: Section, page: Page) -> list[str]:
        """A link to each entry but the page. What lies in a page's own folder is addressed as no other page would."""
        if any(_url(entry).startswith(page.url) for entry in section.children if entry is not page):
            return _links(section, page.url)
        folder, slash = page.url.rstrip("/").rpartition("/")[0], page.url[-1:] == "/"
        if (id(section), folder) not in self._links:
            self._links[id(section), folder] = _links(section, f"{folder}/{'-/' if slash else '-.html'}".lstrip("/"))
        return self._links[id(section), folder]


def _links(section: Section, place: str) -> list[str]:
    """From an address, a link to each entry that is a page; nothing for a section."""
    entries: list[Any] = section.children
    return ["" if each.children else LINK.format(_way(_url(each), place), each.title) for each in entries]


def _way(url: str, place: str) -> str:
    return normalize_url(url) if "://" in url else get_relative_url(url, place)


def _url(entry: Any) -> str:
    return getattr(entry, "url", None) or ""
