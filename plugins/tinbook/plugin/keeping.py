"""Pages that nothing has changed since the last build: they are passed on as they were written.

What a page is made from is found, not written down anywhere: its kind, title and view; what it read of the book; and
what the header, footer and contents say about its neighbours. Digests of content decide, never times.
"""

from __future__ import annotations

import hashlib
import os
import re
import sys
import zlib
from collections.abc import Iterable, Mapping
from functools import cache, partial
from importlib.metadata import version
from pathlib import Path
from typing import Any, NamedTuple

import yaml
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File
from mkdocs.structure.pages import Page as Leaf
from mkdocs.structure.toc import TableOfContents

from tinbook.loading import Learnt
from tinbook.models.ledger import Kept, digest_of
from tinbook.pages.base.page import Page
from tinbook.pages.base.render import source_of
from tinbook.pages.finding.find import Find
from tinbook.pages.spelling import formats
from tinbook.site import Site

PACKAGE = Path(__file__).parents[1]
TITLE = re.compile(r"^title: (.*)$", re.MULTILINE)
SETTINGS = (
    "site_name", "site_url", "site_description", "site_author", "copyright",
    "use_directory_urls", "repo_url", "repo_name", "edit_uri", "edit_uri_template", "extra", "extra_css",
    "extra_javascript", "markdown_extensions", "mdx_configs",
)  # fmt: skip
"""What of MkDocs' settings a page may show."""
OWN_TITLE = "---\ntitle: {{ page.title | quoted }}\n"
"""How the template of a page begins if it uses its own title."""
TEMPLATE = "kept.html"
"""The template of a page that is not drawn again."""
LEADS = re.compile(r"""<[^>]+\b(?:href|src)=["'](?!#)""")
"""A link or picture in a page's prose. MkDocs checks where it leads, so the page is made each time."""


class KeptPage(NamedTuple):
    """A page as it was written: the digest of what it is made from besides the book, its HTML compressed, its title,
    what Find knows about it, and its anchors."""

    made_from: bytes
    html: bytes
    title: str
    finds: tuple[Find, ...]
    anchors: frozenset[str]
    sum: bytes = b""
    """The SHA-256 of its HTML as written."""


class KeptBook(NamedTuple):
    """What one build leaves for the next. `surroundings`: the digest of settings, templates and our own code."""

    surroundings: bytes = b""
    work: Kept = Kept()
    pages: Mapping[str, KeptPage] = {}
    learnt: Learnt = Learnt()

    def without(self, addresses: Iterable[str]) -> KeptBook:
        """The same without some pages."""
        gone = set(addresses)
        return self._replace(pages={address: page for address, page in self.pages.items() if address not in gone})


class Keeping:
    """One build's part in this: which pages are unchanged, and what to keep of those that are made."""

    def __init__(self, before: KeptBook, surroundings: bytes) -> None:
        same = before.surroundings == surroundings
        self.before = before if same else KeptBook(surroundings)
        self._surroundings = surroundings
        self._made: dict[str, KeptPage] = {}
        self._standing: set[str] = set()
        self._from: dict[str, bytes] = {}
        self._half: dict[str, tuple[str, tuple[Find, ...], frozenset[str]]] = {}
        """What is known about pages whose HTML is still to come."""

    def look(self, site: Site, frames: Mapping[str, object]) -> list[str]:
        """Find the unchanged pages among those with `frames` (what is around a page, by address). Returns the
        others."""
        groups: dict[str, bool] = {}
        for address, frame in frames.items():
            page = site.pages[address]
            self._from[address] = _made_from(page, frame)
            kept = self.before.pages.get(address)
            if kept is None or kept.made_from != self._from[address]:
                continue
            group = site.group_of(address)
            if group not in groups:
                groups[group] = site.ledger.stands(group)
            if groups[group]:
                self._standing.add(address)
                self._made[address] = kept
        return [address for address in frames if address not in self._standing]

    def differs(self, address: str) -> bool:
        """Whether a page that was made has changed."""
        before, now = self.before.pages.get(address), self._made.get(address)
        return before is None or now is None or before.html != now.html

    def stands(self, address: str) -> bool:
        """Whether a page is handed on."""
        return address in self._standing

    def written(self, address: str) -> bytes:
        """Its HTML."""
        return zlib.decompress(self._made[address].html)

    def sum(self, address: str) -> bytes:
        """The SHA-256 of it."""
        return self._made[address].sum

    def finds(self, address: str) -> tuple[Find, ...]:
        """What Find knows about it."""
        return self._made[address].finds

    def hand_on(self, leaf: Leaf) -> None:
        """Spare a page Markdown and the theme."""
        kept = self._made[_address(leaf)]
        leaf.title = kept.title
        leaf.render = partial(_as_kept, leaf, kept)  # type: ignore[method-assign]

    def learn(self, leaf: Leaf, prose: str, finds: tuple[Find, ...]) -> None:
        """What Markdown made of a page. It is not kept if something in its prose leads elsewhere."""
        if not LEADS.search(prose):
            self._half[_address(leaf)] = str(leaf.title or ""), finds, frozenset(leaf.present_anchor_ids or ())

    def keep(self, address: str, html: str) -> None:
        """A page as it is written."""
        known = self._half.pop(address, None)
        if known and address in self._from:
            title, finds, anchors = known
            written = html.encode("utf-8", "xmlcharrefreplace")
            self._made[address] = KeptPage(
                made_from=self._from[address],
                html=zlib.compress(written, 1),
                title=title,
                finds=finds,
                anchors=anchors,
                sum=hashlib.sha256(written).digest(),
            )

    def book(self, site: Site, learnt: Learnt) -> KeptBook:
        """What this build leaves for the next; `learnt`: what was learnt as the book was read."""
        return KeptBook(self._surroundings, site.ledger.kept(), self._made, learnt)


