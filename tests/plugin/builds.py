"""Builds of books by MkDocs' Python API, and what is written in a book before it is built again."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from tinbook.plugin import TinbookPlugin

SPONGE = "recipes/mixtures/plain-sponge.yaml"


def write(book: Path, path: str, text: str) -> None:
    (book / path).parent.mkdir(parents=True, exist_ok=True)
    (book / path).write_text(text, "utf-8")


def change(book: Path, path: str, old: str, new: str) -> None:
    text = (book / path).read_text("utf-8")
    assert old in text
    write(book, path, text.replace(old, new))


def built(
    book: Path,
    site: Path | None = None,
    strict: bool = False,
    command: Literal["build", "serve"] = "build",
    **options: Any,
) -> Path:
    """The site built from a book as by `command`; `options` are the plugin's own."""
    config = load_config(str(book / "mkdocs.yml"), site_dir=str(site or book / "site"), strict=strict)
    config.plugins["tinbook"].load_config({"keep": False, **options})
    config.plugins.on_startup(command=command, dirty=False)
    mkdocs_build(config)
    return Path(config.site_dir)


class Built:
    """A build in a process that knows nothing but what the file of kept pages says; `made` are the pages it made."""

    def __init__(self, book: Path, site: str = "site", **options: object) -> None:
        config = load_config(str(book / "mkdocs.yml"), site_dir=str(book / site))
        plugin = config.plugins["tinbook"]
        plugin.load_config(options)
        settings = plugin.config
        vars(plugin).clear()
        TinbookPlugin.__init__(plugin)
        plugin.config = settings
        plugin.on_startup(command="build", dirty=False)
        mkdocs_build(config)
        self.made = {address for address in plugin.site.pages if not plugin._keeping.stands(address)}
        self.pages = set(plugin.site.pages)
        found = (path for path in Path(config.site_dir).rglob("*") if path.is_file() and "sitemap" not in path.name)
        self.files = {path.relative_to(config.site_dir).as_posix(): path.read_bytes() for path in found}
