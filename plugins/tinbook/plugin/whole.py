"""Pages as they are read: with their late parts, and the styles and scripts these need.

Late HTML skips Markdown and the theme: measured four to five times faster than tables in Markdown.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from mkdocs.structure.files import File
from mkdocs.utils import get_relative_url

from tinbook.pages.base.page import Link, Views
from tinbook.plugin.ahead import Ahead
from tinbook.plugin.together import together
from tinbook.plugin.ways import way
from tinbook.site import Site

OWN_FILES = {
    "css": (
        "home", "tins", "on_hand", "technique", "measures", "ingredient", "portions", "cuts", "guests", "colours",
        "oven", "sources", "broken", "mixture", "mixture_tables", "reference", "covering",
        "shopping", "allergens",
    ),
    "js": ("home", "tins", "technique", "measures", "guests", "cuts", "mixture_tables", "cake", "orders", "shopping"),
}  # fmt: skip
"""Kinds of page with a style or a script of their own, named after the page's template."""
LIKE = {
    "mixture_tables": "mixture", "all_tins": "tins", "forms": "reference", "oven_kind": "oven", "oven_log": "oven",
    "cake": "mixture", "cake_used": "mixture", "cake_making": "mixture", "boards": "covering",
    "orders": "mixture", "order": "mixture", "orders_week": "mixture", "orders_day": "mixture",
    "shopping": "mixture", "price": "mixture", "prices": "mixture", "paid": "mixture",
}  # fmt: skip
"""Kinds of page that have another's styles, besides their own if they have any."""
LIKE_SCRIPTS = {
    "all_tins": "tins", "cake_used": "cake", "cake_making": "cake", "order": "orders", "orders_week": "orders",
    "orders_day": "orders",
}  # fmt: skip
"""Kinds of page that have another's script."""
NARROW = "data-narrow="
"""Found in a page with a list that narrows."""
WHERE: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "css": {
        "written": ("<hr", "<table>", "<code", "<pre", "<kbd", "<blockquote", "<dd", "<figure", "admonition"),
        "tables": ("tb-table", "tb-scroll"),
        "main_columns": ("tb-main-",),
        "toc": ('class="tb-toc"',),
        "house_broken": ("tb-house-broken",),
        "folds": ('<details class="', "<details>", "<details open", "admonition", NARROW),
        "rows": ("tb-list", 'tb-line"', "tb-left", "tb-right", "tb-figure", NARROW),
        "differs": ("tb-differs",),
    },
    "js": {"bench_tins": ('class="tb-strip"',), "bench_batches": ('class="tb-grams',)},
}
"""Styles for things that some pages of any kind contain, by what identifies them; they come before the kind's own."""
WHERE_LAST: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "css": {
        "cake": ('class="tb-sizes', "tb-order-jobs"),
        "orders": ('aria-label="Pages of the kitchen"',),
        "money": ("tb-money",),
        "narrow": (NARROW,),
        "sheets": ("tb-sheets",),
        "links": ('<ul class="tb-links',),
    },
    "js": {"narrow": (NARROW,)},
}
"""The same for those that come after the kind's own."""
STYLES_MARK, SCRIPTS_MARK = "<!--tinbook-styles-->", "<!--tinbook-scripts-->"
"""Where a page's own styles and scripts go once it is whole."""


def nobody(address: str, html: str) -> None:
    """Nobody waits for a page's HTML."""


class WholePages:
    """The pages of one build. `processes`: how many others work ahead on the pages at `made`; `scripts`: whether a page
    loads its own; `done` is told each page's HTML.

    `files` are all files of the site by their source's name; they are looked up as a page is filled.
    """

    def __init__(
        self,
        site: Site,
        files: Mapping[str, File],
        made: Sequence[str],
        *,
        processes: int,
        scripts: bool,
        done: Callable[[str, str], None] = nobody,
    ) -> None:
        self.files = files
        self._site, self._scripts, self._done = site, scripts, done
        self._waiting: list[str] = []
        """Addresses of pages that are written without their late parts."""
        self._views = Views()
        self._ahead = Ahead(site, made, self._link_from, processes) if processes else None

    def fill(self, address: str, output: str) -> str:
        """A page the theme has drawn, filled; if its late parts are not ready yet it stays as it came, for
        `fill_the_rest`."""
        if self._ahead and not self._ahead.ready(address):
            self._waiting.append(address)
            return output
        return self._filled(address, output)

    def fill_the_rest(self) -> None:
        """Rewrite the pages that were written before their late parts were ready."""
        for address in self._waiting:
            written = Path(self._file(address).abs_dest_path)
            filled = self._filled(address, written.read_bytes().decode("utf-8"))
            written.write_bytes(filled.encode("utf-8", "xmlcharrefreplace"))
        self._waiting = []

    def close(self) -> None:
        """Let the other processes end."""
        if self._ahead:
            self._ahead.close()

    def _file(self, address: str) -> File:
        return self.files[f"{address}.md"]

    def _link_from(self, address: str) -> Link:
        here = self._file(address)
        return lambda to, anchor="": way(here, self.files, to, anchor)

    def _filled(self, address: str, output: str) -> str:
        page, url = self._site.pages[address], self._file(address).url
        ready = self._ahead.parts(address) if self._ahead else {}
        with self._site.reading(address):
            whole = together(page.fill(output, self._link_from(address), ready, self._views))
        html = dressed(whole, url, page.template, self._scripts)
        self._done(address, html)
        return html


def dressed(whole: str, url: str, template: str = "", scripts: bool = True) -> str:
    """A page with links to the styles, and to any scripts, that it needs besides those of every page.

    `url` is its own address within the site; `template` its kind, empty for a page written by hand.
    """
    styles = "\n".join(
        f'<link rel="stylesheet" href="{get_relative_url(file, url)}">' for file in own_files(template, whole, "css")
    )
    own_scripts = "\n".join(
        f'<script type="module" src="{get_relative_url(file, url)}"></script>'
        for file in (own_files(template, whole, "js") if scripts else ())
    )
    return whole.replace(STYLES_MARK, styles, 1).replace(SCRIPTS_MARK, own_scripts, 1)


def own_files(template: str, whole: str, ending: str) -> list[str]:
    """The files of a page's own kind, and those that depend on what it contains, in the order they are loaded."""
    like = LIKE if ending == "css" else LIKE_SCRIPTS
    names = _shown(WHERE[ending], whole)
    names += [name for name in (like.get(template), template) if name in OWN_FILES[ending]]
    names += _shown(WHERE_LAST[ending], whole)
    return [f"assets/tinbook/{name}.{ending}" for name in names]


def _shown(where: Mapping[str, tuple[str, ...]], whole: str) -> list[str]:
    return [name for name, signs in where.items() if any(sign in whole for sign in signs)]
