"""The kept pages between runs, in a file beside the book that can be deleted at any time.

SQLite sees to it that a build stopped half-way, two builds at once or a full disk leave the file as it was. It holds
the pages of the last build and nothing else, so it is no larger than the book.
"""

from __future__ import annotations

import marshal
import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from hashlib import blake2b
from pathlib import Path
from typing import Any

from mkdocs.plugins import get_plugin_logger

from tinbook.models.ledger import Kept
from tinbook.pages.finding.find import Find
from tinbook.plugin.keeping import KeptBook, KeptPage

log = get_plugin_logger("tinbook")
SPOILT = "The pages kept from the last build could not be read ({}). They are made again."
BOOK = "/"
"""The row that belongs to no page: the surroundings, and what is known of the work."""
BUSY_S = 2.0
"""How long to wait for another build that is writing."""
COLUMNS = tuple(Find.__dataclass_fields__)


def kept_file(cache: Path, **ways: object) -> Path:
    """Where pages are kept that are built in these ways, as each way makes other pages: `kitchen`, `folder`."""
    return cache / f"{'-'.join(('pages', *(way for way, taken in ways.items() if taken is True)))}.sqlite"


def read_kept(file: Path, surroundings: bytes) -> KeptBook:
    """What the last build left, if its surroundings were the same. A spoilt file is deleted, and the log says so."""
    if not file.is_file():
        return KeptBook()
    try:
        with closing(sqlite3.connect(file, timeout=BUSY_S)) as store:
            rows = _rows(store, " WHERE name = ?", BOOK)
            _, (made_in, reads, digests) = next(rows)
            if made_in != surroundings:
                return KeptBook()
            work = Kept({name: frozenset(keys) for name, keys in reads.items()}, digests)
            pages = {name: _page(value) for name, value in _rows(store, " WHERE name <> ?", BOOK)}
            return KeptBook(surroundings, work, pages)
    except (sqlite3.Error, ValueError, TypeError, EOFError, StopIteration) as error:
        log.info(SPOILT.format(error or "it is empty"))
        with suppress(OSError):
            file.unlink()
        return KeptBook()


def write_kept(file: Path, book: KeptBook, before: KeptBook) -> None:
    """Put what a build leaves in the place of what was there `before`. Where that cannot be done, nothing is kept."""
    with suppress(OSError, sqlite3.Error):
        file.parent.mkdir(parents=True, exist_ok=True)
        with closing(sqlite3.connect(file, timeout=BUSY_S, isolation_level=None)) as store:
            store.execute("PRAGMA auto_vacuum = FULL")
            store.execute("BEGIN IMMEDIATE")
            store.execute("CREATE TABLE IF NOT EXISTS kept (name TEXT PRIMARY KEY, value BLOB, seal BLOB)")
            stand = [name for name, page in book.pages.items() if before.pages.get(name) is page]
            if len(stand) < len(before.pages) or not before.pages:
                gone = {name for (name,) in store.execute("SELECT name FROM kept")} - set(stand)
                store.executemany("DELETE FROM kept WHERE name = ?", [(name,) for name in gone])
            store.executemany("REPLACE INTO kept VALUES (?, ?, ?)", _sealed(book, set(stand)))
            store.execute("COMMIT")


def _rows(store: sqlite3.Connection, which: str, name: str) -> Iterator[tuple[str, Any]]:
    for key, value, seal in store.execute("SELECT name, value, seal FROM kept" + which, (name,)):
        if _seal(key, value) != seal:
            raise ValueError(f"{key} is not as it was written")
        yield key, marshal.loads(value)


def _sealed(book: KeptBook, stand: set[str]) -> Iterator[tuple[str, bytes, bytes]]:
    reads = {name: list(keys) for name, keys in book.work.reads.items()}
    rows: dict[str, Any] = {BOOK: (book.surroundings, reads, dict(book.work.digests))}
    rows |= {name: _plain(page) for name, page in book.pages.items() if name not in stand}
    for name, row in rows.items():
        value = marshal.dumps(row)
        yield name, value, _seal(name, value)


def _seal(name: str, value: bytes) -> bytes:
    return blake2b(value, key=name.encode()[:64], digest_size=16).digest()


def _plain(page: KeptPage) -> tuple[object, ...]:
    finds = tuple(tuple(getattr(find, name) for name in COLUMNS) for find in page.finds)
    return page.made_from, page.html, page.title, finds, sorted(page.anchors)


def _page(value: Any) -> KeptPage:
    made_from, html, title, finds, anchors = value
    found = tuple(Find(**dict(zip(COLUMNS, row, strict=True))) for row in finds)
    return KeptPage(made_from, html, title, found, frozenset(anchors))
