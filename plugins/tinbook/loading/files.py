"""Which files a book consists of, and what is wrong with those that are not part of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tinbook.problems import Place, Problem, nearest

HOUSE_FILES = ("house", "tins", "ingredients")
FOLDERS = ("mixtures", "techniques")
SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class Source:
    """One file: where it stands in the book (`mixtures/madeira`), its path as shown, its bytes."""

    address: str
    shown: str
    raw: bytes


def slug_of(name: str) -> str:
    """A name as a file name: lower-case words joined by hyphens."""
    return "-".join(re.findall(r"[a-z0-9]+", name.lower().replace("'", "").replace("’", ""))) or "unnamed"


def read_sources(folder: Path) -> tuple[tuple[Source, ...], tuple[Problem, ...]]:
    """All sources below `folder` (the book's recipes/), in order of name, and problems with the files themselves."""
    if not folder.is_dir():
        hint = f'make it with "tinbook new book {folder.parent.name}", or say where the book is with --book'
        return (), (file_problem("no book", f"{folder.name}/", "there is no such folder", hint),)
    sources, problems = [], []
    for path in _walk(folder):
        shown = f"{folder.name}/{path.relative_to(folder).as_posix()}"
        fault = _fault(path, folder, shown)
        if fault:
            problems.append(fault)
            continue
        try:
            raw = path.read_bytes()
        except OSError as error:
            problems.append(file_problem("unreadable", shown, f"cannot be read: {error.strerror}", "mend its rights"))
            continue
        sources.append(Source(f"{path.parent.name}/{path.stem}", shown, raw))
    return tuple(sources), tuple(problems)


def _walk(folder: Path) -> Iterator[Path]:
    for path in sorted(folder.rglob("*")):
        hidden = any(part.startswith((".", "~")) for part in path.relative_to(folder).parts)
        if not hidden and (path.is_file() or path.is_symlink()):
            yield path


def _fault(path: Path, folder: Path, shown: str) -> Problem | None:
    """What keeps a file from being part of the book."""
    if not path.resolve().is_relative_to(folder.resolve()):
        return file_problem("outside", shown, "leads to a file outside the book", "copy the file itself into the book")
    inside = path.relative_to(folder)
    if path.suffix != ".yaml":
        return file_problem("stray file", shown, "is not a .yaml file", f'name it "{slug_of(path.stem)}.yaml"')
    if len(inside.parts) != 2 or inside.parts[0] not in ("house", *FOLDERS):
        close = nearest(inside.parts[0], ("house", *FOLDERS)) if len(inside.parts) == 2 else None
        hint = f'did you mean the folder "{close}"?' if close else "put it in house/, mixtures/ or techniques/"
        return file_problem("stray file", shown, "lies in no folder of the book", hint)
    if inside.parts[0] == "house":
        if path.stem in HOUSE_FILES:
            return None
        close = nearest(path.stem, HOUSE_FILES)
        hint = f'did you mean "{close}.yaml"?' if close else "the house has house.yaml, tins.yaml, ingredients.yaml"
        return file_problem("stray file", shown, "is not a file of the house", hint)
    if not SLUG.fullmatch(path.stem):
        hint = f'name it "{slug_of(path.stem)}.yaml": small letters, figures and hyphens'
        return file_problem("file name", shown, "a file's name is its page's address, and this one cannot be", hint)
    return None


def file_problem(code: str, shown: str, message: str, hint: str) -> Problem:
    """A problem with a whole file, placed at its start."""
    return Problem(code, message, Place(shown, 1, 1), hint)
