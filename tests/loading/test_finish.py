"""finish.yaml and used.yaml of a book on disk: read, used, left out where they are broken or private."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tinbook.loading import load_book
from tinbook.models import Finish

Write = Callable[..., Path]
ICING = "name: Plain icing\nkind: buttercream\nmakes: 600 g\nmix: [200 g butter, 400 g caster sugar]\n"
ENTRY = "used:\n  - {day: 2026-05-02, of: plain-icing, cake: round 20 cm, height: 10 cm, used: 1 kg}\n"


def test_a_book_without_them_goes_by_the_trade(write: Write) -> None:
    book = load_book(write()).book
    assert (book.finish, book.used) == (Finish(), ())


def test_both_are_read(write: Write) -> None:
    files = {"house/finish.yaml": "layers: 3\n", "house/used.yaml": ENTRY, "mixtures/plain-icing.yaml": ICING}
    loaded = load_book(write(files))
    assert not loaded.problems
    assert loaded.book.finish.layers == 3
    assert loaded.book.used[0].used == 1000.0


def test_the_house_has_its_own_rise(write: Write) -> None:
    loaded = load_book(write({"house/finish.yaml": "rise: {creamed: 1.33}\n"}))
    assert loaded.book.finish.rise == {"creamed": 1.33}


@pytest.mark.parametrize("slip", ["layers: 0\n", "layers: [\n", "heights: 5 cm\nlayers: 9\nfilling: 9 mm\n"])
def test_a_broken_file_leaves_the_book_standing(slip: str, write: Write) -> None:
    loaded = load_book(write({"house/finish.yaml": slip}))
    assert len(loaded.errors) == 1
    assert loaded.book.finish == Finish()
    assert "plain-sponge" in loaded.book.mixtures


def test_one_broken_entry_leaves_the_others(write: Write) -> None:
    more = "  - {day: 2026-05-03, of: plain-icing, cake: round 20 cm, height: 10 cm, used: 40 kg}\n"
    loaded = load_book(write({"house/used.yaml": ENTRY + more, "mixtures/plain-icing.yaml": ICING}))
    assert len(loaded.errors) == 1
    assert len(loaded.book.used) == 1


def test_an_entry_of_a_broken_mixture_is_not_told_again(write: Write) -> None:
    broken = ICING.replace("600 g", "none")
    loaded = load_book(write({"house/used.yaml": ENTRY, "mixtures/plain-icing.yaml": broken}))
    assert {problem.place.file for problem in loaded.errors} == {"recipes/mixtures/plain-icing.yaml"}
    assert loaded.book.used == ()


def test_what_is_private_is_not_shown(write: Write) -> None:
    files = {
        "house/finish.yaml": "private: yes\nlayers: 3\n",
        "house/used.yaml": f"private: yes\n{ENTRY}",
        "mixtures/plain-icing.yaml": ICING,
    }
    folder = write(files)
    assert load_book(folder, kitchen=False).book.finish == Finish()
    assert load_book(folder, kitchen=False).book.used == ()
    assert load_book(folder).book.finish.layers == 3
    part = write({**files, "house/finish.yaml": "private: [layers]\nlayers: 3\nfilling: 6 mm\n"})
    assert load_book(part, kitchen=False).book.finish == Finish.model_validate({"filling": "6 mm"})
