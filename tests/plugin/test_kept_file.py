"""Whatever happens to the file of kept pages, the next build has all of it or nothing."""

from __future__ import annotations

import logging
import multiprocessing
import os
import random
import resource
import signal
import sqlite3
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from tinbook.loading import Learnt
from tinbook.models import Copy, PictureFile
from tinbook.models.ledger import Kept
from tinbook.pages.finding.find import Find
from tinbook.plugin.keeping import KeptBook, KeptPage
from tinbook.plugin.kept_file import KeptFile

AROUND = b"settings"
linux = pytest.mark.skipif(sys.platform != "linux", reason="limits and signals of Linux")


def page(word: str, size: int = 2_000) -> KeptPage:
    return KeptPage(
        made_from=word.encode(),
        html=random.Random(word).randbytes(size),
        title=word,
        finds=(Find(kind="page", title=word, address="a", tags=("x",), owned=True),),
        anchors=frozenset(("top", word)),
        sum=word.encode() * 3,
    )


def picture(word: str) -> PictureFile:
    copies = (Copy(f"{word}-1.jpg", 40, 30, word.encode()),)
    return PictureFile(file=f"{word}.jpg", kind="photo", width=40, height=30, copies=copies)


def book(words: str, size: int = 2_000) -> KeptBook:
    pages = {f"mixtures/{place}": page(f"{word}{place}", size) for place, word in enumerate(words)}
    learnt = Learnt(
        Kept({"mixtures/0 steps": frozenset(("besides",))}, {"besides": words.encode()}),
        {(f"{word}.jpg", f"sum of {word}"): picture(word) for word in words},
    )
    work = Kept({"mixtures/0": frozenset(("house", "=kin"))}, {"house": words.encode()})
    return KeptBook(AROUND, work, pages, learnt)


def read(cache: Path, around: bytes = AROUND) -> KeptBook:
    return KeptFile(cache).read(around)


def test_what_was_written_is_read(tmp_path: Path) -> None:
    KeptFile(tmp_path / "deep" / "cache").write(book("abc"))
    assert read(tmp_path / "deep" / "cache") == book("abc")


def test_in_other_surroundings_nothing_is_kept(tmp_path: Path) -> None:
    KeptFile(tmp_path).write(book("abc"))
    assert read(tmp_path, b"other settings") == KeptBook()
    assert read(tmp_path) == book("abc"), "the file waits until the next one is written"


def test_each_way_of_building_has_a_file_of_its_own(tmp_path: Path) -> None:
    KeptFile(tmp_path, kitchen=True, folder=False).write(book("a"))
    KeptFile(tmp_path, kitchen=False, folder=False).write(book("b"))
    assert KeptFile(tmp_path, kitchen=True).read(AROUND) == book("a")
    assert read(tmp_path) == book("b")
    KeptFile(tmp_path / "none", keep=False).write(book("a"))
    assert not (tmp_path / "none").exists()


def test_a_later_book_takes_the_place_of_an_earlier_one(tmp_path: Path) -> None:
    """Pages that stand are not written again, those that went go, and the file is no larger than the book."""
    store = KeptFile(tmp_path)
    store.write(book("abcdefgh" * 20))
    large = store.path.stat().st_size
    before = store.read(AROUND)
    kept = {name: before.pages[name] for name in list(before.pages)[:4]}
    store.write(before._replace(pages=kept))
    assert read(tmp_path).pages == kept
    assert store.path.stat().st_size < large / 5


def test_what_stands_here_may_have_been_written_otherwise_meanwhile(tmp_path: Path) -> None:
    first = KeptFile(tmp_path)
    first.write(book("ab"))
    mine = first.read(AROUND)
    KeptFile(tmp_path).write(book("cd"))  # by another build
    first.write(mine)
    assert read(tmp_path) == book("ab")


def test_a_clock_set_back_changes_nothing(tmp_path: Path) -> None:
    store = KeptFile(tmp_path)
    store.write(book("ab"))
    os.utime(store.path, (0, 0))
    assert read(tmp_path) == book("ab")


