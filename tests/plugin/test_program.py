"""MkDocs' own command as the book runs it, as a terminal sees it; in a process of its own in `tests/cli/test_site.py`."""

from __future__ import annotations

import logging
import socket
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest
from tests.books import new_book

from tinbook.plugin import program
from tinbook.plugin.slips import PlainSlips


@pytest.fixture
def own(tmp_path: Path) -> Path:
    return new_book(tmp_path / "ours")


class Done(NamedTuple):
    """What a process would have ended with."""

    returncode: int
    stdout: str
    stderr: str


Run = Callable[..., Done]


@pytest.fixture
def ran(capsys: pytest.CaptureFixture[str]) -> Run:
    """ran(book, part, *words): what the program ends with and what it said."""

    def run(book: Path, part: str, *words: str) -> Done:
        capsys.readouterr()
        said = logging.getLogger("mkdocs")
        before = [*said.handlers]
        try:
            code = program.main([part, "-f", str(book / "mkdocs.yml"), *words])
        finally:
            PlainSlips(book / "mkdocs.yml").leave()
            said.handlers[:] = before  # or the next one would still write to where this one does
        return Done(code, *capsys.readouterr())

    return run


@pytest.mark.parametrize("part", ["build", "serve"])
def test_settings_that_cannot_be_read_end_it_plainly(own: Path, ran: Run, part: str) -> None:
    before = (own / "mkdocs.yml").read_text("utf-8")
    (own / "mkdocs.yml").write_text(f"{before}nav: [a\n", "utf-8")
    done = ran(own, part)
    assert done.returncode == 1
    assert done.stderr.startswith(f"Error: mkdocs.yml:{len(before.splitlines()) + 1}:6: a list in [ ] is not closed")
    assert "Traceback" not in done.stdout + done.stderr and not (own / "site").exists()


@pytest.mark.parametrize("part", ["build", "serve"])
def test_a_setting_that_is_wrong_ends_it_plainly(own: Path, ran: Run, part: str) -> None:
    path = own / "mkdocs.yml"
    path.write_text(path.read_text("utf-8").replace("name: material", "name: materiel"), "utf-8")
    done = ran(own, part)
    assert done.returncode == 1
    assert 'mkdocs.yml:5:9: there is no theme "materiel"' in done.stderr and "write name: material" in done.stderr
    assert "Traceback" not in done.stdout + done.stderr


def test_an_address_that_is_taken(own: Path, ran: Run) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        done = ran(own, "serve", "-a", f"127.0.0.1:{other.getsockname()[1]}")
    assert done.returncode == 1
    assert "Error: this address is in use" in done.stderr and "Traceback" not in done.stderr


def test_an_address_that_is_not_of_this_machine(own: Path, ran: Run) -> None:
    done = ran(own, "serve", "-a", "192.0.2.1:8000")
    assert done.returncode == 1
    assert "Error: this address cannot be used" in done.stderr and "Traceback" not in done.stderr


def test_a_build_that_is_interrupted_says_that_the_site_is_not_whole(own: Path, ran: Run) -> None:
    (own / "stop.py").write_text("def on_env(env, config, files):\n    raise KeyboardInterrupt\n", "utf-8")
    with (own / "mkdocs.yml").open("a", encoding="utf-8") as file:
        file.write("hooks: [stop.py]\n")
    done = ran(own, "build")
    assert done.returncode == 1
    assert "half built" in done.stderr and "Traceback" not in done.stderr


def test_what_mkdocs_does_not_take_is_its_own_to_refuse(own: Path, ran: Run) -> None:
    done = ran(own, "build", "--gulls")
    assert done.returncode == 2 and "No such option" in done.stderr and "Traceback" not in done.stderr
    assert ran(own, "build", "--help").returncode == 0
