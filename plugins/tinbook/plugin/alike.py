"""Pages whose Markdown is the same except for their titles, such as the leaves of tables: it is run once for all of
them.

The title is in the block of HTML a page begins with, which Markdown passes on unchanged. Whether it did is checked,
not taken for granted, and a page that links anywhere is always run: where a link leads depends on where the page is.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from mkdocs.structure.pages import Page
from mkdocs.structure.toc import TableOfContents

TOP = re.compile(r'<div class="tb-top">\n.*?\n</div>\n', re.DOTALL)
"""What a page begins with: its title and the links to its other leaf."""
LEADS = re.compile(r"<[^>]+\b(?:href|src)=")
"""Something that leads elsewhere, or is fetched from there."""


class Rendered(NamedTuple):
    """What Markdown made of a page: the HTML after its top, its headings, its anchors."""

    content: str
    toc: TableOfContents
    anchors: set[str] | None


class Alike:
    """What was made in one build, by the Markdown after the top."""

    def __init__(self) -> None:
        self._made: dict[str, Rendered] = {}
        self._kept: dict[str, str] = {}
        """The Markdown of pages in progress, by the name of their source."""

    def begin(self, markdown: str, page: Page) -> str:
        """What Markdown still has to do for a page: nothing, if it was done for another."""
        if not TOP.match(markdown):
            return markdown
        self._kept[page.file.src_uri] = markdown
        return "" if self._below(markdown) in self._made else markdown

    def end(self, html: str, page: Page) -> str:
        """The page's HTML."""
        markdown = self._kept.pop(page.file.src_uri, None)
        if markdown is None:
            return html
        top, below = markdown[: -len(self._below(markdown))], self._below(markdown)
        if not html:
            made = self._made[below]
            page.markdown, page.toc, page.present_anchor_ids = markdown, made.toc, made.anchors
            return top + made.content
        if html.startswith(top) and not LEADS.search(html, len(top)):
            self._made[below] = Rendered(html[len(top) :], page.toc, page.present_anchor_ids)
        return html

    def _below(self, markdown: str) -> str:
        found = TOP.match(markdown)
        return markdown[found.end() :] if found else markdown
