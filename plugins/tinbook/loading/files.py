"""Which files make up a book, and what is wrong with those that do not belong."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tinbook.models.register import goes_on, house_files, rooms
from tinbook.problems import Place, Problem, nearest
from tinbook.source import LARGEST_BYTES

PICTURES = "pictures"
PICTURE_TYPES = (".svg", ".jpg", ".jpeg", ".png", ".webp")
SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class SourceFile:
    """One file: where it is in the book (`mixtures/madeira`), its path as shown, its bytes."""

    address: str
    shown: str
    raw: bytes


class Unfit(Exception):
    """A file the book cannot show: a code, what is wrong (in a baker's words), and how to put it right."""

    def __init__(self, code: str, message: str, hint: str) -> None:
        super().__init__(message)
        self.code, self.message, self.hint = code, message, hint


def slug_of(name: str) -> str:
    """A name as a file name: lower-case words joined by hyphens."""
    return "-".join(re.findall(r"[a-z0-9]+", name.lower().replace("'", "").replace("’", ""))) or "unnamed"


def read_sources(folder: Path) -> tuple[tuple[SourceFile, ...], frozenset[str], tuple[Problem, ...]]:
    """All sources below `folder` (the book's recipes/), in order of name, and problems with the files themselves.

    Also the addresses that files with a problem were most likely meant to have.
    """
    if not folder.is_dir():
        hint = 'go to the folder your book is in, or name it with --book; "tinbook new book FOLDER" starts one'
        return (), frozenset(), (file_problem("no book", f"{folder.name}/", "there is no such folder", hint),)
    sources, refused, problems = [], set(), []
    for path in walk(folder):
        if path.relative_to(folder).parts[0] == PICTURES:
            continue
        shown = shown_name(path, folder)
        meant, fault = _fault(path, folder, shown)
        if fault is None:
            try:
                with path.open("rb") as file:
                    sources.append(SourceFile(meant, shown, file.read(LARGEST_BYTES + 1)))
            except OSError as error:
                fault = file_problem("unreadable", shown, f"cannot be read: {error.strerror}", "check its permissions")
        if fault is not None:
            problems.append(fault)
            refused.add(meant)
    return tuple(sources), frozenset(refused), tuple(problems)


def shown_name(path: Path, folder: Path) -> str:
    """A path as bakers see it, starting from the book's folder."""
    return f"{folder.name}/{path.relative_to(folder).as_posix()}".encode("utf-8", "replace").decode()


def walk(folder: Path) -> Iterator[Path]:
    """Every file and link below, except those that systems and editors hide or leave behind."""
    for path in sorted(folder.rglob("*")):
        hidden = any(part.startswith((".", "~")) for part in path.relative_to(folder).parts)
        if not hidden and not path.name.endswith("~") and (path.is_file() or path.is_symlink()):
            yield path


def _fault(path: Path, folder: Path, shown: str) -> tuple[str, Problem | None]:
    """The address a file has or was meant to have, and what stops it being part of the book."""
    inside = path.relative_to(folder)
    room, slug = inside.parts[0], slug_of(path.stem)
    near = nearest(room, rooms()) if len(inside.parts) == 2 else None
    name = nearest(path.stem, house_files()) if near == "house" else slug
    meant = f"{near or room}/{name or slug}"
    if fault := _link_fault(path, folder):
        return meant, file_problem("outside", shown, *fault)
    if path.suffix.lower() in PICTURE_TYPES:
        return meant, file_problem("stray file", shown, "is a picture", f"move it to {PICTURES}/")
    if path.suffix != ".yaml":
        return meant, file_problem("stray file", shown, "is not a .yaml file", f'name it "{name or slug}.yaml"')
    if room not in rooms() or len(inside.parts) != 2:
        hint = f'did you mean the folder "{near}"?' if near else f"put it in {_any_of(rooms())}"
        return meant, file_problem("stray file", shown, "is not in any of the book's folders", hint)
    if room == "house" and path.stem not in house_files() and not goes_on(path.stem):
        hint = f'did you mean "{name}.yaml"?' if name else "the house has house.yaml, tins.yaml, ingredients.yaml"
        return meant, file_problem("stray file", shown, "is not one of the house's files", hint)
    if room != "house" and not SLUG.fullmatch(path.stem):
        hint = f'name it "{slug}.yaml": lower case, figures and hyphens'
        message = "this file's name cannot be a page's address"
        return meant, file_problem("file name", shown, message, hint)
    return f"{room}/{path.stem}", None


def _any_of(folders: tuple[str, ...]) -> str:
    """`house/, mixtures/, techniques/ or cakes/`."""
    *first, last = (f"{folder}/" for folder in folders)
    return f"{', '.join(first)} or {last}"


def _link_fault(path: Path, folder: Path) -> tuple[str, str] | None:
    """What is wrong with where a link leads, and how to put it right."""
    try:
        real = path.resolve(strict=True)
    except (OSError, RuntimeError):
        return "leads to a file that is not there", "take it out, or put the file itself in its place"
    if not real.is_relative_to(folder.resolve()):
        return "leads to a file outside the book", "copy the file itself into the book"
    return None if real.is_file() else ("leads to a folder", "put the files themselves into the book")


def file_problem(code: str, shown: str, message: str, hint: str) -> Problem:
    """A problem with a whole file, placed at its start."""
    return Problem(code=code, message=message, place=Place(file=shown, line=1, column=1), hint=hint)
