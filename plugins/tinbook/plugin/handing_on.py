"""Unchanged pages go into the new site without MkDocs: those of the last site as they are, others from the kept
file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.utils import write_file

from tinbook.plugin.keeping import Keeping
from tinbook.plugin.last_site import LastSite


class HandingOn:
    """The unchanged pages of one build, in a site in the folder `site`."""

    def __init__(self, site: Path) -> None:
        self._last = LastSite(site)
        self._files: dict[str, File] = {}
        self._there: set[str] = set()
        self.pages: list[File] = []
        """All pages of the site, once MkDocs has been spared some of them."""
        self.sums: Mapping[str, bytes] = {}
        """The SHA-256 of each, by its path in the site."""

    def begin(self) -> None:
        """Before MkDocs empties the folder."""
        self._last.set_aside()

    def take(self, files: Mapping[str, File], keeping: Keeping) -> None:
        """Unchanged pages of the last site stay; everything else goes. `files`: those of all pages, by address."""
        self._files = {address: file for address, file in files.items() if keeping.stands(address)}
        self.sums = {file.dest_uri: keeping.sum(address) for address, file in self._files.items()}
        self._there = self._last.keep(self.sums)

    def spare(self, files: Files) -> None:
        """Once all pages are read: MkDocs need not write those that are unchanged. It dates the site map by a page of
        its own, so one is left to it if there is no other."""
        self.pages = list(files.documentation_pages())
        spared = list(self._files.values())
        for file in spared[len(spared) == len(self.pages) :]:
            file.inclusion = InclusionLevel.EXCLUDED

    def finish(self, written: Callable[[str], bytes]) -> None:
        """Put the site together, and write whatever is missing: `written` is a page's HTML, by its address."""
        self._last.put_together()
        for address, file in self._files.items():
            if file.dest_uri not in self._there:
                write_file(written(address), file.abs_dest_path)

    def stop(self) -> None:
        """The site will not be finished."""
        self._last.forget()
