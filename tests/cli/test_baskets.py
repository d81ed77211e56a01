"""`tinbook log stock` and `tinbook shop --done`: lines at the end of the log, once, and not a byte before them changed."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from itertools import permutations
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.loading import load_book
from tinbook.pages.orders.shop_lines import shop_places
from tinbook.plans.shopping.asked import shopping

Run = Callable[..., Result]
TODAY = ("--today", "2026-12-05")
BUTTER = {
    "line": "butter/2", "day": "2026-12-05", "of": "butter", "bought": ["12 x 250 g"],
    "for": ["2026-12-11-slipway-birthday"],
}  # fmt: skip
PASTE = {"line": "sugarpaste/1", "day": "2026-12-04", "of": "sugarpaste", "bought": ["2 x 2.5 kg", "2 x 1 kg"]}


@pytest.fixture
def log(book: Path) -> Path:
    return book / "recipes/house/stock.yaml"


def saved(place: Path, *entries: object) -> str:
    place.write_text(json.dumps({"bought": entries}))
    return str(place)


def test_what_was_bought_is_added_once_and_leaves_the_list(run: Run, book: Path, log: Path, tmp_path: Path) -> None:
    before = log.read_bytes()
    done = run("shop", *TODAY, "--done", saved(tmp_path / "a.json", BUTTER, PASTE), "--format", "json")
    assert done.exit_code == 0, done.output
    lines = {each["of"]: each for each in json.loads(done.stdout)["lines"]}
    assert lines["butter"]["packs"] == [] and lines["butter"]["missing_g"] == 0
    assert lines["sugarpaste"]["missing_g"] == 0 and lines["butter"]["line"] == "butter/3"
    whole = log.read_bytes()
    assert whole.startswith(before) and whole.count(b"\n") == before.count(b"\n") + 3
    assert b"for: [2026-12-11-slipway-birthday]" in whole
    again = run("shop", *TODAY, "--done", str(tmp_path / "a.json"))
    assert again.exit_code == 0 and "nothing new" in again.stderr and log.read_bytes() == whole
    assert load_book(log.parents[1], today=date(2026, 12, 5)).errors == ()


def test_ticks_of_two_devices_merge_in_any_order(run: Run, log: Path, tmp_path: Path) -> None:
    before = log.read_bytes()
    files = [saved(tmp_path / "a.json", BUTTER), saved(tmp_path / "b.json", {**BUTTER, "day": "2026-12-04"}, PASTE)]
    seen = set()
    for order in permutations([*files, files[0]]):
        log.write_bytes(before)
        for each in order:
            assert run("shop", *TODAY, "--done", each).exit_code == 0
        added = log.read_bytes().removeprefix(before).decode().splitlines()
        seen.add(frozenset((line.count("of: butter"), line.count("of: sugarpaste")) for line in added))
        assert len(added) == 3
    assert len(seen) == 1


def test_a_whole_list_ticked_leaves_nothing_to_buy(run: Run, log: Path, tmp_path: Path) -> None:
    """Every line of the page, as the tablet saves it."""
    loaded = load_book(log.parents[1])
    found = shopping(loaded.book, loaded.facts, date(2026, 12, 5))
    rows = [row for place in shop_places(found.list) for row in place.rows]
    ticks = [
        {"line": row.line, "day": "2026-12-05", "of": row.of, "bought": list(row.bought), "for": list(row.slugs)}
        for row in rows
    ]
    done = run("shop", *TODAY, "--done", saved(tmp_path / "a.json", *ticks), "--format", "json")
    assert done.exit_code == 0, done.output
    short = {each["of"]: each for each in json.loads(done.stdout)["lines"] if each["packs"]}
    assert len(rows) > 20 and short == {}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "not a file of what was bought"),
        ('{"bought": 3}', "not a file of what was bought"),
        ('{"bought": [{"line": "butter/2"}]}', "not a file of what was bought"),
        ('{"bought": [{"line": "butter/2", "of": "butter", "day": "2026-12-05", "bought": []}]}', "not a file"),
        ('{"done": []}', "not a file of what was bought"),
        ("[" * 100_000, "not a file of what was bought"),
        (json.dumps({"bought": [{**BUTTER, "of": "buter"}]}), "line 1 of the file cannot be right"),
        (json.dumps({"bought": [PASTE, {**BUTTER, "bought": ["-2"]}]}), "line 2 of the file cannot be right"),
        (json.dumps({"bought": [{**BUTTER, "day": "2027-01-01"}]}), "still to come"),
        (json.dumps({"bought": [{**BUTTER, "day": "soon"}]}), "is not a day"),
    ],
)
def test_what_is_no_such_file_changes_nothing(run: Run, log: Path, tmp_path: Path, text: str, told: str) -> None:
    before = log.read_bytes()
    (tmp_path / "bad.json").write_text(text)
    done = run("shop", *TODAY, "--done", str(tmp_path / "bad.json"))
    assert done.exit_code == 1 and told in done.output and log.read_bytes() == before


def test_a_tablets_clock_may_be_ahead_by_a_day(run: Run, log: Path, tmp_path: Path) -> None:
    done = run("shop", *TODAY, "--done", saved(tmp_path / "a.json", {**BUTTER, "day": "2026-12-06"}))
    assert done.exit_code == 0 and "day: 2026-12-05, of: butter" in log.read_text("utf-8")


def test_counting_by_hand(run: Run, book: Path, log: Path) -> None:
    before = log.read_bytes()
    words = ("log", "stock", "gel food colour, black", "--counted", "2 x 25 g", "--day", "2026-11-29")
    assert run(*words).exit_code == 0
    assert run("log", "stock", "milk", "--bought", "2 x 568 ml", "--day", "2026-11-29", "--for", "x").exit_code == 0
    added = log.read_bytes().removeprefix(before).decode()
    assert '  - {day: 2026-11-29, of: "gel food colour, black", counted: 2 x 25 g}\n' in added
    assert "  - {day: 2026-11-29, of: milk, bought: 2 x 568 ml, for: [x]}\n" in added
    assert load_book(log.parents[1], today=date(2026, 12, 5)).errors == ()


def test_a_new_log_is_begun(run: Run, log: Path) -> None:
    log.unlink()
    assert run("log", "stock", "butter", "--counted", "500 g", "--day", "2026-11-29").exit_code == 0
    assert log.read_text("utf-8").endswith("stock:\n  - {day: 2026-11-29, of: butter, counted: 500 g}\n")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("buter", "--counted", "500 g"), 'did you mean "butter"?'),
        (("butter",), "does not say how much"),
        (("butter", "--counted", "-500 g"), "500"),
        (("butter", "--counted", "3 m"), "is not measured by length"),
        (("butter", "--counted", "1 kg", "--taken", "1 kg"), "either counted or taken"),
        (("butter", "--counted", "1 kg", "--day", "2199-01-01"), "still to come"),
    ],
)
def test_what_cannot_be_is_told_and_nothing_is_written(run: Run, log: Path, words: tuple[str, ...], told: str) -> None:
    before = log.read_bytes()
    done = run("log", "stock", *words)
    assert done.exit_code == 1 and told in done.output and log.read_bytes() == before
