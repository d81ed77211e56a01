"""`tinbook build` and `tinbook serve`: MkDocs' own, and nothing in the terminal but what is about the book."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from click.testing import CliRunner, Result
from tests.books import new_book

from tinbook.cli import main

RUN = "from tinbook.cli import main; main()"


@pytest.fixture
def own(tmp_path: Path) -> Path:
    return new_book(tmp_path / "ours")


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

    real = subprocess.Popen

    def stand_in(command: list[str], **_: Any) -> subprocess.Popen[bytes]:
        asked.append(command)
        return real([sys.executable, "-c", "raise SystemExit(3)"])

    monkeypatch.setattr("tinbook.cli.site.subprocess.Popen", stand_in)
    done = CliRunner().invoke(main, ["--book", str(own), part, "--strict"])
    assert done.exit_code == 3
    assert asked == [[sys.executable, "-m", "tinbook.plugin.program", part, "-f", str(own / "mkdocs.yml"), *expected]]


def test_without_settings_it_says_so(run: Callable[..., Result]) -> None:
    assert "there is no mkdocs.yml next to recipes" in run("build").output


class Served(NamedTuple):
    """A book that `tinbook serve` shows, and what the terminal says of it."""

    book: Path
    address: str
    terminal: Path

    def page(self, address: str = "") -> str:
        """A page of it, within what a reader would wait."""
        with urllib.request.urlopen(f"{self.address}{address}", timeout=20) as answer:
            return str(answer.read().decode("utf-8"))

    def shows(self, words: str, address: str) -> bool:
        """Whether a page has some words before long."""
        until = time.monotonic() + 60
        while time.monotonic() < until:
            with suppress(urllib.error.HTTPError):
                if words in self.page(address):
                    return True
            time.sleep(0.1)
        return False

    def says(self, words: str, times: int = 1) -> bool:
        """Whether the terminal says something before long."""
        until = time.monotonic() + 60
        while time.monotonic() < until:
            if self.terminal.read_text("utf-8", "replace").count(words) >= times:
                return True
            time.sleep(0.1)
        raise AssertionError(f"{words!r} is not in:\n{self.terminal.read_text('utf-8')}")


def hear_the_keyboard() -> None:
    """In a process that begins: Ctrl+C stops it, also where the tests run in the background of a shell."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.fixture
def served(own: Path, tmp_path: Path) -> Iterator[Served]:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        host = f"127.0.0.1:{probe.getsockname()[1]}"
    terminal, temporary = tmp_path / "terminal.txt", tmp_path / "temporary"
    temporary.mkdir()
    with terminal.open("wb") as file:
        server = subprocess.Popen([sys.executable, "-c", RUN, "serve", "-a", host], cwd=own, stdout=file, stderr=file,
                                  start_new_session=True, env={**os.environ, "TMPDIR": str(temporary)},
                                  preexec_fn=hear_the_keyboard)  # fmt: skip
        try:
            made = Served(own, f"http://{host}/", terminal)
            made.says("Serving on")
            yield made
            os.killpg(server.pid, signal.SIGINT)
            assert server.wait(60) == 0
        finally:
            with suppress(ProcessLookupError):
                os.killpg(server.pid, signal.SIGKILL)
            server.wait()
    assert not [path for path in temporary.iterdir() if path.name.startswith("mkdocs_")], "what it served is put away"


def test_a_served_book_stands_while_its_settings_are_broken(served: Served) -> None:
    """The last good site is shown, the terminal says what to mend, and the mended book is followed as before."""
    settings = served.book / "mkdocs.yml"
    good = settings.read_text("utf-8")
    broken = {
        good + "nav: [a\n": f"mkdocs.yml:{len(good.splitlines()) + 1}:6: a list in [ ] is not closed",
        good.replace("name: material", "name: materiel"): 'mkdocs.yml:5:9: there is no theme "materiel"',
        good.replace("- tinbook:", "- tinbok:"): 'there is no plugin "tinbok"',
        good.replace(
            "folder: !ENV [TINBOOK_FOLDER, false]", "folder: perhaps"
        ): '"folder" of the plugin tinbook cannot be',
        good.replace("name: material", "name: mkdocs"): 'write "theme: {name: material}"',
        good.replace("docs_dir: book_src", "docs_dir: moored"): 'there is no folder "moored"',
        good.replace("name: material", "name: readthedocs"): 'write "theme: {name: material}"',
    }
    for times, (text, said) in enumerate(broken.items(), 1):
        settings.write_text(text, "utf-8")
        assert served.says(said, list(broken.values())[:times].count(said)) and served.says(
            "The book is shown as it last was", times
        )
        assert "<title>Sources - Ours</title>" in served.page("sources/")
        assert 'id="tb-bench"' in served.page("mixtures/plain-sponge/")
    settings.write_text(good.replace('"Ours"', "Heron house").replace("theme:", "theem: x\ntheme:"), "utf-8")
    assert served.says('there is no setting "theem"')
    assert served.shows("<title>Sources - Heron house</title>", "sources/"), "what MkDocs only warns of is built"
    assert "Traceback" not in served.terminal.read_text("utf-8")


def test_a_served_book_stands_while_files_are_gone(served: Served) -> None:
    settings, pages, away = served.book / "mkdocs.yml", served.book / "book_src", served.book / "away"
    settings.rename(away)
    assert served.says("mkdocs.yml is missing: put it back")
    assert "<title>Sources - Ours</title>" in served.page("sources/")
    away.write_text(away.read_text("utf-8").replace('"Ours"', "Heron house"), "utf-8")
    away.rename(settings)
    assert served.shows("<title>Sources - Heron house</title>", "sources/")
    pages.rename(away)
    assert served.says('there is no folder "book_src"')
    assert "<title>Sources - Heron house</title>" in served.page("sources/")
    (away / "herons.md").write_text("# Herons first\n", "utf-8")
    away.rename(pages)
    assert served.shows("Herons first", "herons/")
    (pages / "herons.md").write_text("# Then gulls\n", "utf-8")
    assert served.shows("Then gulls", "herons/"), "the folder is followed as before"
    assert "Traceback" not in served.terminal.read_text("utf-8")
