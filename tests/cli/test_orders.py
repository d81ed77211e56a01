"""`tinbook new order`: a sound file, or why not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.cli.orders import draft_order
from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError

Run = Callable[..., Result]
WHEN = "2027-06-05 11:00"


def test_a_draft_is_six_lines(demo: Loaded) -> None:
    text, told = draft_order("pontoon party", "lighthouse-cake", 30, WHEN, ("nuts",), demo.book, demo.facts)
    assert text == (
        f"handle: pontoon party\ncake: lighthouse-cake\nguests: 30\nhand over: {WHEN}\n"
        "must be free from: [nuts]\nstate: asked\n"
    )
    assert any("nobody has said what is in" in each for each in told)


@pytest.mark.parametrize(
    ("cake", "guests", "when", "word", "message"),
    [
        ("lighthose-cake", None, WHEN, (), "the book has no cake"),
        ("lighthouse-cake", 999, WHEN, (), "it cannot be made|no size"),
        ("lighthouse-cake", None, "2027-02-29 11:00", (), "calendar"),
        ("lighthouse-cake", None, WHEN, ("dary",), "neither an allergen nor"),
        (None, None, WHEN, (), "does not say what is to be made"),
    ],
)
def test_what_cannot_be_is_refused(
    cake: str | None, guests: int | None, when: str, word: tuple[str, ...], message: str, demo: Loaded
) -> None:
    with pytest.raises(AskError, match=message) as told:
        draft_order("pontoon party", cake, guests, when, word, demo.book, demo.facts)
    assert told.value.hint


def test_the_command_writes_an_order_that_is_planned(run: Run, book: Path) -> None:
    asked = (
        "new",
        "order",
        "Pontoon party",
        "--cake",
        "lighthouse-cake",
        "--hand-over",
        WHEN,
        "--free-from",
        "instant coffee",
    )
    done = run(*asked)
    assert done.exit_code == 0, done.output
    path = book / "recipes" / "orders" / "2027-06-05-pontoon-party.yaml"
    assert path.is_file() and "tinbook plan" in done.output
    assert run("check").exit_code == 0
    assert "Collection: Pontoon party" in run("plan", "--today", "2027-05-28", "--order", "Pontoon party").output
    again = run(*asked)
    assert again.exit_code == 1 and "already exists" in again.output
