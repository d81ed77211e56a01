"""What a check said is said again without reading the book, until anything in it changes."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result
from tests.cli.test_check import spoil

from tinbook.cli import check as command
from tinbook.cli.checked import KEPT, digest_of_book, last_checked

Run = Callable[..., Result]
SPONGE = "mixtures/creamed-butter-sponge.yaml"


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The books that were read."""
    read, work = list[Path](), command._checked
    monkeypatch.setattr(command, "_checked", lambda book: read.append(book) or work(book))
    return read


@pytest.mark.parametrize("form", ["text", "json"])
def test_the_same_is_said_either_way(run: Run, book: Path, counted: list[Path], form: str) -> None:
    for broken in (False, True):
        if broken:
            spoil(book, SPONGE, "name: ", "nam: ")
        first, again = run("check", "--format", form), run("check", "--format", form)
        assert (first.output, first.exit_code) == (again.output, again.exit_code)
        assert bool(first.exit_code) == broken
    assert len(counted) == 2


def test_any_change_is_read(run: Run, book: Path, counted: list[Path]) -> None:
    run("check")
    spoil(book, SPONGE, "name: ", "name:  ")
    run("check")
    (book / "recipes" / SPONGE).rename(book / "recipes/mixtures/another.yaml")
    run("check")
    (book / "recipes/pictures").mkdir(exist_ok=True)
    (book / "recipes/pictures/lost.svg").write_text("<svg/>", "utf-8")
    run("check")
    (book / "recipes/mixtures/nowhere.yaml").symlink_to("nothing")
    assert "nowhere" in run("check").output
    assert len(counted) == 5
    run("check")
    assert len(counted) == 5


@pytest.mark.parametrize("text", ["", "{", "[]", '{"of": 1}', "\x00", '{"of": "DIGEST", "told": [[1]], "mixtures": 1}'])
def test_a_spoilt_file_is_not_believed(run: Run, book: Path, counted: list[Path], text: str) -> None:
    said = run("check").output
    (book / KEPT).write_text(text.replace("DIGEST", digest_of_book(book)), "utf-8")
    assert last_checked(book, digest_of_book(book)) is None
    assert run("check").output == said and len(counted) == 2


def test_where_nothing_can_be_kept_the_book_is_read(run: Run, book: Path, counted: list[Path]) -> None:
    (book / ".cache").write_text("a file where the folder would be", "utf-8")
    assert run("check").output == run("check").output
    assert len(counted) == 2


def test_where_there_is_no_book_nothing_is_kept(tmp_path: Path) -> None:
    assert digest_of_book(tmp_path) == ""
    assert list(tmp_path.iterdir()) == []


def test_a_book_checked_before_is_answered_without_its_libraries(run: Run, book: Path) -> None:
    run("check")
    code = f"import sys\nfrom tinbook.cli import main\ntry: main(['--book', {str(book)!r}, 'check'])\nexcept SystemExit: pass\n"
    code += "print('pydantic' in sys.modules, 'yaml' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "False False"
