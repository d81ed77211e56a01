"""`tinbook check`: everything at once, one exit code."""

import json
from collections.abc import Callable
from pathlib import Path

from click.testing import CliRunner, Result

from tinbook.cli import main

Run = Callable[..., Result]


def spoil(book: Path, file: str, old: str, new: str) -> None:
    path = book / "recipes" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_sound_book(run: Run) -> None:
    done = run("check")
    assert done.exit_code == 0
    assert "Nothing to fix" in done.output


def test_every_problem_of_every_file_is_told(run: Run, book: Path) -> None:
    spoil(book, "mixtures/madeira-cake.yaml", "300 g butter", "300 g buttter")
    spoil(book, "mixtures/dark-ganache.yaml", "kind: ganache", "kind: ganach")
    done = run("check")
    assert done.exit_code == 1
    assert 'recipes/mixtures/madeira-cake.yaml:10:11: there is no card for the ingredient "buttter"' in done.output
    assert 'did you mean "ganache"?' in done.output
    assert "2 to fix" in done.output


def test_json_for_editors(run: Run, book: Path) -> None:
    spoil(book, "mixtures/madeira-cake.yaml", "300 g butter", "300 g buttter")
    done = run("check", "--format", "json")
    (problem,) = [each for each in json.loads(done.output) if each["severity"] == "error"]
    assert done.exit_code == 1
    assert (problem["file"], problem["line"], problem["column"]) == ("recipes/mixtures/madeira-cake.yaml", 10, 11)
    assert problem["severity"] == "error" and problem["hint"]


def test_no_book_here(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["--book", str(tmp_path), "check"])
    assert done.exit_code == 1
    assert "there is no such folder" in done.output


def test_what_is_unsure_is_noted_and_the_book_is_sound(run: Run, book: Path) -> None:
    path = book / "recipes/mixtures/madeira-cake.yaml"
    path.write_text(path.read_text("utf-8") + "# unsure: is it level?\n", "utf-8")
    done = run("check")
    assert done.exit_code == 0, done.output
    assert "note: this is still marked unsure" in done.output and "1 still unsure" in done.output
