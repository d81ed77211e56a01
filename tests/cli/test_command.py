"""The command as a whole."""

from collections.abc import Callable
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from tinbook.cli.command import PARTS, main, part_called


def test_help_names_every_part(run: Callable[..., Result]) -> None:
    told = run("--help").output
    assert all(word in told for word in (*PARTS, "--book"))


@pytest.mark.parametrize("width", [40, 80, 200])
def test_help_tells_of_each_part_what_the_part_says_of_itself(width: int) -> None:
    """As click would write it with every part imported."""
    whole = click.Group(commands=[part_called(name) for name in PARTS], params=main.params, help=main.help)
    settings = {"terminal_width": width, "max_content_width": width, "help_option_names": ["-h", "--help"]}
    told, expected = (
        group.get_help(click.Context(group, info_name="tinbook", **settings))  # type: ignore[arg-type]
        for group in (main, whole)
    )
    assert told == expected


def test_a_part_is_called_by_its_name() -> None:
    assert {name: part_called(name).name for name in PARTS} == {name: name for name in PARTS}


def test_an_unknown_part_is_refused(run: Callable[..., Result]) -> None:
    refused = run("bake")
    assert refused.exit_code == 2
    assert "No such command 'bake'" in refused.output


@pytest.mark.parametrize("below", ["", "recipes", "recipes/house", "notes/2026"])
def test_the_book_is_found_from_any_folder_of_it(book: Path, below: str, monkeypatch: pytest.MonkeyPatch) -> None:
    (book / below).mkdir(parents=True, exist_ok=True)
    monkeypatch.chdir(book / below)
    done = CliRunner().invoke(main, ["check"])
    assert done.exit_code == 0, done.output
    assert "Nothing to fix" in done.output


@pytest.mark.parametrize("words", [["check", "--book", "{}"], ["check", "--book={}"], ["--book", "{}", "check"]])
def test_where_the_book_is_may_be_said_before_and_after(
    book: Path, words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(main, [word.format(book) for word in words])
    assert (done.exit_code, done.output.count("Nothing to fix")) == (0, 1), done.output


@pytest.mark.parametrize(
    "words",
    [
        "check", "table tins", "sheet line-a-tin", "schema", "template ring --cake=round_20_cm",
        "log bake x --tin=round_20_cm --oven=160_°C --done-after=40_min",
    ],
)  # fmt: skip
def test_outside_a_book_it_says_where_to_go(words: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Not to make a book that is called like the folder one stands in, nor to ask `tinbook check`, which says the same."""
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(main, [word.replace("_", " ") for word in words.split()])
    assert done.exit_code == 1
    assert (
        'go to the folder your book is in, or name it with --book; "tinbook new book FOLDER" starts one' in done.output
    )
    assert not list(tmp_path.iterdir())
