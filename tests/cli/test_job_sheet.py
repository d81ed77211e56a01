"""`tinbook sheet --order`: the kitchen's own sheet of an order."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]
TODAY = ("--today", "2026-12-07 08:00")


def pages(pdf: Path) -> list[str]:
    told = subprocess.run(
        ["pdftotext", "-layout", pdf, "-"], capture_output=True, check=True, timeout=60
    ).stdout.decode()
    return told.split("\f")[:-1]


@pytest.fixture
def alone(book: Path) -> Callable[[str], None]:
    """Only one order is left in the book, so that it is quickly planned."""

    def leave(slug: str) -> None:
        for path in (book / "recipes" / "orders").iterdir():
            if path.stem != slug:
                path.unlink()

    return leave


def test_three_tiers_on_two_pages_with_days_and_a_card(run: Run, alone: Callable[[str], None], tmp_path: Path) -> None:
    alone("2026-12-12-boathouse-wedding")
    out = tmp_path / "job.html"
    done = run("sheet", "--order", "Boathouse wedding", *TODAY, "--pdf", "--output", str(out))
    assert done.exit_code == 0, done.output
    words = pages(out.with_suffix(".pdf"))
    whole = "\n".join(words)
    assert len(words) == 2
    for said in (
        "Job sheet: boathouse wedding",
        "Day by day",
        "13:55",
        "cut here",
        "To go with the cake",
        "10 dowels",
        "Level table",
    ):
        assert said in whole, said
    html = out.read_text("utf-8")
    assert "Day by day" in html and "Deliver boathouse wedding" in html


def test_a_class_and_cups(run: Run, alone: Callable[[str], None], tmp_path: Path) -> None:
    alone("2026-12-08-rope-class")
    out = tmp_path / "class.html"
    assert run("sheet", "--order", "rope class", *TODAY, "--pdf", "--output", str(out)).exit_code == 0
    words = "\n".join(pages(out.with_suffix(".pdf")))
    assert "Pieces to have ready" in words and "The class, 14:00" in words


def test_what_is_no_order_is_told(run: Run, alone: Callable[[str], None]) -> None:
    alone("2026-12-08-rope-class")
    for words, told in (
        (("--order", "rope clas"), 'did you mean "rope class"?'),
        (("--order", "rope class", "lighthouse-cake"), "an order says itself"),
        ((), "say which technique or cake"),
    ):
        done = run("sheet", *words, *TODAY)
        assert done.exit_code == 1 and told in done.output, done.output


def test_what_has_gone_has_no_sheet(run: Run, alone: Callable[[str], None]) -> None:
    alone("2026-10-03-point-light")
    done = run("sheet", "--order", "point light", *TODAY)
    assert done.exit_code == 1 and "nothing left to do" in done.output
