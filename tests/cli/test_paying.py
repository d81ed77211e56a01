"""`tinbook log price`: one more line, and not a byte of the others changes."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from click.testing import Result
from tests.every import every

Run = Callable[..., Result]
LOG = "recipes/house/prices.yaml"


def test_a_line_is_added_and_said(run: Run, book: Path) -> None:
    before = (book / LOG).read_bytes()
    done = run("log", "price", "butter", "--pack", "250 g", "--price", "2.58", "--note", "At the market: dear.")
    assert done.exit_code == 0, done.output
    after = (book / LOG).read_bytes()
    line = (
        f'  - {{day: {date.today().isoformat()}, of: butter, pack: 250 g, price: 2.58, note: "At the market: dear."}}\n'
    )
    assert after == before + line.encode()
    assert "butter: £10.32 a kilo" in done.output and "it was £8.60 a kilo on 26 Nov 2026: 20 % dearer" in done.output
    assert run("check").exit_code == 0


def test_windows_line_ends_and_no_last_end_stay(run: Run, book: Path) -> None:
    path = book / LOG
    raw = path.read_bytes().replace(b"\n", b"\r\n").removesuffix(b"\r\n")
    path.write_bytes(raw)
    assert run("log", "price", "ribbon, 15 mm", "--pack", "5 m", "--price", "1", "--day", "2026-11-30").exit_code == 0
    assert path.read_bytes() == raw + b'\r\n  - {day: 2026-11-30, of: "ribbon, 15 mm", pack: 5 m, price: 1}\r\n'


def test_the_first_price_starts_the_log(run: Run, book: Path) -> None:
    (book / LOG).unlink()
    done = run("log", "price", "egg", "--pack", "6", "--price", "2.10", "--day", "2026-11-30")
    assert done.exit_code == 0 and "egg: £0.35 each" in done.output
    assert (book / LOG).read_text("utf-8").endswith("prices:\n  - {day: 2026-11-30, of: egg, pack: 6, price: 2.10}\n")


def test_a_price_of_long_ago_does_not_count(run: Run) -> None:
    done = run("log", "price", "butter", "--pack", "250 g", "--price", "1.20", "--day", "2025-01-04")
    assert done.exit_code == 0 and "A newer price is in the log, of 26 Nov 2026" in done.output


@every(
    ("words", "said"),
    [
        (("buttr", "--pack", "250 g", "--price", "2"), 'did you mean "butter"?'), (("butter", "--pack", "250 g", "--price", "-2"), "without the minus"),
        (("butter", "--pack", "250 g", "--price", "2 EUR"), "another currency"), (("butter", "--pack", "3", "--price", "2"), "what one weighs"),
        (("butter", "--pack", "250 g", "--price", "2", "--day", "2999-01-01"), "still to come"), (("butter", "--pack", "250 g", "--price", "2.155"), "finer than a coin"),
        (("butter", "--price", "2"), "--pack"), (("butter", "--pack", "250 g"), "--price"),
    ],
)  # fmt: skip
def test_a_slip_writes_nothing(words: tuple[str, ...], said: str, spoilable: Callable[..., Result]) -> None:
    done = spoilable("log", "price", *words)
    assert done.exit_code and said in done.output and "Traceback" not in done.output


@pytest.fixture
def spoilable(run: Run, book: Path) -> Callable[..., Result]:
    """The command, after which the log has to be as it was."""
    before = (book / LOG).read_bytes()

    def call(*words: str) -> Result:
        done = run(*words)
        assert (book / LOG).read_bytes() == before
        return done

    return call


def test_a_log_with_a_slip_is_left_alone(run: Run, book: Path) -> None:
    path = book / LOG
    path.write_text(path.read_text("utf-8").replace("price: 2.15", "price: two"), "utf-8")
    before = path.read_bytes()
    done = run("log", "price", "butter", "--pack", "250 g", "--price", "2.20")
    assert done.exit_code == 1 and "tinbook check" in done.output and path.read_bytes() == before
