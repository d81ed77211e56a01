"""The book's folder becomes a site, what is wrong with it is reported, and the site's files join MkDocs' own."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel

from tinbook.loading import Parses, load_book
from tinbook.loading.unsure import UNSURE
from tinbook.models.ledger import Kept, Ledger
from tinbook.models.register import kinds
from tinbook.plugin.kitchens import kitchens_now
from tinbook.plugin.printing import set_templates
from tinbook.problems import spell
from tinbook.site import Site, build_site

log = get_plugin_logger("tinbook")
HOUSE = kinds()["house"].path


class SiteRead(NamedTuple):
    """The pages of the book, and whether something in house.yaml is wrong."""

    site: Site
    house_broken: bool


def read_site(folder: Path, kitchen: bool, kept: Kept, parses: Parses) -> SiteRead:
    """The pages of the book in `folder`; `kept` is what is known about earlier work, `parses` of files read before."""
    loaded = load_book(folder, kitchen, parses)
    for problem in loaded.problems:
        strict = problem.severity == "error" or problem.code == UNSURE
        (log.warning if strict else log.info)(spell(problem))
    house_broken = any(HOUSE in problem.place.file for problem in loaded.errors)
    return SiteRead(
        build_site(loaded.book, loaded.facts, loaded.broken, Ledger(kept), kitchens_now() if kitchen else None),
        house_broken,
    )


def add_files(
    site: Site, files: Files, own: Sequence[str], config: MkDocsConfig, cache: Path, apart: bool = False
) -> dict[str, File]:
    """Add pages, photos and files to print; returns the files of pages that are not among the house's `own`.

    `cache`: where files to print are kept; `apart`: another process may set them.
    """
    made = {
        address: File.generated(config, f"{address}.md", content="") for address in site.pages if address not in own
    }
    for address, file in made.items():
        if not site.pages[address].listed:
            file.inclusion = InclusionLevel.NOT_IN_NAV
        files.append(file)
    for path, photo in site.photos.items():
        files.append(File.generated(config, path, content=photo))
    for path, template in set_templates(site.templates, cache, apart):
        files.append(File.generated(config, path, content=template))
    return made
