"""`tinbook build` and `tinbook serve`: MkDocs' own, and nothing in the terminal but what is about the book."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from tinbook.cli import main

RUN = "from tinbook.cli import main; main()"


@pytest.fixture
def own(tmp_path: Path) -> Path:
    assert CliRunner().invoke(main, ["new", "book", str(tmp_path / "ours")]).exit_code == 0
    return tmp_path / "ours"


def test_a_newcomer_reads_of_the_book_alone(own: Path) -> None:
    """No notice of the theme about its own future: asked of MkDocs itself it is there, so it can be seen to be gone."""
    free = {name: value for name, value in os.environ.items() if "MKDOCS_2" not in name}
    plain = subprocess.run([sys.executable, "-m", "mkdocs", "build", "-q", "-d", "there"], cwd=own, env=free,
                           capture_output=True, text=True, check=True, timeout=120)  # fmt: skip
    assert "end of life" in plain.stderr
    ours = subprocess.run([sys.executable, "-c", RUN, "build", "-q", "--strict", "-d", "here"], cwd=own, env=free,
                          capture_output=True, text=True, check=True, timeout=120)  # fmt: skip
    assert (ours.stdout, ours.stderr) == ("", "")
    assert (own / "here" / "index.html").is_file()


@pytest.mark.parametrize(("part", "expected"), [("build", ["--strict"]), ("serve", ["--livereload", "--strict"])])
def test_words_go_on_to_mkdocs(own: Path, monkeypatch: pytest.MonkeyPatch, part: str, expected: list[str]) -> None:
    asked: list[list[str]] = []

    def stand_in(command: list[str], **_: Any) -> subprocess.CompletedProcess[str]:
        asked.append(command)
        return subprocess.CompletedProcess(command, 3)

    monkeypatch.setattr("tinbook.cli.site.subprocess.run", stand_in)
    done = CliRunner().invoke(main, ["--book", str(own), part, "--strict"])
    assert done.exit_code == 3
    assert asked == [[sys.executable, "-m", "mkdocs", part, "-f", str(own / "mkdocs.yml"), *expected]]


def test_without_settings_it_says_so(run: Callable[..., Result]) -> None:
    assert "there is no mkdocs.yml beside recipes" in run("build").output
