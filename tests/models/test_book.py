"""The words of the house: every name an ingredient goes by leads to its card."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Book, Card
from tinbook.models.ledger import once


@every(
    ("written", "name"),
    [
        ("butter", "butter"),
        ("Butter", "butter"),
        ("sweet butter", "butter"),
        ("SWEET  butter", "butter"),
        ("eggs", "egg"),
        ("egg yolks", "egg yolk"),
        ("lemons", "lemon"),
        ("superfine sugar", "caster sugar"),
        ("sand", None),
        ("butt", None),
        ("", None),
    ],
)
def test_a_name_leads_to_its_card(kitchen: Book, written: str, name: str | None) -> None:
    assert kitchen.house_word(written) == name


def test_plurals_in_es(kitchen: Book, card: Callable[..., Card]) -> None:
    book = replace(kitchen, cards={"radish": card(), "peach": card(also=["nectarine"])})
    assert book.house_word("Radishes") == "radish"
    assert book.house_word("peaches") == "peach"
    assert book.house_word("nectarines") == "peach"


def test_a_cards_own_name_wins_over_another_ones_alias(kitchen: Book, card: Callable[..., Card]) -> None:
    for cards in ({"lard": card(), "butter": card(also=["Lard"])}, {"butter": card(also=["Lard"]), "lard": card()}):
        assert replace(kitchen, cards=cards).house_word("lard") == "lard"


def test_a_word_in_the_singular_with_an_s_is_found_as_it_stands(kitchen: Book, card: Callable[..., Card]) -> None:
    book = replace(kitchen, cards={"molasses": card(), "oats": card()})
    assert book.house_word("molasses") == "molasses"
    assert book.house_word("Oats") == "oats"


def test_every_word_of_the_demo_leads_home(demo: Loaded) -> None:
    for name, card in demo.book.cards.items():
        for word in (name, name.upper(), *card.also):
            assert demo.book.house_word(word) == name, word


def test_what_is_made_of_a_whole_book_is_worked_out_once_and_never_for_another(kitchen: Book) -> None:
    asked: list[Book] = []

    @once
    def tins(book: Book) -> int:
        asked.append(book)
        return len(book.tins)

    book, fewer = replace(kitchen), replace(kitchen, tins=kitchen.tins[1:])
    had = len(book.tins)
    assert [tins(each) for each in (book, book, fewer, book)] == [had, had, had - 1, had]
    assert [id(each) for each in asked] == [id(book), id(fewer)]
    assert book == kitchen
