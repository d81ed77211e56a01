"""Find's index of the whole site: what the book's sources give, and the pages written by hand or made from tables."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

from tinbook.pages.finding.find import Find
from tinbook.pages.finding.index import index_of

INDEX = "assets/tinbook/find-index.js"
TOLD = frozenset(
    ("mixture", "mixture_tables", "technique", "cake", "cake_used", "cake_making", "ingredient", "home", "broken")
)
"""Kinds of page whose words come from the book's sources, or that have none of their own."""
NAMED = frozenset(("list", "tins", "cuts", "oven_kind"))
"""Kinds of page found by their title alone: each thing on them is found separately."""
HEADINGS = ("h2", "h3")
UNREAD = ("script", "style", "svg", "table")


class Sections(HTMLParser):
    """Reads a page's prose: for each heading its title, its anchor and its words. The first is the page's own."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, str, list[str]]] = [("", "", [])]
        self._heading: list[str] | None = None
        self._anchor = ""
        self._unread = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A heading begins, or something that is not prose."""
        if tag in HEADINGS:
            self._heading, self._anchor = [], dict(attrs).get("id") or ""
        self._unread += tag in UNREAD or tag == "h1"

    def handle_endtag(self, tag: str) -> None:
        """It ends."""
        if tag in HEADINGS and self._heading is not None:
            self.found.append((" ".join("".join(self._heading).split()), self._anchor, []))
            self._heading = None
        self._unread -= tag in UNREAD or tag == "h1"

    def handle_data(self, data: str) -> None:
        """Words."""
        if self._heading is not None:
            self._heading.append(data.replace("¶", ""))
        elif self._unread <= 0:
            self.found[-1][2].append(data)


def page_found(address: str, title: str, html: str, template: str = "") -> Iterator[Find]:
    """A page and the sections of its prose; `template`: which kind of page of the book it is, empty for one by hand."""
    if template in TOLD:
        return
    sections = Sections()
    sections.feed(html)
    sections.close()
    (_, _, own), *rest = sections.found
    lead = _words(own)
    below = "" if template in NAMED else " ".join(name for name, _, _ in rest)
    yield Find(kind="page", title=title, address=address, second=_first(lead), tags=(below,), text=(lead,))
    for name, anchor, said in () if template in NAMED else rest:
        words = _words(said)
        yield Find(
            kind="section", title=name, address=address, anchor=anchor, second=_first(words) or title,
            tags=(title,), text=(words,),
        )  # fmt: skip


def _words(said: list[str]) -> str:
    return " ".join(" ".join(said).split())


def _first(text: str) -> str:
    """Its first sentence."""
    return text.partition(". ")[0].removesuffix(".")


def write_index(site_dir: str, finds: Iterable[Find], urls: Mapping[str, str]) -> None:
    """The index of a built site as a script, which can be read from a folder as well as from a host.

    Anything that leads to a page missing from the site is left out.
    """
    index = index_of((found, urls[found.address]) for found in finds if found.address in urls)
    Path(site_dir, INDEX).write_text(as_script(index), "utf-8")


def as_script(index: dict[str, Any]) -> str:
    """The index as text in a script: browsers parse JSON several times faster than the same as code."""
    text = json.dumps(index, ensure_ascii=False, separators=(",", ":"))
    for sign, written in (("\\", "\\\\"), ("'", "\\'"), ("\u2028", "\\u2028"), ("\u2029", "\\u2029")):
        text = text.replace(sign, written)
    return f"self.tinbookIndex='{text}';\n"
