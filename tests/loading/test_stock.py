"""Supplies and stock in a book: read, told with their places, and the stock never in what is public."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from tests.every import every
from tests.loading.conftest import BASE, write_book

from tinbook.loading import load_book

Write = Callable[..., Path]
TODAY = date(2026, 12, 5)
STOCK, SUPPLIES = "house/stock.yaml", "house/supplies.yaml"
SOUND = "stock:\n  - {day: 2026-12-01, of: butter, counted: 500 g}\n"
BOARDS = "supplies:\n  - {what: drum, size: round 30 cm}\n"


def test_the_stock_is_the_kitchens_alone(write: Write) -> None:
    folder = write({STOCK: SOUND, SUPPLIES: BOARDS})
    kitchen, public = load_book(folder, today=TODAY), load_book(folder, kitchen=False)
    assert kitchen.problems == () and [entry.of for entry in kitchen.book.others["stock"]] == ["butter"]
    assert public.book.others["stock"] == () and "500 g" not in str(public.book.others)


def test_a_second_year_goes_on_in_a_file_of_its_own(write: Write) -> None:
    folder = write({STOCK: SOUND, "house/stock-2027.yaml": SOUND.replace("2026-12-01", "2027-01-04")})
    loaded = load_book(folder, today=date(2027, 2, 1))
    assert loaded.problems == () and len(loaded.book.others["stock"]) == 2


BAD = {
    "negative": (STOCK, SOUND.replace("500 g", "-500 g"), 2, "write 500"),
    "a unit of another kind": (STOCK, SOUND.replace("500 g", "3 m"), 2, "500 g"),
    "a number of what is not counted": (STOCK, SOUND.replace("500 g", "2"), 2, "each:"),
    "a day in the future": (STOCK, SOUND.replace("12-01", "12-24"), 2, "the day on which"),
    "no such day": (STOCK, SOUND.replace("12-01", "13-01"), 2, "2026"),
    "nobody knows it": (STOCK, SOUND.replace("butter", "buter"), 2, 'did you mean "butter"?'),
    "no amount": (STOCK, SOUND.replace(", counted: 500 g", ""), 2, "counted"),
    "an unknown key": (STOCK, SOUND.replace("counted", "cuonted"), 2, 'did you mean "counted"?'),
    "a board without a size": (SUPPLIES, BOARDS.replace(", size: round 30 cm", ""), 2, "size: round 30 cm"),
    "a pack of nothing": (SUPPLIES, BOARDS.replace("}", ", packs: 0}"), 2, ""),
    "twice": (SUPPLIES, BOARDS + "  - {what: drum, size: round 30 cm}\n", 3, "keep one"),
    "a card's pack of nothing": (
        "house/ingredients.yaml",
        BASE["house/ingredients.yaml"].replace("allergens: [milk]", "allergens: [milk]\n    packs: 0 g"),
        5,
        "",
    ),
    "a card's packs of two kinds": (
        "house/ingredients.yaml",
        BASE["house/ingredients.yaml"].replace("allergens: [milk]", "allergens: [milk]\n    packs: [250 g, 1 l]"),
        5,
        "in one way",
    ),
    "a card's pack that nobody can weigh": (
        "house/ingredients.yaml",
        BASE["house/ingredients.yaml"] + "    packs: 6\n",
        19,
        "each:",
    ),
}


@pytest.fixture(scope="module")
def folders(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    def make(name: str) -> Path:
        address, text, _, _ = BAD[name]
        return write_book(tmp_path_factory.mktemp("bad") / "recipes", {address: text})

    return make


@every("name", sorted(BAD))
def test_each_slip_has_its_place_and_its_cure(name: str, folders: Callable[[str], Path]) -> None:
    address, _, line, hint = BAD[name]
    folder = folders(name)
    before = (folder / address).read_bytes()
    problems = [each for each in load_book(folder, today=TODAY).problems if each.place.file.endswith(address)]
    assert len(problems) == 1
    (problem,) = problems
    assert problem.place.line == line and problem.place.column and hint in problem.hint and problem.hint
    assert (folder / address).read_bytes() == before


def test_a_stock_with_a_slip_is_none_at_all(write: Write) -> None:
    """A part of it would look like all there is."""
    loaded = load_book(write({STOCK: SOUND + "  - {day: 2026-12-01, of: egg, counted: -6}\n"}), today=TODAY)
    assert loaded.errors and loaded.book.others["stock"] == ()


def test_a_slip_in_a_card_is_told_once(write: Write) -> None:
    cards = BASE["house/ingredients.yaml"].replace("    weighs as: butter\n", "    weighs as: buter\n")
    loaded = load_book(write({STOCK: SOUND, "house/ingredients.yaml": cards}), today=TODAY)
    assert not [each for each in loaded.errors if each.place.file.endswith("stock.yaml")]
