"""Builds that the machine stops: real builds, stopped by the system's own errors."""

from __future__ import annotations

import errno
import logging
import os
import subprocess
import sys
from contextlib import chdir
from pathlib import Path

import pytest
from click.testing import CliRunner
from mkdocs.__main__ import cli as mkdocs_cli
from tests.books import new_book

from tinbook.plugin.stopped import ELSEWHERE, NOT_BUILT, ROOM, is_of_files, why_stopped

resource = pytest.importorskip("resource", reason="this system has no limits for a process")
COMMANDS = {
    "tinbook build": ("-c", "from tinbook.cli import main; main()", "build"),
    "mkdocs build": ("-m", "mkdocs", "build"),
}
FULL_PAGE = """
import os

def on_env(env, config, files):
    folder = os.path.join(config.site_dir, "sources")
    os.makedirs(folder)
    os.symlink("/dev/full", os.path.join(folder, "index.html"))
"""
"""A hook that gives a page of the site a device that has no room."""


@pytest.fixture
def own(tmp_path: Path) -> Path:
    return new_book(tmp_path / "ours")


def sources(book: Path) -> dict[str, bytes]:
    """All of a book but its site, what it keeps of its own, and what Python keeps of a hook."""
    paths = [path for path in book.rglob("*") if path.is_file() and path.parent.name != "__pycache__"]
    inside = {path.relative_to(book): path for path in paths}
    return {str(name): path.read_bytes() for name, path in inside.items() if name.parts[0] not in ("site", ".cache")}


def small_files() -> None:
    """In a process that begins: no file may be larger than 30,000 bytes, not even for the machine's master."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (30_000, 30_000))


def ran(book: Path, command: str, *words: str, limited: bool = False) -> subprocess.CompletedProcess[str]:
    """Our command in a process of its own; MkDocs' in this one, unless that has to be limited."""
    if command == "mkdocs build" and not limited:
        said = logging.getLogger("mkdocs")
        before = [*said.handlers]
        with chdir(book):
            done = CliRunner().invoke(mkdocs_cli, ["build", *words])
        said.handlers[:] = before
        assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
        return subprocess.CompletedProcess(command, done.exit_code, done.stdout, done.stderr)
    return subprocess.run([sys.executable, *COMMANDS[command], *words], cwd=book, capture_output=True, text=True,
                          check=False, timeout=120, preexec_fn=small_files if limited else None)  # fmt: skip


def was_told(done: subprocess.CompletedProcess[str], *words: str) -> None:
    said = done.stdout + done.stderr
    assert done.returncode == 1, said
    assert "Traceback" not in said
    for each in (*words, "Your recipes and pages are untouched.", NOT_BUILT):
        assert each in said, said


@pytest.mark.parametrize("command", COMMANDS)
def test_a_disk_that_fills_while_the_site_is_written(own: Path, command: str) -> None:
    """The old site is gone by then: what lies there is told to be no site."""
    assert ran(own, command, "-q").returncode == 0
    (own / "full.py").write_text(FULL_PAGE, "utf-8")
    with (own / "mkdocs.yml").open("a", encoding="utf-8") as file:
        file.write("hooks: [full.py]\n")
    before = sources(own)
    was_told(ran(own, command, "-q"), 'The site cannot be written to "site": the disk is full.',
             'What is in "site" now is incomplete', "do not publish it", ROOM)  # fmt: skip
    assert sources(own) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_a_disk_that_takes_no_file_of_that_size(own: Path, command: str) -> None:
    before = sources(own)
    done = ran(own, command, "-q", limited=True)
    was_told(done, 'The site cannot be written to "site": the disk cannot hold so large a file.', ROOM)
    assert sources(own) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_a_folder_that_may_not_be_written(own: Path, command: str) -> None:
    """A part of the system where nobody makes a folder, whoever the test is run by."""
    before = sources(own)
    place = Path("/sys/tinbook")
    done = ran(own, command, "-q", "-d", str(place))
    was_told(done, f'The site cannot be written to "{place}": ', ELSEWHERE)
    assert "do not publish it" not in done.stdout + done.stderr, "nothing lies there"
    assert sources(own) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_a_file_in_the_way_of_the_site(own: Path, command: str) -> None:
    (own / "harbour").write_text("not a folder", "utf-8")
    was_told(
        ran(own, command, "-q", "-d", "harbour/site"), 'The site cannot be written to "harbour/site": not a directory'
    )


@pytest.mark.parametrize(("code", "cure"), [(errno.ENOSPC, ROOM), (errno.EROFS, ELSEWHERE), (errno.EACCES, ELSEWHERE)])
def test_what_is_said_of_each(tmp_path: Path, code: int, cure: str) -> None:
    site = tmp_path / "site"
    site.mkdir()
    error = OSError(code, os.strerror(code), str(site / "index.html"))
    assert "is incomplete" not in why_stopped(error, site, serving=False), "an empty folder is no half site"
    (site / "a.html").write_text("a", "utf-8")
    told = why_stopped(error, site, serving=False)
    assert told.startswith(f'The site cannot be written to "{site}": ') and "is incomplete" in told
    assert told.endswith(cure)
    assert "is incomplete" not in why_stopped(error, site, serving=True), "it is put back"


@pytest.mark.parametrize(
    ("error", "is_one"),
    [
        (OSError(errno.ENOSPC, "No space left on device"), True),
        (OSError(errno.ENOENT, "No such file or directory", "gulls.md"), True),
        (OSError(errno.ENOENT, "No usable temporary directory found in ['a']"), True),
        (ConnectionRefusedError(errno.ECONNREFUSED, "Connection refused"), False),
    ],
)
def test_only_files_and_folders_are_told_so(error: OSError, is_one: bool) -> None:
    assert is_of_files(error) == is_one


def test_a_page_that_cannot_be_read_is_named(tmp_path: Path) -> None:
    error = OSError(errno.EACCES, "Permission denied", str(tmp_path / "book_src" / "index.md"))
    told = why_stopped(error, tmp_path / "site", serving=False)
    assert told.startswith(f'"{tmp_path / "book_src" / "index.md"}" cannot be read: permission denied.')
