"""`tinbook plan --done`: ticks come back, once."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result
from tests.cli.test_plan import orders

__all__ = ["orders"]
Run = Callable[..., Result]
TODAY = ("--today", "2026-12-08 18:00")
CLASS = "2026-12-08-rope-class/goes-out"
ONE = {
    "task": "2026-12-12-regatta-club-cups/load-1-mix-cupcakes",
    "done": "2026-12-08 10:40",
    "of": "cupcakes",
    "said": "25 min",
}


def saved(place: Path, *entries: object) -> str:
    place.write_text(json.dumps({"done": list(entries)}))
    return str(place)


def test_what_is_ticked_is_added_and_leaves_the_plan(run: Run, book: Path, orders: Path, tmp_path: Path) -> None:
    log = book / "recipes/house/hours.yaml"
    told = run("plan", *TODAY, "--done", saved(tmp_path / "done.json", {**ONE, "took": "40 min"}), "--format", "json")
    assert told.exit_code == 0, told.output
    keys = [task["key"] for task in json.loads(told.stdout)["tasks"]]
    assert keys and ONE["task"] not in keys
    first = log.read_bytes()
    assert b"took: 40 min" in first
    assert run("plan", *TODAY, "--done", str(tmp_path / "done.json")).exit_code == 0
    assert log.read_bytes() == first
    assert run("check").exit_code == 0


def test_two_devices_merge(run: Run, book: Path, orders: Path, tmp_path: Path) -> None:
    log = book / "recipes/house/hours.yaml"
    tablet, phone = (
        saved(tmp_path / "a.json", ONE),
        saved(tmp_path / "b.json", {**ONE, "took": "40 min"}, {"task": CLASS, "done": "2026-12-08 17:00"}),
    )
    before = log.read_text().count("task:")
    for each in (tablet, phone, tablet, phone):
        assert run("plan", *TODAY, "--done", each).exit_code == 0
    assert log.read_text().count("task:") == before + 3


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "not a file of what is done"),
        ('{"done": 3}', "not a file of what is done"),
        ('{"done": [{"task": "a/b", "done": "soon"}]}', "entry 1 of the file cannot be right"),
        ('{"done": [{"task": "a/b", "done": "2027-12-08 10:00"}]}', "still to come"),
        ("[" * 100_000, "not a file of what is done"),
    ],
)
def test_what_is_no_such_file_changes_nothing(
    run: Run, book: Path, orders: Path, tmp_path: Path, text: str, told: str
) -> None:
    (tmp_path / "bad.json").write_text(text)
    log = book / "recipes/house/hours.yaml"
    before = log.read_bytes()
    done = run("plan", *TODAY, "--done", str(tmp_path / "bad.json"))
    assert done.exit_code == 1 and told in done.output and log.read_bytes() == before
