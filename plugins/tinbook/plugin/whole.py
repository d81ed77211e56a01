"""Pages as they are read: with their late parts, and the styles and scripts that these want.

Late HTML skips Markdown and the theme: measured four to five times faster than tables in Markdown.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from mkdocs.structure.files import File
from mkdocs.utils import get_relative_url

from tinbook.pages.base.page import Link, Page
from tinbook.plugin.ahead import Ahead
from tinbook.plugin.together import together
from tinbook.plugin.ways import way

OWN_FILES = {
    "css": (
        "home", "tins", "on_hand", "technique", "measures", "ingredient", "portions", "cuts", "guests", "colours",
        "oven", "sources", "broken", "mixture", "mixture_tables", "reference",
    ),
    "js": ("home", "tins", "technique", "measures", "guests", "cuts", "mixture_tables"),
}  # fmt: skip
"""Kinds of page with a style or a script of their own, named after the page's template."""
LIKE = {"mixture_tables": "mixture", "all_tins": "tins", "forms": "reference"}
"""Kinds of page that have another's files, besides their own if they have any."""
NARROW = "data-narrow="
"""Stands in a page with a list that narrows; such a page loads narrow.js and narrow.css."""
LINKS = '<ul class="tb-links'
"""Stands in a page with a row of links; such a page loads links.css."""
STYLES_MARK, SCRIPTS_MARK = "<!--tinbook-styles-->", "<!--tinbook-scripts-->"
"""Where a page's own styles and scripts go once it is whole."""


class WholePages:
    """The pages of one build. `processes`: how many others work ahead; `scripts`: whether a page loads its own.

    `files` are all files of the site by their source's name; they are looked up as a page is filled.
    """

    def __init__(self, pages: Mapping[str, Page], files: Mapping[str, File], processes: int, scripts: bool) -> None:
        self.files = files
        self._pages, self._scripts = pages, scripts
        self._waiting: dict[str, str] = {}
        """Pages without their late parts, by address."""
        self._ahead = Ahead(pages, self._link_from, processes) if processes else None

    def fill(self, address: str, output: str) -> str:
        """A page that the theme has drawn, filled; where its late parts are not ready yet, as it came, to be filled by
        `fill_the_rest`."""
        if self._ahead and not self._ahead.ready(address):
            self._waiting[address] = output
            return output
        return self._filled(address, output)

    def fill_the_rest(self) -> None:
        """Write anew the pages that were written before their late parts were ready."""
        for address, output in self._waiting.items():
            written = Path(self._file(address).abs_dest_path)
            written.write_bytes(self._filled(address, output).encode("utf-8", "xmlcharrefreplace"))
        self._waiting = {}

    def close(self) -> None:
        """Let the other processes go."""
        if self._ahead:
            self._ahead.close()

    def _file(self, address: str) -> File:
        return self.files[f"{address}.md"]

    def _link_from(self, address: str) -> Link:
        here = self._file(address)
        return lambda to, anchor="": way(here, self.files, to, anchor)

    def _filled(self, address: str, output: str) -> str:
        page, url = self._pages[address], self._file(address).url
        ready = self._ahead.parts(address) if self._ahead else {}
        whole = together(page.fill(output, self._link_from(address), ready))
        styles = "\n".join(
            f'<link rel="stylesheet" href="{get_relative_url(file, url)}">' for file in own_files(page, whole, "css")
        )
        scripts = "\n".join(
            f'<script type="module" src="{get_relative_url(file, url)}"></script>'
            for file in (own_files(page, whole, "js") if self._scripts else ())
        )
        return whole.replace(STYLES_MARK, styles, 1).replace(SCRIPTS_MARK, scripts, 1)


def own_files(page: Page, whole: str, ending: str) -> list[str]:
    """The file of a page's own kind, beside those every page has, and what narrows its lists where it has such."""
    names = [name for name in (LIKE.get(page.template), page.template) if name in OWN_FILES[ending]]
    names += ["narrow"] if NARROW in whole else []
    names += ["links"] if ending == "css" and LINKS in whole else []
    return [f"assets/tinbook/{name}.{ending}" for name in names]
