"""What is written down of reading a book, and what of earlier work still stands."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest

from tinbook.models import Book
from tinbook.models.ledger import FIELDS, LATELY, Itself, Kept, Ledger, digest_of, entries, ledger_of, once, watched


def read_by(book: Book, *looks: str) -> frozenset[str]:
    """The keys noted while each of these is looked at."""
    ledger = Ledger()
    seen = watched(book, ledger)
    with ledger.reading("a page"):
        for look in looks:
            eval(look, {"book": seen})
    return ledger.reads_of("a page")


@pytest.mark.parametrize(
    ("look", "keys"),
    [
        ("book.house.name", {"house"}),
        ("book.tins", {"tins"}),
        ("book.cards['butter']", {"cards/butter"}),
        ("book.cards.get('sand')", {"cards/sand"}),
        ("'sand' in book.cards", {"cards/sand"}),
        ("list(book.cards)", {"cards/"}),
        ("len(book.mixtures)", {"mixtures/"}),
        ("book.house_word('sweet butter')", {"names/sweet butter"}),
        ("book.bakes_of.get('x')", {"bakes_of/x"}),
        ("None", set()),
    ],
)
def test_what_is_looked_at_is_noted(kitchen: Book, look: str, keys: set[str]) -> None:
    assert read_by(kitchen, look) == keys


def test_whoever_looks_at_all_values_has_read_each(kitchen: Book) -> None:
    assert read_by(kitchen, "list(book.cards.items())") == {"cards/", *(f"cards/{name}" for name in kitchen.cards)}


def test_every_field_of_a_book_is_watched(kitchen: Book) -> None:
    assert {each.name for each in fields(Book)} < set(FIELDS)
    for name in FIELDS:
        seen = watched(kitchen, Ledger())
        assert getattr(seen, name) == getattr(kitchen, name), name


def kept_of(book: Book, *looks: str) -> Kept:
    ledger = Ledger()
    seen = watched(book, ledger)
    with ledger.reading("a page"):
        for look in looks:
            eval(look, {"book": seen})
    return ledger.kept()


def stands(book: Book, kept: Kept) -> bool:
    ledger = Ledger(kept)
    watched(book, ledger)
    return ledger.stands("a page")


def test_work_stands_until_what_it_read_changes(kitchen: Book) -> None:
    kept = kept_of(kitchen, "book.cards['butter']", "book.tins")
    less = {name: card for name, card in kitchen.cards.items() if name != "egg"}
    assert stands(kitchen, kept)
    assert stands(replace(kitchen, cards=less), kept), "nobody looked at the egg"
    assert not stands(replace(kitchen, cards={**kitchen.cards, "butter": kitchen.cards["egg"]}), kept)
    assert not stands(replace(kitchen, cards={"egg": kitchen.cards["egg"]}), kept)
    assert not stands(replace(kitchen, tins=kitchen.tins[1:]), kept)
    assert not stands(kitchen, Kept()), "nothing is known of it"


def test_the_order_of_names_counts_for_whoever_asked_for_them(kitchen: Book) -> None:
    turned = replace(kitchen, cards=dict(reversed(kitchen.cards.items())))
    assert not stands(turned, kept_of(kitchen, "list(book.cards)"))
    assert stands(turned, kept_of(kitchen, "book.cards['egg']"))


def test_the_same_is_known_without_the_values(kitchen: Book) -> None:
    """Another process has the digests alone."""
    kept = kept_of(kitchen, "book.cards['butter']", "book.house")
    assert stands(kitchen, Kept(kept.reads, kept.digests))
    other = replace(kitchen, cards={**kitchen.cards, "butter": kitchen.cards["egg"]})
    assert not stands(other, Kept(kept.reads, kept.digests))


@once
def longest(book: Book) -> int:
    """The letters of the longest name of a card."""
    return max(map(len, book.cards))


def test_whoever_uses_an_outcome_depends_on_it_alone(kitchen: Book) -> None:
    def kept(book: Book, before: Kept | None = None) -> tuple[Ledger, Kept]:
        ledger = Ledger(before)
        seen = watched(book, ledger)
        with ledger.reading("a page"):
            longest(seen)
        return ledger, ledger.kept()

    ledger, first = kept(kitchen)
    (key,) = ledger.reads_of("a page")
    assert key.startswith("=")
    more = replace(kitchen, cards={**kitchen.cards, "oat": kitchen.cards["egg"]})
    assert stands(more, first), "another card, and the longest name is as long as it was"
    longer = replace(kitchen, cards={**kitchen.cards, "a" * 99: kitchen.cards["egg"]})
    assert not stands(longer, first)
    assert longest(kitchen) == longest(more) < longest(longer)


def test_shared_work_is_read_with_all_it_read(kitchen: Book) -> None:
    ledger, done = Ledger(), list[int]()
    seen = watched(kitchen, ledger)

    def work() -> int:
        done.append(1)
        return len(seen.cards["butter"].also)

    for page in ("one page", "another"):
        with ledger.reading(page):
            assert ledger.share(("also",), work) == 1
        assert ledger.reads_of(page) == {"cards/butter"}
    assert done == [1]


def test_what_another_process_read_counts(kitchen: Book) -> None:
    ledger = Ledger()
    watched(kitchen, ledger)
    ledger.add_reads("a page", frozenset({"tins"}))
    kept = ledger.kept()
    assert stands(kitchen, kept)
    assert not stands(replace(kitchen, tins=()), kept)


def test_a_book_nobody_watches_keeps_what_was_worked_out(kitchen: Book) -> None:
    assert ledger_of(kitchen) is ledger_of(kitchen)
    assert ledger_of(replace(kitchen)) is not ledger_of(kitchen)


def test_entries_are_those_values() -> None:
    found = entries("x", {"a": 1}, Ledger())
    assert dict(found) == {"a": 1} and len(found) == 1 and "b" not in found


def test_digests_tell_values_apart() -> None:
    assert digest_of((1, "a")) == digest_of((1, "a")) != digest_of((1, "b"))
    assert digest_of("\ud800") == digest_of("\ud800"), "whatever a file may hold"


def test_what_is_soon_wanted_again_is_made_once_and_read_by_each(kitchen: Book) -> None:
    ledger, made = Ledger(), list[object]()
    seen = watched(kitchen, ledger)

    def look() -> object:
        made.append(seen.cards["butter"])
        return made[-1]

    for page in ("first", "second"):
        with ledger.reading(page):
            assert ledger.lately(("butter",), look) is kitchen.cards["butter"]
    assert len(made) == 1
    assert ledger.reads_of("first") == ledger.reads_of("second") == {"cards/butter"}


def test_what_is_not_wanted_for_long_is_dropped() -> None:
    ledger, made = Ledger(), list[int]()

    def work(number: int) -> int:
        return ledger.lately((number,), lambda: made.append(number) or number)  # type: ignore[func-returns-value]

    for number in range(LATELY):
        work(number)
    work(0)
    work(LATELY)  # drops 1, wanted longest ago
    assert [work(0), work(2), work(1)] == [0, 2, 1]
    assert made == [*range(LATELY + 1), 1]


def test_a_value_stands_for_itself_alone() -> None:
    one, other = ["sand"], ["sand"]
    assert Itself(one) == Itself(one)
    assert hash(Itself(one)) == hash(Itself(one))
    assert Itself(one) != Itself(other)


def test_two_books_agree_on_what_was_read_alone(kitchen: Book) -> None:
    checked = Ledger()
    seen = watched(kitchen, checked)
    with checked.reading("butter alone"):
        assert seen.cards["butter"]
    with checked.reading("the longest name"):
        longest(seen)
    egg = kitchen.cards["egg"]
    for changed, agree in (
        ({"oat": egg}, (True, True)),
        ({"butter": egg.model_copy(update={"also": ("spread",)})}, (False, True)),
        ({"a" * 99: egg}, (True, False)),
    ):
        other = Ledger()
        watched(replace(kitchen, cards={**kitchen.cards, **changed}), other)
        assert (other.agrees(checked, "butter alone"), other.agrees(checked, "the longest name")) == agree, changed
