"""What was made of each source file, for as long as its bytes stay the same: reading is most of the work of loading."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from tinbook.loading.files import SourceFile
from tinbook.models import Flaw, Path, Written
from tinbook.problems import Problem
from tinbook.source import Document, read_yaml

Reading = tuple[Document | None, tuple[Problem, ...]]
Model = tuple[Written | None, tuple[Flaw, ...]]


class _Model(NamedTuple):
    data: object
    said: tuple[object, ...]
    made: Model


class Parses:
    """Files and their models, as they were last read."""

    def __init__(self) -> None:
        self._files: dict[str, tuple[SourceFile, Reading]] = {}
        self._models: dict[tuple[str, str, Path], _Model] = {}

    def read(self, source: SourceFile) -> Reading:
        """A file's data with their places, and what is wrong with its YAML."""
        known = self._files.get(source.address)
        if known is None or known[0] != source:
            known = self._files[source.address] = source, read_yaml(source.raw, source.shown)
        return known[1]

    def model(self, at: tuple[str, str, Path], data: object, said: tuple[object, ...], make: Callable[[], Any]) -> Any:
        """The model of part of a file: of the same data, under the same `said` by the house, it is the same one.

        `at`: the file's address, what it is read as, and the path of the part.
        """
        known = self._models.get(at)
        if known is None or known.data is not data or known.said != said:
            known = self._models[at] = _Model(data, said, make())
        return known.made
