"""Money and prices in a book: read, told with their places, and never in what is public."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from tests.every import every
from tests.loading.conftest import write_book

from tinbook.loading import load_book
from tinbook.models.money import HouseMoney

Write = Callable[..., Path]
TODAY = date(2026, 12, 5)
MONEY, PRICES, ORDER = "house/money.yaml", "house/prices.yaml", "orders/quay.yaml"
SOUND = "currency: GBP\nan hour: 16\n"
PAID = "prices:\n  - {day: 2026-12-01, of: butter, pack: 250 g, price: 2.10}\n"
QUAY = "handle: quay\nmixtures: [plain-sponge]\nhand over: 2026-12-12 11:00\nquoted: 45\n"


def test_money_and_prices_are_the_kitchens_alone(write: Write) -> None:
    folder = write({MONEY: SOUND, PRICES: PAID, ORDER: QUAY})
    kitchen, public = load_book(folder, today=TODAY), load_book(folder, kitchen=False)
    assert kitchen.problems == () and [entry.of for entry in kitchen.book.others["prices"]] == ["butter"]
    assert kitchen.book.others["money"].an_hour.amount == 16
    assert public.book.others["money"] == HouseMoney() and public.book.others["prices"] == ()
    assert public.book.others["order"] == {} and "2.10" not in str(public.book.others)


def test_a_second_year_goes_on_in_a_file_of_its_own(write: Write) -> None:
    folder = write({PRICES: PAID, "house/prices-2027.yaml": PAID.replace("2026-12-01", "2027-01-04")})
    loaded = load_book(folder, today=date(2027, 2, 1))
    assert loaded.problems == () and len(loaded.book.others["prices"]) == 2


BAD = {
    "a negative price": (PRICES, PAID.replace("2.10", "-2.10"), 2, "2.10"),
    "a pack without a size": (PRICES, PAID.replace(", pack: 250 g", ""), 2, "pack: 250 g"),
    "a pack of nothing said": (PRICES, PAID.replace("250 g", "tub"), 2, ""),
    "a price in another currency": (PRICES, PAID.replace("2.10", "2.10 EUR"), 2, "GBP"),
    "a card nobody has": (PRICES, PAID.replace("butter", "buter"), 2, 'did you mean "butter"?'),
    "a day to come": (PRICES, PAID.replace("12-01", "12-24"), 2, "the day on which"),
    "no such day": (PRICES, PAID.replace("12-01", "13-01"), 2, "2026"),
    "an unknown key": (PRICES, PAID.replace("price:", "prise:"), 2, 'did you mean "price"?'),
    "a comma": (PRICES, PAID.replace("2.10", '"2,10"'), 2, "2.10"),
    "two ways to add": (MONEY, SOUND + "mark-up: 25 %\nmargin: 20 %\n", 4, "keep the one"),
    "two currencies in the money": (MONEY, SOUND + "least: €45\n", 3, "GBP"),
    "no currency of this world": (MONEY, SOUND.replace("GBP", "QQQ"), 1, "GBP"),
    "a deposit over the price": (ORDER, QUAY + "deposit: 50\n", 5, "which of the two"),
    "an order in another currency": (ORDER, QUAY.replace("45", "$45"), 4, "GBP"),
}


@pytest.fixture(scope="module")
def folders(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    def make(name: str) -> Path:
        address, text, _, _ = BAD[name]
        files = {MONEY: SOUND, PRICES: PAID, ORDER: QUAY, address: text}
        return write_book(tmp_path_factory.mktemp("bad") / "recipes", files)

    return make


@every("name", sorted(BAD))
def test_each_slip_has_its_place_and_its_cure(name: str, folders: Callable[[str], Path]) -> None:
    address, _, line, hint = BAD[name]
    folder = folders(name)
    before = (folder / address).read_bytes()
    found = load_book(folder, today=TODAY).problems
    problems = [each for each in found if each.place.file.endswith(address)]
    assert len(problems) == len(found) == 1, found
    (problem,) = problems
    assert problem.place.line == line and problem.place.column and hint in problem.hint and problem.hint
    assert (folder / address).read_bytes() == before


def test_a_log_with_a_slip_is_none_at_all(write: Write) -> None:
    """A part of it would look like every price there is."""
    loaded = load_book(write({PRICES: PAID + "  - {day: 2026-12-01, of: egg, pack: 6, price: x}\n"}), today=TODAY)
    assert loaded.errors and loaded.book.others["prices"] == ()


def test_an_order_with_a_slip_in_its_sums_is_left_out(write: Write) -> None:
    loaded = load_book(write({MONEY: SOUND, ORDER: QUAY.replace("45", "$45")}), today=TODAY)
    assert loaded.errors and loaded.book.others["order"] == {}
