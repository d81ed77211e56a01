"""`tinbook log pack`: one more line, and nothing that is there is changed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from click.testing import Result
from tests.every import every

from tinbook.loading import load_book

Run = Callable[..., Result]


def test_one_line_is_added(run: Run, book: Path) -> None:
    log = book / "recipes" / "house" / "opened.yaml"
    before = log.read_bytes()
    done = run("log", "pack", "sweet butter", "--pack", "L9: x", "--best-before", "2027-02-01", "--day", "2026-11-30")
    assert done.exit_code == 0 and log.read_bytes().startswith(before), done.output
    last = load_book(book / "recipes").book.others["opened"][-1]
    assert (last.of, last.pack) == ("sweet butter", "L9: x")


def test_the_first_line_begins_the_file(run: Run, book: Path) -> None:
    log = book / "recipes" / "house" / "opened.yaml"
    log.unlink()
    assert run("log", "pack", "egg", "--pack", "0 UK 1", "--day", "2026-11-30").exit_code == 0
    assert log.read_text("utf-8").startswith("# The packs we opened")


@every(
    ("asked", "said"),
    [
        (("buttr", "--pack", "L1"), 'did you mean "butter"?'),
        (("butter", "--pack", "L1", "--day", "2999-01-01"), "still to come"),
        (("butter", "--pack", "L1", "--day", "tomorrow"), "tomorrow"),
        (("butter", "--pack", "L1", "--day", "2026-11-30", "--finished", "2026-11-01"), "before it was opened"),
        (("butter",), "--pack"),
    ],
)
def test_what_cannot_be_logged(asked: tuple[str, ...], said: str, run: Run, book: Path) -> None:
    log = book / "recipes" / "house" / "opened.yaml"
    before = log.read_bytes()
    done = run("log", "pack", *asked)
    assert done.exit_code and said in done.output and log.read_bytes() == before, done.output
