"""The kitchen's own book: built into a folder of its own, which is never a published one nor inside it.

`kitchen: true` in mkdocs.yml asks for it, or the variable that `tinbook kitchen` and `tinbook serve --kitchen` set.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.utils.yaml import yaml_load

from tinbook.plugin.options import TinbookConfig

WANTED, TODAY = "TINBOOK_KITCHEN", "TINBOOK_TODAY"
"""Variables: where the kitchen's book goes (empty: where it always does); the moment it is planned from."""
QUARTER_MIN = 15
FOLDER = "kitchen"
MARK = "keep-private.txt"
TOLD = "This is the kitchen's own book, with its orders. Never put it in a folder that others can read.\n"
BOOK = "assets/tinbook/find-index.js"
"""A file that every built book has."""


def begin(ours: TinbookConfig, command: str) -> None:
    """Make it the kitchen's book if the command asks for that. PluginError if it would be put on a public host."""
    ours.kitchen = ours.kitchen or WANTED in os.environ
    if ours.kitchen and command == "gh-deploy":
        raise PluginError('The kitchen\'s book is never published. Take "kitchen: true" out of mkdocs.yml first.')


def kitchens_now() -> datetime:
    """The moment the kitchen plans from: the one the command gives, or else the next quarter of an hour."""
    given = os.environ.get(TODAY)
    if given:
        return datetime.fromisoformat(given)
    now = datetime.now().replace(second=0, microsecond=0)
    return now + timedelta(minutes=-now.minute % QUARTER_MIN)


def settle_folder(config: MkDocsConfig, kitchen: bool, serving: bool) -> Path:
    """Where the book goes: the kitchen's to a folder of its own, any that is only being shown where MkDocs says.
    PluginError if the kitchen's folder is a published one or inside one, or the other way about."""
    if kitchen and not serving:
        config.site_dir = str(_own_folder(config))
    elif not serving:
        _refuse_beside(Path(config.site_dir))
    return Path(config.site_dir)


def _own_folder(config: MkDocsConfig) -> Path:
    beside = Path(config.config_file_path).parent.resolve()
    public, given = _folders(config, beside)
    asked = os.environ.get(WANTED)
    own = Path(asked).resolve() if asked else given or public.parent / FOLDER
    held = {public: "where the public site goes", Path(config.docs_dir).resolve(): "which becomes part of it"}
    for folder, what in held.items():
        if own == folder or folder in own.parents or own in folder.parents:
            raise PluginError(
                f'The kitchen\'s book cannot go to "{own}": that is "{folder}", {what}, or too close to it. '
                f'Choose another folder, such as "{beside / "kitchen-book"}".'
            )
    for folder in (own, *own.parents):
        if (folder / BOOK).is_file() and not (folder / MARK).is_file():
            raise PluginError(
                f'The kitchen\'s book cannot go to "{own}": there is a public book in "{folder}". '
                "Choose another folder."
            )
    return own


def _refuse_beside(site: Path) -> None:
    for folder in (*site.resolve().parents, *_inside(site)):
        if (folder / MARK).is_file():
            raise PluginError(
                f'The public site cannot go to "{site}": the kitchen\'s book is in "{folder}". Move one of the two.'
            )


def _inside(site: Path) -> Iterator[Path]:
    return (each for each in site.iterdir() if each.is_dir()) if site.is_dir() else iter(())


def _folders(config: MkDocsConfig, beside: Path) -> tuple[Path, Path | None]:
    """Where mkdocs.yml sends the public site, and where the command line does, if it says."""
    with open(config.config_file_path, "rb") as file:
        written = yaml_load(file)
    public = (beside / str(written.get("site_dir") or "site")).resolve()
    going = Path(config.site_dir).resolve()
    return public, None if going == public else going
