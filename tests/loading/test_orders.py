"""Orders in a book: read, dropped if they cannot be, and never in what is public."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

from tinbook.loading import load_book

Write = Callable[..., Path]

CAKE = "name: Tide cake\ntiers: 20 cm\nmixture: plain-sponge\nfilling: none\ncoat: none\ncover: none\nboard: none\n"
SOUND = "handle: quay\ncake: tide-cake\nhand over: 2026-12-05 11:00\n"


def book(write: Write, **orders: str) -> Path:
    return write({"cakes/tide-cake.yaml": CAKE, **{f"orders/{name}.yaml": text for name, text in orders.items()}})


def test_a_sound_one_is_the_kitchens_alone(write: Write) -> None:
    folder = book(write, quay=SOUND)
    kitchen, public = load_book(folder), load_book(folder, kitchen=False)
    assert kitchen.problems == () and set(kitchen.book.others["order"]) == {"quay"}
    assert public.book.others["order"] == {} and "quay" not in str(public.book)


def test_one_with_a_slip_is_dropped_and_told_and_breaks_no_page(write: Write) -> None:
    for kitchen in (True, False):
        loaded = load_book(book(write, quay=SOUND, bad=SOUND.replace("tide", "tied").replace("quay", "pier")), kitchen)
        (problem,) = loaded.errors
        assert problem.place.file.endswith("orders/bad.yaml") and problem.place.line == 2
        assert 'did you mean "tide-cake"?' in problem.hint
        assert loaded.broken == {}, "an order has no page to be broken"


def test_notes_do_not_drop_it(write: Write) -> None:
    loaded = load_book(book(write, quay=SOUND.replace("quay", "Mrs Tern")), today=date(2026, 12, 6))
    assert [problem.severity for problem in loaded.problems] == ["note", "note"]
    assert set(loaded.book.others["order"]) == {"quay"}


def test_a_cake_with_a_slip_is_not_told_twice(write: Write) -> None:
    folder = book(write, quay=SOUND)
    (folder / "cakes" / "tide-cake.yaml").write_text(CAKE.replace("plain-sponge", "plane-sponge"))
    loaded = load_book(folder)
    assert {Path(problem.place.file).name for problem in loaded.errors} == {"tide-cake.yaml"}
    assert loaded.book.others["order"] == {}
