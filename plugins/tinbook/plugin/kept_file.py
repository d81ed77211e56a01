"""The kept pages between runs, in a file beside the book that can be deleted at any time.

SQLite sees to it that a build stopped half-way, two builds at once or a full disk leave the file as it was. It holds
the pages of the last build and nothing else, so it is no larger than the book.
"""

from __future__ import annotations

import marshal
import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import astuple
from hashlib import blake2b
from pathlib import Path
from typing import Any

from mkdocs.plugins import get_plugin_logger

from tinbook.loading import Learnt
from tinbook.loading.parses import PictureKey
from tinbook.models import Copy, PictureFile
from tinbook.models.ledger import Kept
from tinbook.pages.finding.find import Find
from tinbook.plugin.keeping import KeptBook, KeptPage

log = get_plugin_logger("tinbook")
SPOILT = "The pages kept from the last build could not be read ({}). They are made again."
BOOK = "/"
"""The row that belongs to no page: the surroundings, and what is known about the work."""
PICTURE = "/pictures/"
"""How the names of rows for pictures begin."""
BUSY_S = 2.0
"""How long to wait for another build that is writing."""
IN_USE = (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
COLUMNS, PICTURE_COLUMNS = tuple(Find.__dataclass_fields__), tuple(PictureFile.__dataclass_fields__)


class KeptFile:
    """The file for a book built in certain ways, `kitchen` or `folder`, each of which makes different pages.

    It is in the folder `cache`. Without the way `keep` there is no file, and nothing is kept.
    """

    def __init__(self, cache: Path, **ways: object) -> None:
        self._keeps = bool(ways.pop("keep", True))
        self.path = cache / f"{'-'.join(('pages', *(way for way, taken in ways.items() if taken is True)))}.sqlite"
        self._holds, self._seal = KeptBook(), b""
        """What the file holds as far as this process knows, and the seal that shows it still does."""

    def read(self, surroundings: bytes) -> KeptBook:
        """What the last build left, if its surroundings were the same. A spoilt file is deleted, with a line in the
        log."""
        self._holds, self._seal = KeptBook(), b""
        if not (self._keeps and self.path.is_file()):
            return self._holds
        try:
            with closing(sqlite3.connect(self.path, timeout=BUSY_S, isolation_level=None)) as store:
                store.execute("BEGIN")  # or another build could write between the two questions
                rows = dict(_rows(store, " WHERE name = ?", BOOK))
                seal, (made_in, *known) = rows[BOOK]
                if made_in == surroundings:
                    work, sound, cakes, shown_cakes = map(_known, known)
                    others = {name: value for name, (_, value) in _rows(store, " WHERE name <> ?", BOOK)}
                    pages = {name: _page(row) for name, row in others.items() if not name.startswith(PICTURE)}
                    pictures = dict(_picture(*each) for each in others.items() if each[0].startswith(PICTURE))
                    self._holds = KeptBook(surroundings, work, pages, Learnt(sound, pictures, cakes, shown_cakes))
                    self._seal = seal
        except (sqlite3.Error, ValueError, TypeError, EOFError, KeyError) as error:
            if getattr(error, "sqlite_errorcode", None) in IN_USE:
                return self._holds
            log.info(SPOILT.format(error))
            with suppress(OSError):
                self.path.unlink()
        return self._holds

    def write(self, book: KeptBook) -> None:
        """Replace what was there with what a build leaves. If that cannot be done, nothing changes."""
        if not self._keeps:
            return
        with suppress(OSError, sqlite3.Error):
            self.path.parent.mkdir(parents=True, exist_ok=True)
            with closing(sqlite3.connect(self.path, timeout=BUSY_S, isolation_level=None)) as store:
                store.execute("PRAGMA auto_vacuum = FULL")
                store.execute("BEGIN IMMEDIATE")
                store.execute("CREATE TABLE IF NOT EXISTS kept (name TEXT PRIMARY KEY, value BLOB, seal BLOB)")
                known = dict(store.execute("SELECT name, seal FROM kept WHERE name = ?", (BOOK,)))
                holds = _things(self._holds) if known.get(BOOK) == self._seal else {}
                things = _things(book)
                stand = {name for name, thing in things.items() if holds.get(name) is thing}
                gone = {name for (name,) in store.execute("SELECT name FROM kept")} - stand
                store.executemany("DELETE FROM kept WHERE name = ?", [(name,) for name in gone])
                whole = _sealed(BOOK, _of_book(book))
                store.execute("INSERT INTO kept VALUES (?, ?, ?)", whole)
                new = (_sealed(name, _plain(thing)) for name, thing in things.items() if name not in stand)
                store.executemany("INSERT INTO kept VALUES (?, ?, ?)", new)
                store.execute("COMMIT")
                self._holds, self._seal = book, whole[2]


def _rows(store: sqlite3.Connection, which: str, name: str) -> Iterator[tuple[str, tuple[bytes, Any]]]:
    for key, value, seal in store.execute("SELECT name, value, seal FROM kept" + which, (name,)):
        if _seal(key, value) != seal:
            raise ValueError(f"{key} is not as it was written")
        yield key, (seal, marshal.loads(value))


def _things(book: KeptBook) -> dict[str, KeptPage | PictureFile]:
    """Everything with a row of its own, by the row's name."""
    pictures = {f"{PICTURE}{digest}/{file}": picture for (file, digest), picture in book.learnt.pictures.items()}
    return {**book.pages, **pictures}


def _of_book(book: KeptBook) -> tuple[object, ...]:
    learnt = book.learnt
    return book.surroundings, *map(_plain_known, (book.work, learnt.sound, learnt.cakes, learnt.shown_cakes))


def _plain_known(kept: Kept) -> tuple[object, ...]:
    return {name: list(keys) for name, keys in kept.reads.items()}, dict(kept.digests)


def _known(value: Any) -> Kept:
    reads, digests = value
    return Kept({name: frozenset(keys) for name, keys in reads.items()}, digests)


def _sealed(name: str, row: Any) -> tuple[str, bytes, bytes]:
    value = marshal.dumps(row)
    return name, value, _seal(name, value)


def _seal(name: str, value: bytes) -> bytes:
    return blake2b(value, key=name.encode()[:64], digest_size=16).digest()


def _plain(page: KeptPage | PictureFile) -> object:
    if isinstance(page, PictureFile):
        fields = {name: getattr(page, name) for name in PICTURE_COLUMNS}
        return {**fields, "copies": tuple(map(astuple, page.copies))}
    finds = tuple(tuple(getattr(find, name) for name in COLUMNS) for find in page.finds)
    return page.made_from, page.html, page.title, finds, sorted(page.anchors), page.sum


def _page(value: Any) -> KeptPage:
    made_from, html, title, finds, anchors, written = value
    found = tuple(Find(**dict(zip(COLUMNS, row, strict=True))) for row in finds)
    return KeptPage(made_from=made_from, html=html, title=title, finds=found, anchors=frozenset(anchors), sum=written)


def _picture(name: str, value: Any) -> tuple[PictureKey, PictureFile]:
    digest, _, file = name.removeprefix(PICTURE).partition("/")
    fields = {**value, "copies": tuple(Copy(*copy) for copy in value["copies"])}
    return (file, digest), PictureFile(**fields)
