"""A served book after a change to its sources: only the pages affected are made again, the edited ones first."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from jinja2 import Environment
from mkdocs.commands.build import _build_page, _populate_page
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as Leaf

from tinbook.loading.files import PICTURES
from tinbook.models.ledger import digest_of
from tinbook.plugin.keeping import contents_of
from tinbook.site import Site

SOURCE = {"cakes": "cakes", "mixtures": "mixtures", "techniques": "techniques", "ingredients": "cards"}
"""Folders of pages that each have an entry of their own in the book, and what that is called in the book."""


@dataclass(frozen=True, kw_only=True)
class LastBuild:
    """What MkDocs was working with when it last built the whole site; `leaves` are its pages, by address."""

    config: MkDocsConfig
    files: Files
    nav: Navigation
    env: Environment = field(default_factory=Environment)
    leaves: Mapping[str, Leaf]
    frames: Mapping[str, object]
    shape: bytes = b""
    outside: bytes = b""

    def make(
        self,
        site: Site,
        edited: Sequence[str],
        others: Sequence[str],
        show: Callable[[], None],
        waiting: Callable[[], bool],
    ) -> Sequence[str]:
        """Make the `edited` pages, `show` them, and make the `others`, until somebody is `waiting` for another change.

        Returns those that are left.
        """
        for address in edited:
            self._make(site, address)
        if edited:
            show()
        for place, address in enumerate(others):
            if waiting():
                return others[place:]
            self._make(site, address)
        return ()

    def _make(self, site: Site, address: str) -> None:
        """Make one page, and write it where it is served from."""
        leaf = self.leaves[address]
        vars(leaf).pop("render", None)  # as it may have been handed on last time
        with site.reading(address):
            leaf.file.content_string = site.pages[address].markdown
        _populate_page(leaf, self.config, self.files)
        _build_page(leaf, self.config, self.files.documentation_pages(), self.nav, self.env)


def shape_of(site: Site, house_broken: bool) -> bytes:
    """The digest of everything in a site except its pages' content: its contents, its photos and files to print."""
    pages = [(page.address, page.title, page.template, page.section, page.listed) for page in site.pages.values()]
    photos = [(path, digest_of(content)) for path, content in site.photos.items()]
    return digest_of((site.name, site.measures, house_broken, pages, photos, site.templates))


def outside_of(config: MkDocsConfig, sources: Path) -> bytes:
    """The digest of what a served site is made from besides Tinbook itself and the YAML: settings, pages by hand,
    pictures."""
    settings = Path(config.config_file_path)
    return digest_of((settings.read_bytes(), contents_of(config.docs_dir), contents_of(str(sources / PICTURES))))


def edited_first(addresses: Iterable[str], changed: Callable[[str], bool]) -> tuple[list[str], list[str]]:
    """The pages of what was edited, and the other pages. `changed` says whether a thing in the book,
    `mixtures/madeira`, was."""
    edited, others = list[str](), list[str]()
    for address in addresses:
        folder, _, name = address.partition("/")
        key = f"{SOURCE.get(folder, '')}/{name.partition('/')[0]}"
        (edited if folder in SOURCE and changed(key) else others).append(address)
    return edited, others