@pytest.mark.parametrize("seed", range(40))
def test_a_spoilt_file_is_thrown_away_or_whole(tmp_path: Path, seed: int, caplog: pytest.LogCaptureFixture) -> None:
    store, dice = KeptFile(tmp_path), random.Random(seed)
    store.write(book("abcd"))
    raw = bytearray(store.path.read_bytes())
    if seed % 4 == 0:
        raw = raw[: dice.randrange(len(raw))]
    elif seed % 4 == 1:
        raw[:] = dice.randbytes(len(raw))
    else:
        for _ in range(dice.choice((1, 20, 400))):
            raw[dice.randrange(len(raw))] ^= 1 << dice.randrange(8)
    store.path.write_bytes(bytes(raw))
    with caplog.at_level(logging.INFO, "mkdocs"):
        found = read(tmp_path)
    assert found in (book("abcd"), KeptBook())
    if found == KeptBook() and raw:
        assert len(caplog.records) <= 1
    store.write(book("xy"))
    assert read(tmp_path) in (book("xy"), KeptBook())
    KeptFile(tmp_path).write(book("xy"))
    assert read(tmp_path) == book("xy"), "and the build after it keeps again"


def test_it_says_so_in_a_line(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    store = KeptFile(tmp_path)
    store.write(book("a"))
    store.path.write_bytes(b"no database at all, as an editor may leave it" * 40)
    with caplog.at_level(logging.INFO, "mkdocs"):
        assert read(tmp_path) == KeptBook()
    (said,) = caplog.records
    assert "could not be read" in said.getMessage() and not store.path.exists()


def write_again_and_again(cache: Path) -> None:
    store = KeptFile(cache)
    for turn in range(10_000):
        store.write(book("ab" if turn % 2 else "cde", 40_000))


@linux
def test_a_build_killed_while_it_writes(tmp_path: Path) -> None:
    dice, found = random.Random(1), list[KeptBook]()
    for _ in range(8):
        process = multiprocessing.get_context("fork").Process(target=write_again_and_again, args=(tmp_path,))
        process.start()
        time.sleep(0.05 + dice.random() / 5)
        assert process.pid
        os.kill(process.pid, signal.SIGKILL)
        process.join()
        found.append(read(tmp_path))
        assert found[-1] in (book("ab", 40_000), book("cde", 40_000), KeptBook()), "all of it or nothing"
    assert KeptBook() not in found[2:], "what was whole once stays"


@linux
def test_two_builds_at_once(tmp_path: Path) -> None:
    fork = multiprocessing.get_context("fork")
    both = [fork.Process(target=write_again_and_again, args=(tmp_path,)) for _ in range(2)]
    for process in both:
        process.start()
    until = time.monotonic() + 2
    while time.monotonic() < until:
        assert read(tmp_path) in (book("ab", 40_000), book("cde", 40_000), KeptBook())
    for process in both:
        process.kill()
        process.join()
    assert read(tmp_path) in (book("ab", 40_000), book("cde", 40_000))


FULL = """
import resource, signal, sys
sys.path.insert(0, {root!r})
from pathlib import Path
from tests.plugin.test_kept_file import KeptFile, book
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, ({most}, {most}))
KeptFile(Path({cache!r})).write(book("z" * 40, 40_000))
"""


@linux
@pytest.mark.parametrize("most", [0, 4_096, 60_000, 400_000])
def test_a_disk_that_is_full(tmp_path: Path, most: int) -> None:
    KeptFile(tmp_path).write(book("abc"))
    root = str(Path(__file__).parents[2])
    told: dict[str, Any] = {"root": root, "most": most, "cache": str(tmp_path)}
    done = subprocess.run([sys.executable, "-c", FULL.format(**told)], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert read(tmp_path) == book("abc"), "what was there stands"
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[0] != most


def test_a_folder_that_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "cache").write_text("a file where the folder would be", "utf-8")
    KeptFile(tmp_path / "cache").write(book("a"))
    assert read(tmp_path / "cache") == KeptBook()


def test_another_build_that_never_ends_holds_nobody_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tinbook.plugin.kept_file.BUSY_S", 0.1)
    store = KeptFile(tmp_path)
    store.write(book("a"))
    other = sqlite3.connect(store.path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    KeptFile(tmp_path).write(book("b"))
    assert read(tmp_path) == KeptBook()
    assert store.path.exists(), "a file in use is not a spoilt one"
    other.execute("ROLLBACK")
    other.close()
    assert read(tmp_path) == book("a")