PROGRAMS = ("mkdocs", "properdocs")
"""The programs that may build a book; each signs its pages with its own name."""


def surroundings(config: MkDocsConfig, serving: bool) -> bytes:
    """The digest of what every page depends on besides the book: the settings, the house's own templates, our code,
    what builds it.

    With other plugins or hooks it is never the same twice: nobody knows what they depend on. The theme's own
    search is one of them: it reads every page as it is made.
    """
    if config.hooks or any(name.rpartition("/")[2] != "tinbook" for name in config.plugins):
        return os.urandom(16)
    own = [place for place in config.theme.dirs if not Path(place, "mkdocs_theme.yml").is_file()]
    theme = {name: config.theme[name] for name in config.theme}
    plugins = {name: dict(plugin.config) for name, plugin in config.plugins.items()}
    settings = [config[name] for name in SETTINGS]
    programs = [name for name in PROGRAMS if name in sys.modules]
    return digest_of((serving, programs, plugins, settings, theme, code_of(), *map(contents_of, own)))


def contents_of(folder: str) -> list[tuple[str, bytes]]:
    """Every file in a folder and the digest of what it holds."""
    files = sorted(path for path in Path(folder).rglob("*") if path.is_file() and path.suffix != ".pyc")
    return [(path.relative_to(folder).as_posix(), digest_of(path.read_bytes())) for path in files]


@cache
def code_of() -> bytes:
    """The digest of Tinbook itself, and of the versions of what it builds with."""
    names = ("mkdocs", "mkdocs-material", "markdown", "jinja2", "markupsafe", "pint", "pillow")
    versions = [version(name) for name in names]
    return digest_of((sys.version, versions, own_files()))


@cache
def own_files() -> list[tuple[str, bytes]]:
    """Every file of Tinbook and the digest of what it holds."""
    return contents_of(str(PACKAGE))


def leaf_of(file: File, page: Page, config: MkDocsConfig) -> Leaf:
    """A page as MkDocs knows it, with the title its source gives it if the contents name it and give it none."""
    leaf = file.page or Leaf(None, file, config)
    if "title" not in vars(leaf) and page.listed and (found := TITLE.search(_head_of(page))):
        leaf.title = yaml.safe_load(found[1])
    return leaf


def _head_of(page: Page) -> str:
    """What is at the top of a page's Markdown. Most pages have only a title, for which nothing need be worked out."""
    said = OWN_TITLE in source_of(f"pages/{page.template}.md")
    return f"title: {formats.quoted(page.title)}" if said else page.markdown


def _address(leaf: Leaf) -> str:
    return leaf.file.src_uri.removesuffix(".md")


def _made_from(page: Page, frame: object) -> bytes:
    return digest_of((page.template, page.title, page.section, page.view, page.part, page.sheet, frame))


def _as_kept(leaf: Leaf, kept: KeptPage, *_: Any) -> None:
    leaf.content, leaf.toc, leaf.present_anchor_ids = "", TableOfContents([]), set(kept.anchors)
    leaf.meta["template"] = TEMPLATE
