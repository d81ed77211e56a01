"""What the last check of a book said, good until something in it changes. Kept next to the book; safe to delete."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Iterator
from contextlib import suppress
from datetime import date
from hashlib import blake2b
from importlib.metadata import version
from pathlib import Path
from typing import Any, NamedTuple

PACKAGE = Path(__file__).parents[1]
KEPT = Path(".cache", "tinbook", "check.json")


class Told(NamedTuple):
    """A problem as printed and as plain data, and whether it stops the book or is only a mark that something is
    unsure."""

    text: str
    plain: dict[str, Any]
    stops: bool
    unsure: bool


class Checked(NamedTuple):
    """What a check found."""

    told: tuple[Told, ...]
    mixtures: int
    techniques: int
    cakes: int


def digest_of_book(book: Path) -> str:
    """Changes with any name or byte below recipes/, with Tinbook itself and, in a book with orders, with the day; empty
    if something cannot be read."""
    if not (book / "recipes").is_dir():
        return ""
    # an order that was in time yesterday may be overdue today, and a count dated tomorrow is then no mistake
    by_day = (book / "recipes" / "orders").is_dir() or any((book / "recipes" / "house").glob("stock*.yaml"))
    day = date.today().isoformat() if by_day else ""
    digest = blake2b(f"{sys.version} {version('pydantic')} {version('pyyaml')} {day}".encode(), digest_size=16)
    try:
        for folder in (book / "recipes", PACKAGE):
            for path in _files(folder):
                name = os.fsencode(path.relative_to(folder))
                content = (
                    os.fsencode(path.readlink()) if path.is_symlink() and not path.is_file() else path.read_bytes()
                )
                digest.update(b"%d %d\0%b%b" % (len(name), len(content), name, content))
    except OSError:
        return ""
    return digest.hexdigest()


def _files(folder: Path) -> Iterator[Path]:
    return (path for path in sorted(folder.rglob("*")) if path.suffix != ".pyc" and not path.is_dir())


def last_checked(book: Path, digest: str) -> Checked | None:
    """What the last check said, if it was of this very book."""
    with suppress(OSError, ValueError, TypeError, KeyError):
        kept = json.loads((book / KEPT).read_text("utf-8"))
        if digest and kept["of"] == digest:
            counts = (kept[room] for room in ("mixtures", "techniques", "cakes"))
            return Checked(tuple(Told(*each) for each in kept["told"]), *counts)
    return None


def keep_checked(book: Path, digest: str, checked: Checked) -> None:
    """Keep what a check said; if it cannot be written, nothing is kept."""
    if not digest:
        return
    file = book / KEPT
    half = file.with_suffix(f".{os.getpid()}")
    with suppress(OSError):
        file.parent.mkdir(parents=True, exist_ok=True)
        try:
            half.write_text(json.dumps({"of": digest, **checked._asdict()}, ensure_ascii=False), "utf-8")
            half.replace(file)
        finally:
            half.unlink(missing_ok=True)
