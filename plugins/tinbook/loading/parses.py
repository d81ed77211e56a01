"""What each source file was read as, kept while its bytes stay the same: reading is most of the work of loading."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

from tinbook.loading.files import SourceFile, read_sources
from tinbook.models import Path as Within
from tinbook.models import PictureFile
from tinbook.models.ledger import Kept
from tinbook.problems import Problem
from tinbook.source import Document, read_yaml

Reading = tuple[Document | None, tuple[Problem, ...]]
At = tuple[str, str, Within]
Sources = tuple[tuple[SourceFile, ...], frozenset[str], tuple[Problem, ...]]
PictureKey = tuple[str, str]
"""A picture's file and the SHA-256 of its bytes."""
T = TypeVar("T")


class _Made(NamedTuple):
    data: object
    said: tuple[object, ...]
    made: Any


class Learnt(NamedTuple):
    """What one process can pass on to the next about a book: checks that found nothing, of mixtures, of `cakes`, and of
    `shown_cakes` in the public book; and its pictures."""

    sound: Kept = Kept()
    pictures: Mapping[PictureKey, PictureFile] = {}
    cakes: Kept = Kept()
    shown_cakes: Kept = Kept()


class Parses:
    """Files and their models, as they were last read; pictures, and checks that found nothing, as far back as they are
    `learnt`."""

    def __init__(self, learnt: Learnt | None = None) -> None:
        self.learnt = learnt or Learnt()
        self._fresh: Sources | None = None
        self._loaded: Sources | None = None
        self._files: dict[str, tuple[SourceFile, Reading]] = {}
        self._made: dict[At, _Made] = {}

    def differs(self, folder: Path) -> bool:
        """Whether the book's sources have changed since they were last loaded."""
        self._fresh = read_sources(folder)
        return self._fresh != self._loaded

    def sources(self, folder: Path) -> Sources:
        """All sources of the book, to be loaded."""
        self._loaded, self._fresh = self._fresh or read_sources(folder), None
        return self._loaded

    def read(self, source: SourceFile) -> Reading:
        """A file's data with their places, and what is wrong with its YAML."""
        known = self._files.get(source.address)
        if known is None or known[0] != source:
            known = self._files[source.address] = source, read_yaml(source.raw, source.shown)
        return known[1]

    def made(self, at: At, data: object, said: tuple[object, ...], make: Callable[[], T]) -> T:
        """The model made from part of a file: the same data and the same `said` give the same one.

        `at`: the file's address, the kind of model, and the path of the part.
        """
        known = self._made.get(at)
        if known is None or known.data is not data or known.said != said:
            known = self._made[at] = _Made(data, said, make())
        made: T = known.made
        return made
