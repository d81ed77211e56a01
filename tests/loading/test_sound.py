"""What was found sound is not checked again, until what the check read changes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest

from tinbook.loading import Loaded
from tinbook.loading.sound import SoundChecks
from tinbook.models import Book, Flaw
from tinbook.models.ledger import Kept


@pytest.fixture
def asked() -> list[str]:
    return []


@pytest.fixture
def check(asked: list[str]) -> Callable[[str, Book], Iterator[Flaw]]:
    """Notes that it was asked, reads the card of butter, and finds fault with anything called `leaky`."""

    def found(thing: str, book: Book) -> Iterator[Flaw]:
        asked.append(thing)
        assert book.cards["butter"]
        if thing == "leaky":
            yield Flaw(code="leak", path=("name",), message="it leaks", hint="caulk it")

    return found


def checks(book: Book, known: Kept, besides: object = "") -> SoundChecks:
    return SoundChecks(book=book, known=known, besides=besides)


def test_it_is_asked_once_and_again_after_a_change(
    demo: Loaded, asked: list[str], check: Callable[[str, Book], Iterator[Flaw]]
) -> None:
    cards = demo.book.cards
    first = checks(demo.book, Kept())
    assert first.found("hull", "sound", check) == []
    other_card = replace(demo.book, cards={**cards, "egg": cards["butter"]})
    for known, book, besides, again in (
        (first.done(), demo.book, "", 0),
        (first.done(), other_card, "", 0),
        (first.done(), replace(demo.book, cards={**cards, "butter": cards["egg"]}), "", 1),
        (first.done(), demo.book, "lost", 1),
        (Kept(), demo.book, "", 1),
    ):
        asked.clear()
        assert checks(book, known, besides).found("hull", "sound", check) == []
        assert len(asked) == again
    asked.clear()
    assert checks(demo.book, first.done()).found("hull", "sound too", check) == [] and asked == ["sound too"]


def test_what_is_wrong_is_told_each_time(
    demo: Loaded, asked: list[str], check: Callable[[str, Book], Iterator[Flaw]]
) -> None:
    first = checks(demo.book, Kept())
    (flaw,) = first.found("hull", "leaky", check)
    assert checks(demo.book, first.done()).found("hull", "leaky", check) == [flaw] and len(asked) == 2


def test_another_book_agrees_if_what_was_read_is_the_same(
    demo: Loaded, check: Callable[[str, Book], Iterator[Flaw]]
) -> None:
    first, cards = checks(demo.book, Kept()), demo.book.cards
    first.found("hull", "sound", check)
    assert checks(demo.book, Kept()).agrees(first.ledger, "hull", "sound")
    assert not checks(demo.book, Kept()).agrees(first.ledger, "hull", "another")
    spoilt = replace(demo.book, cards={**cards, "butter": cards["egg"]})
    assert not checks(spoilt, Kept()).agrees(first.ledger, "hull", "sound")
