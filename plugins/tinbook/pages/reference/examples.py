"""Whole files as examples: a small book of an invented kitchen, which a test reads as any other book is read."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tinbook.models.register import SourceKind
from tinbook.pages.base.render import environment

FOLDER = "examples"
"""Among the templates, laid out as recipes/ is."""
RECIPE, STARTS_FROM, TECHNIQUE = "estuary-sponge", "walnut-sponge", "buoys-on-a-board"
CAKE, CAKE_FROM = "three-buoys-cake", "two-buoys-cake"
ORDER = "slipway-birthday"
EXPLAINED = "vanilla-buttercream"
"""With notes on how a file is written."""


@dataclass(frozen=True, slots=True)
class WholeFile:
    """A file of the example: where it would be in a book, and its text."""

    path: str
    text: str


def whole(path: str) -> WholeFile:
    """A file, by its path below recipes/."""
    return WholeFile(f"recipes/{path}", _text(path))


def whole_of(kind: SourceKind) -> tuple[WholeFile, ...]:
    """The example of a file of the house; none for one that has no example yet."""
    name = f"{FOLDER}/{kind.path}"
    return (whole(kind.path),) if name in environment().list_templates() else ()


@lru_cache(maxsize=32)
def _text(path: str) -> str:
    jinja = environment()
    assert jinja.loader is not None
    return jinja.loader.get_source(jinja, f"{FOLDER}/{path}")[0].rstrip()
