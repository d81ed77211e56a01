"""Labels and opened packs in a book: read, told with their places, and the packs never in what is public."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from tests.every import every
from tests.loading.conftest import write_book

from tinbook.loading import load_book

Write = Callable[..., Path]
TODAY = date(2026, 12, 5)
LABELS, OPENED, CARDS = "house/labels.yaml", "house/opened.yaml", "house/ingredients.yaml"
PACKS = "opened:\n  - {day: 2026-12-01, of: butter, pack: L2306}\n"
SHEET = "{columns: 2, rows: 4, wide: 99 mm, high: 67 mm, left: 5 mm, top: 14 mm}"


@pytest.fixture
def write(tmp_path: Path) -> Write:
    return lambda files: write_book(tmp_path, files)


def test_opened_packs_are_the_kitchens_alone(write: Write) -> None:
    folder = write({OPENED: PACKS, LABELS: "sold in: England\nprivate: [maker]\nmaker: Quay kitchen\n"})
    kitchen, public = load_book(folder, today=TODAY), load_book(folder, kitchen=False)
    assert kitchen.problems == () and [entry.pack for entry in kitchen.book.others["opened"]] == ["L2306"]
    assert public.book.others["opened"] == () and "L2306" not in str(public.book.others)
    assert public.book.others["labels"].sold_in == "England" and public.book.others["labels"].maker is None
    assert kitchen.book.others["labels"].maker == "Quay kitchen"


BAD = {
    "no such nation": (LABELS, "sold in: Englnd\n", 1, 'did you mean "England"?'),
    "no such sale": (LABELS, "sold: packed her\n", 1, 'did you mean "packed here"?'),
    "a sheet too wide": (LABELS, f"sheets:\n  mine: {SHEET.replace('columns: 2', 'columns: 3')}\n", 2, "count them"),
    "an unknown key": (LABELS, f"sheets:\n  mine: {SHEET.replace('wide', 'width')}\n", 2, "wide"),
    "a pack of nothing": (OPENED, PACKS.replace("butter", "buttr"), 2, 'did you mean "butter"?'),
    "a pack without a number": (OPENED, PACKS.replace(", pack: L2306", ""), 2, "pack"),
    "a pack of the future": (OPENED, PACKS.replace("12-01", "12-24"), 2, "the day you opened it"),
    "finished before it was opened": (OPENED, PACKS.replace("L2306", "L2306, finished: 2026-11-01"), 2, "both days"),
    "no such day": (OPENED, PACKS.replace("12-01", "13-01"), 2, "2026"),
}


@every("name", BAD)
def test_what_is_wrong_is_told_with_its_place(name: str, tmp_path: Path) -> None:
    path, text, line, hint = BAD[name]
    folder = write_book(tmp_path / name, {path: text})
    loaded = load_book(folder, today=TODAY)
    told = [problem for problem in loaded.problems if problem.place.file.endswith(path)]
    assert told and told[0].place.line == line and any(hint in f"{each.message} {each.hint}" for each in told), told


def test_an_allergen_a_packet_names_is_not_left_off_its_card(tmp_path: Path) -> None:
    cards = "ingredients:\n  butter:\n    allergens: none\n    made of: milk fat, salt\n  caster sugar: {}\n"
    loaded = load_book(write_book(tmp_path, {CARDS: cards}))
    told = [each for each in loaded.problems if each.code == "allergens"]
    assert told[0].place.line == 4 and told[0].hint == 'write "allergens: [milk]"'


def test_a_note_stops_nothing(tmp_path: Path) -> None:
    cards = "ingredients:\n  butter: {weighs as: butter, allergens: none, made of: whey powder}\n"
    loaded = load_book(write_book(tmp_path, {CARDS: cards}))
    assert "butter" in loaded.book.cards
    assert [each.severity for each in loaded.problems if each.code == "allergens"] == ["note"]
