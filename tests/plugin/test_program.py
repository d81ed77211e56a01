"""MkDocs' own command as the book runs it: processes of their own, as a terminal sees them."""

from __future__ import annotations

import socket
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from tinbook.cli import main


@pytest.fixture
def own(tmp_path: Path) -> Path:
    assert CliRunner().invoke(main, ["new", "book", str(tmp_path / "ours")]).exit_code == 0
    return tmp_path / "ours"


def ran(book: Path, *words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "tinbook.plugin.program", words[0], "-f", str(book / "mkdocs.yml"), *words[1:]]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=120)


@pytest.mark.parametrize("part", ["build", "serve"])
def test_settings_that_cannot_be_read_end_it_plainly(own: Path, part: str) -> None:
    before = (own / "mkdocs.yml").read_text("utf-8")
    (own / "mkdocs.yml").write_text(f"{before}nav: [a\n", "utf-8")
    done = ran(own, part)
    assert done.returncode == 1
    assert done.stderr.startswith(f"Error: mkdocs.yml:{len(before.splitlines()) + 1}:6: a list in [ ] is not closed")
    assert "Traceback" not in done.stdout + done.stderr and not (own / "site").exists()


@pytest.mark.parametrize("part", ["build", "serve"])
def test_a_setting_that_is_wrong_ends_it_plainly(own: Path, part: str) -> None:
    path = own / "mkdocs.yml"
    path.write_text(path.read_text("utf-8").replace("name: material", "name: materiel"), "utf-8")
    done = ran(own, part)
    assert done.returncode == 1
    assert 'mkdocs.yml:5:9: there is no theme "materiel"' in done.stderr and "write name: material" in done.stderr
    assert "Traceback" not in done.stdout + done.stderr


def test_an_address_that_is_taken(own: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        done = ran(own, "serve", "-a", f"127.0.0.1:{other.getsockname()[1]}")
    assert done.returncode == 1
    assert "Error: this address is in use" in done.stderr and "Traceback" not in done.stderr


def test_an_address_that_is_not_of_this_machine(own: Path) -> None:
    done = ran(own, "serve", "-a", "192.0.2.1:8000")
    assert done.returncode == 1
    assert "Error: this address cannot be used" in done.stderr and "Traceback" not in done.stderr


def test_a_build_that_is_interrupted_says_that_the_site_is_not_whole(own: Path) -> None:
    (own / "stop.py").write_text("def on_env(env, config, files):\n    raise KeyboardInterrupt\n", "utf-8")
    with (own / "mkdocs.yml").open("a", encoding="utf-8") as file:
        file.write("hooks: [stop.py]\n")
    done = ran(own, "build")
    assert done.returncode == 1
    assert "half built" in done.stderr and "Traceback" not in done.stderr


def test_what_mkdocs_does_not_take_is_its_own_to_refuse(own: Path) -> None:
    done = ran(own, "build", "--gulls")
    assert done.returncode == 2 and "No such option" in done.stderr and "Traceback" not in done.stderr
    assert ran(own, "build", "--help").returncode == 0
