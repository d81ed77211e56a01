"""Where a book's files are read, one by one, and everything wrong with them is gathered."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

from tinbook.loading.parses import Parses
from tinbook.loading.private import private_flaws
from tinbook.models import Flaw, Written, read_model
from tinbook.models import Path as Path_
from tinbook.models.register import SourceKind, goes_on, log_of
from tinbook.plans.rules.fields import FOLLOWS
from tinbook.problems import Place, Problem, Severity
from tinbook.source import Document
from tinbook.tins import Tin
from tinbook.units import METRIC

W = TypeVar("W", bound=Written)

# Faults that may leave a name out of the data although it is in the file.
_LOSES_NAMES = frozenset(("name", "merge"))

_HIDDEN = re.compile(r"(?:^|\s)(#(?=[^\s#])[^}\]]*)")
"""What looks like the missing text, but means nothing to YAML."""


def under(path: Path_, flaws: Iterable[Flaw]) -> list[Flaw]:
    """Flaws of the part of a file at `path`, as flaws of the file."""
    return [replace(flaw, path=(*path, *flaw.path)) for flaw in flaws]


def _entry(kind: SourceKind) -> type[Written]:
    assert kind.entry is not None, f"{kind.name} has entries of no model"
    return kind.entry


class Intake:
    """Collects models and problems as the files are read.

    `broken` has, for each address, the problems that stop it being used, including those that only follow from another:
    these are not among the `problems`.
    """

    def __init__(self, folder: Path, parses: Parses | None = None) -> None:
        self.parses = parses or Parses()
        sources, self.refused, problems = self.parses.sources(folder)
        self.sources = {source.address: source for source in sources}
        self.problems = list(problems)
        self.documents: dict[str, Document] = {}
        self.broken: dict[str, list[Problem]] = {}
        self.private: set[str] = set()
        self.measures = METRIC
        self.tins: dict[str, Tin] = {}
        """The house's tins that have names of their own, in small letters."""
        self.cup_said = True
        """Whether the house has said which country's cup it uses."""

    def open(self, address: str) -> Any:
        """The plain data of a file, or None if it cannot be read. There may be problems with it all the same."""
        source = self.sources[address]
        document, problems = self.parses.read(source)
        log = log_of(address)
        if log:
            hint = f"keep one log a year: move the later entries to a file such as {log.of_year('2026').path}"
            problems = tuple(replace(each, hint=hint) if each.code == "size" else each for each in problems)
        self._put(address, problems)
        if document is None:
            return None
        self.documents[address] = document
        if str(document.data.get("private", "no")).strip().lower() not in ("no", "false"):
            # a log is private as a whole, in all its years
            self.private |= {address, log.address if log else address}
        return document.data

    def loses_names(self, address: str) -> bool:
        """Whether something written in a file may be missing from its data."""
        return any(problem.code in _LOSES_NAMES for problem in self.broken.get(address, ()))

    def part(self, address: str, cls: type[W], data: Any, what: str, path: Path_) -> W | None:
        """The part of a file at `path`, as a model."""
        model, flaws = self.parses.made(
            (address, cls.__name__, path),
            data,
            (what, self.measures, dict(self.tins)),
            lambda: read_model(cls, data, what, self.measures, self.tins),
        )
        found = under(path, flaws)
        if model is not None:
            found += private_flaws(model, path)
        self.tell(address, found)
        return None if found else model

    def years_of(self, kind: SourceKind) -> list[SourceKind]:
        """A log, and the files it continues in, in order."""
        names = sorted(address.partition("/")[2] for address in self.sources)
        return [kind, *(kind.of_year(name[-4:]) for name in names if goes_on(name) is kind)]

    def data_of(self, kind: SourceKind) -> Any:
        """The plain data of a file in the register; None if there is none, or it cannot be read."""
        return self.open(kind.address) if kind.address in self.sources else None

    def whole(self, kind: SourceKind, data: Any) -> Any:
        """A file that is a single object, as its model; None if it cannot be read."""
        return self.part(kind.address, kind.model, data, kind.spoken[1], ())

    def entries(self, kind: SourceKind, data: Mapping[str, Any]) -> Iterator[tuple[Path_, Any]]:
        """The readable entries of a list, each with its place.

        What is wrong with them is reported and, last, anything else wrong with the file.
        """
        written = data.get(kind.key)
        for index, item in enumerate(written if isinstance(written, list) else ()):
            entry = self.part(kind.address, _entry(kind), item, kind.spoken[0], (kind.key, index))
            if entry is not None:
                yield (kind.key, index), entry
        self.whole(kind, {**data, kind.key: []} if isinstance(written, list) else data)

    def cards(self, kind: SourceKind, data: Mapping[str, Any]) -> Iterator[tuple[str, Path_, Any]]:
        """The entries by name, each with its name and its place; None for one that cannot be read.

        What is wrong with them is reported and, last, anything else wrong with the file.
        """
        written, model = data.get(kind.key), _entry(kind)
        # where no key is required, a bare name is an entry nothing is known about yet
        may_be_empty = not any(field.is_required() for field in model.model_fields.values())
        for name, item in written.items() if isinstance(written, Mapping) else ():
            path, item = (kind.key, name), {} if item is None and may_be_empty else item
            yield name, path, self.part(kind.address, model, item, kind.spoken[0].format(name), path)
        self.whole(kind, {**data, kind.key: {}} if isinstance(written, Mapping) else data)

    def tell(self, address: str, flaws: Iterable[Flaw]) -> None:
        """Note flaws at their places in a file."""
        for flaw in flaws:
            place, hint = self.place(address, flaw), flaw.hint
            if flaw.code == "empty" and (hidden := _HIDDEN.search(place.text, max(0, place.column - 1))):
                hint = f'text that starts with "#" needs quotes round it: write "{hidden[1].strip()}"'
            severity: Severity = "note" if flaw.note else "error"
            problem = Problem(code=flaw.code, message=flaw.message, place=place, hint=hint, severity=severity)
            if flaw.code == FOLLOWS or (flaw.code == "whose" and not self.cup_said):
                self.broken.setdefault(address, []).append(problem)
            else:
                self._put(address, [problem])

    def place(self, address: str, flaw: Flaw) -> Place:
        """Where a flaw is in its file."""
        return self.documents[address].place(flaw.path, key=flaw.on_key, start=flaw.start, end=flaw.end)

    def written(self, folder: str) -> list[str]:
        """The names of a folder's files, including unusable ones: their own problems are reported elsewhere."""
        return [address.removeprefix(folder) for address in self.sources if address.startswith(folder)]

    def spoils(self, address: str, path: Path_, names: Mapping[str, Any]) -> set[str]:
        """Which of the `names` in the group at `path` contain one of the file's problems, or are written twice."""
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
