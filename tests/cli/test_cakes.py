"""`tinbook new cake`: a sound file, or why not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.cli.cakes import draft_cake
from tinbook.loading import Loaded, load_book
from tinbook.plans.base.asking import AskError

Run = Callable[..., Result]


def test_a_draft_is_sound(demo: Loaded) -> None:
    text = draft_cake("Gull's point", "square 25 cm, 20 cm", "madeira-cake", demo.book, demo.facts)
    assert text == "name: Gull's point\ntiers: [square 25 cm, 20 cm]\nmixture: madeira-cake\n"
    assert draft_cake('The "Ebb": two', "20 cm", "madeira-cake", demo.book, demo.facts).startswith('name: "The \\"Ebb')


@pytest.mark.parametrize(
    ("tiers", "mixture", "message"),
    [
        ("20 cm, 25 cm", "madeira-cake", "wider"),
        ("roud 20 cm", "madeira-cake", "no tin shape"),
        ("20 cm", "madera-cake", "there is no cake recipe"),
        ("20 cm", "american-buttercream", "there is no cake recipe"),
        ("20 cm", None, "a cake needs a recipe"),
    ],
)
def test_what_cannot_be_is_refused(demo: Loaded, tiers: str, mixture: str | None, message: str) -> None:
    with pytest.raises(AskError, match=message) as told:
        draft_cake("Tide cake", tiers, mixture, demo.book, demo.facts)
    assert told.value.hint


def test_the_command_writes_a_cake_that_is_worked_out(run: Run, book: Path) -> None:
    baked = next(slug for slug, mixture in load_book(book / "recipes").book.mixtures.items() if mixture.tins)
    done = run("new", "cake", "Tide cake", "--tiers", "25 cm, 20 cm", "--mixture", baked)
    assert done.exit_code == 0, done.output
    path = book / "recipes" / "cakes" / "tide-cake.yaml"
    assert path.is_file() and "tinbook table cake --of tide-cake" in done.output
    assert run("check").exit_code == 0 and "8 cakes are fine" in run("check").output
    assert run("table", "cake", "--of", "tide-cake", "--format", "json").exit_code == 0
    again = run("new", "cake", "Tide cake", "--mixture", baked)
    assert again.exit_code == 1 and "already exists" in again.output
    run("schema")
    assert run("new", "cake", "Ebb cake", "--mixture", baked).exit_code == 0
    assert (path.parent / "ebb-cake.yaml").read_text("utf-8").startswith("# yaml-language-server")


def test_a_table_of_a_broken_cake_says_so(run: Run, book: Path) -> None:
    (book / "recipes" / "cakes" / "tide-cake.yaml").write_text("name: Tide cake\ntiers: []\n", "utf-8")
    done = run("table", "cake", "--of", "tide-cake")
    assert done.exit_code == 1 and "has a mistake in it" in done.output
