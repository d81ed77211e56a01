"""Where the files of a book are read, one by one, and everything wrong with them is gathered."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

from tinbook.loading.files import read_sources
from tinbook.loading.private import private_flaws
from tinbook.models import Flaw, Written, read_model
from tinbook.models import Path as Path_
from tinbook.plans.rules.fields import FOLLOWS
from tinbook.problems import Place, Problem
from tinbook.source import Document, read_yaml
from tinbook.tins import Tin
from tinbook.units import METRIC

L = TypeVar("L", bound=Written)

# Faults after which a name may be missing from the data, though it is in the file.
_LOSES_NAMES = frozenset(("name", "merge"))


class Intake:
    """Collects models and problems while the files are read.

    `broken` has for each address the problems that keep it from being used, those that only follow from another
    one too: these are not among the `problems`.
    """

    def __init__(self, folder: Path) -> None:
        sources, self.refused, problems = read_sources(folder)
        self.sources = {source.address: source for source in sources}
        self.problems = list(problems)
        self.documents: dict[str, Document] = {}
        self.broken: dict[str, list[Problem]] = {}
        self.private: set[str] = set()
        self.measures = METRIC
        self.tins: dict[str, Tin] = {}
        """The tins of the house that go by a name of their own, in small letters."""
        self.cup_said = True
        """Whether the house has had its say whose cup it uses."""

    def open(self, address: str) -> Any:
        """The plain data of a file, or None where it cannot be read. There may be problems with it all the same."""
        source = self.sources[address]
        document, problems = read_yaml(source.raw, source.shown)
        self._put(address, problems)
        if document is None:
            return None
        self.documents[address] = document
        if str(document.data.get("private", "no")).strip().lower() not in ("no", "false"):
            self.private.add(address)
        return document.data

    def loses_names(self, address: str) -> bool:
        """Whether something written in a file may be missing from its data."""
        return any(problem.code in _LOSES_NAMES for problem in self.broken.get(address, ()))

    def part(self, address: str, cls: type[L], data: Any, what: str, path: Path_) -> L | None:
        """The part of a file that stands at `path`, as a model."""
        model, flaws = read_model(cls, data, what, self.measures, self.tins)
        found = [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws]
        if model is not None:
            found += private_flaws(model, path)
        self.tell(address, found)
        return None if found else model

    def entries(
        self,
        address: str,
        data: Mapping[str, Any],
        key: str,
        kinds: tuple[type[L], type[Written]],
        what: tuple[str, str],
    ) -> Iterator[tuple[Path_, L]]:
        """The entries of the list under `key` that can be read, each with its place.

        What is wrong with them is told, and at last what is wrong with the file apart from them. `kinds` are those of
        an entry and of the file, `what` their names.
        """
        written = data.get(key)
        for index, item in enumerate(written if isinstance(written, list) else ()):
            entry = self.part(address, kinds[0], item, what[0], (key, index))
            if entry is not None:
                yield (key, index), entry
        rest = {**data, key: []} if isinstance(written, list) else data
        self.part(address, kinds[1], rest, what[1], ())

    def tell(self, address: str, flaws: Iterable[Flaw]) -> None:
        """Note flaws at their places in a file."""
        for flaw in flaws:
            problem = Problem(code=flaw.code, message=flaw.message, place=self.place(address, flaw), hint=flaw.hint)
            if flaw.code == FOLLOWS or (flaw.code == "whose" and not self.cup_said):
                self.broken.setdefault(address, []).append(problem)
            else:
                self._put(address, [problem])

    def place(self, address: str, flaw: Flaw) -> Place:
        """Where a flaw is in its file."""
        return self.documents[address].place(flaw.path, key=flaw.on_key, start=flaw.start, end=flaw.end)

    def written(self, folder: str) -> list[str]:
        """The names of the files of a folder, those that cannot be used too: their own problems are told elsewhere."""
        return [address.removeprefix(folder) for address in self.sources if address.startswith(folder)]

    def spoils(self, address: str, path: Path_, names: Mapping[str, Any]) -> set[str]:
        """Which of the `names` in the group at `path` have a problem of the file in them, or are written twice."""
        starts = []
        for name in names:
            place = self.documents[address].place((*path, name), key=True)
            starts.append((place.line, place.column, name))
        found = set()
        for problem in self.broken.get(address, ()):
            at = problem.place
            before = [start for start in starts if start[:2] <= (at.line, at.column)]
            said = at.text[at.column - 1 : at.column - 1 + at.width].strip("'\"")
            found |= {max(before)[2]} if before else set()
            found |= {said} & set(names)
        return found

    def _put(self, address: str, problems: Iterable[Problem]) -> None:
        for problem in problems:
            self.problems.append(problem)
            if problem.severity == "error":
                self.broken.setdefault(address, []).append(problem)
