"""Lines at the end of a log."""

from __future__ import annotations

from pathlib import Path

import click
import pytest

from tinbook.cli.appending import appended, flow_line
from tinbook.loading import load_book
from tinbook.models.register import kinds
from tinbook.source import read_yaml

HOURS = kinds()["hours"]
LINE = flow_line({"done": "2026-12-05 10:40", "task": "a/b"})


def test_a_line_is_read_as_it_was_meant() -> None:
    data = {"done": "2026-12-05 10:40", "task": "slip's way+b/x: 1", "of": "null", "took": "45 min"}
    read, problems = read_yaml(f"it: {flow_line(data)}\n".encode(), "it.yaml")
    assert not problems and read is not None and read.data["it"] == data


def test_nothing_of_the_file_changes(book: Path) -> None:
    path = book / "recipes" / "house" / "hours.yaml"
    for old in (
        b"# mine\r\nhours:\r\n    - {done: 2026-12-04 10:40, task: a/a}",
        b"hours:\n- {done: 2026-12-04 10:40, task: a/a}\n",
    ):
        path.write_bytes(old)
        where, whole = appended(book / "recipes", HOURS, 2026, [LINE, LINE], load_book(book / "recipes"), "")
        assert where == path and whole.startswith(old) and whole.count(b"task: a/b") == 2
        read, problems = read_yaml(whole, "hours.yaml")
        assert not problems and read is not None and len(read.data["hours"]) == 3


def test_what_cannot_be_added_to_is_left_alone(book: Path) -> None:
    path = book / "recipes" / "house" / "hours.yaml"
    for old in ("hours:\n  - {done: never, task: a/a}\n", "hours: []\n"):
        path.write_text(old)
        with pytest.raises(click.ClickException, match="yourself"):
            appended(book / "recipes", HOURS, 2026, [LINE], load_book(book / "recipes"), "")
        assert path.read_text() == old
