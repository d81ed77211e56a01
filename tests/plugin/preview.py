"""A preview without its server: the plugin as `serve` drives it, and the same book built from nothing beside it."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build
from mkdocs.config import load_config

from tinbook.plugin import TinbookPlugin

ADDRESS = "http://127.0.0.1:8000/"
DATED = ("sitemap.xml", "sitemap.xml.gz")
VALUE = re.compile(
    r"(?<=[:\-,\[] )[^\s:,\[\]{}#|>&*][^:,\[\]{}#\n]*$|(?<=[:\-,\[] )[^\s:,\[\]{}#|>&*][^:,\[\]{}#\n]*(?=[,}\]])", re.M
)
"""A value in YAML as the demo writes it: after a colon, a dash, a comma or a bracket, to the end of it."""
FIGURE = re.compile(r"\d+")


class Preview:
    """A book that is served: `follow` what was written, and compare what is shown with `from_nothing`."""

    def __init__(self, book: Path) -> None:
        self.book, self.site = book, book / "site"
        self.plugin = self._config(self.site).plugins["tinbook"]
        self._forget()
        self._build(self.site)

    def follow(self, waiting: Any = lambda: False) -> str:
        """Do what the server does after a change; says how far it reached."""
        outcome = self.plugin._remake(lambda: None, waiting)
        if outcome == "too far":
            self._build(self.site)
        return outcome

    def shown(self) -> dict[str, bytes]:
        """Every file of the site that is shown."""
        return _files(self.site)

    def from_nothing(self) -> dict[str, bytes]:
        """Every file of the same book's site, built by a plugin that knows nothing of it."""
        before, beside = dict(vars(self.plugin)), self.book / "beside"
        self._forget()
        try:
            self._build(beside)
        finally:
            vars(self.plugin).clear()
            vars(self.plugin).update(before)
        return _files(beside)

    def _forget(self) -> None:
        config = self.plugin.config
        vars(self.plugin).clear()
        TinbookPlugin.__init__(self.plugin)
        self.plugin.config = config
        self.plugin.on_startup(command="serve", dirty=False)

    def _config(self, site: Path) -> Any:
        config = load_config(str(self.book / "mkdocs.yml"), site_dir=str(site))
        config.plugins["tinbook"].load_config({"keep": False})
        return config

    def _build(self, site: Path) -> None:
        build(self._config(site), serve_url=ADDRESS)


def _files(site: Path) -> dict[str, bytes]:
    found = (path for path in site.rglob("*") if path.is_file() and path.name not in DATED)
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in found}


def values(book: Path) -> Iterator[tuple[Path, int, int]]:
    """Where each value stands in each of the book's sources."""
    for path in sorted((book / "recipes").rglob("*.yaml")):
        for found in VALUE.finditer(path.read_text("utf-8")):
            yield path, found.start(), found.end()


def changed(value: str) -> str:
    """Another value, and most often a sound one: a figure is made larger by one, a word gets a letter more."""
    if figure := FIGURE.search(value):
        return f"{value[: figure.start()]}{int(figure[0]) + 1}{value[figure.end() :]}"
    return f"{value.rstrip()}e"


class Hand:
    """Somebody who edits a book at random: changes values, breaks files and mends them, renames, deletes, adds."""

    def __init__(self, book: Path, seed: int) -> None:
        self.book, self.dice = book, random.Random(seed)
        self.broken: dict[Path, str] = {}

    def edit(self) -> str:
        """One edit; says what it was."""
        does = self.dice.choice(
            (self._value, self._value, self._value, self._break, self._rename, self._delete, self._add)
        )
        return does()

    def _value(self) -> str:
        path, start, end = self.dice.choice(list(values(self.book)))
        text = path.read_text("utf-8")
        path.write_text(text[:start] + changed(text[start:end]) + text[end:], "utf-8")
        return f"{path.name}: {text[start:end]!r} to {changed(text[start:end])!r}"

    def _break(self) -> str:
        if self.broken:
            path, text = self.broken.popitem()
            path.write_text(text, "utf-8")
            return f"{path.name} mended"
        path = self.dice.choice(sorted((self.book / "recipes").rglob("*.yaml")))
        self.broken[path] = path.read_text("utf-8")
        path.write_text(self.broken[path] + "\n  odd: [\n", "utf-8")
        return f"{path.name} broken"

    def _one(self) -> Path:
        return self.dice.choice(sorted((self.book / "recipes" / "mixtures").glob("*.yaml")))

    def _rename(self) -> str:
        path = self._one()
        path.rename(path.with_stem(f"{path.stem}-b"))
        self.broken.pop(path, None)
        return f"{path.name} renamed"

    def _delete(self) -> str:
        path = self._one()
        if len(list(path.parent.iterdir())) > 3:
            path.unlink()
            self.broken.pop(path, None)
        return f"{path.name} deleted"

    def _add(self) -> str:
        path = self._one()
        path.with_stem(f"{path.stem}-too").write_text(
            path.read_text("utf-8").replace("name: ", "name: Another ", 1), "utf-8"
        )
        return f"{path.name} copied"
