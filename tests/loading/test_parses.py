"""A file is read again when its bytes change, and not before."""

from __future__ import annotations

from pathlib import Path

from tests.loading.conftest import Write

from tinbook.loading import Parses, load_book


def test_what_did_not_change_is_the_same_thing(write: Write) -> None:
    folder, parses = write(), Parses()
    first, again = load_book(folder, parses=parses), load_book(folder, parses=parses)
    assert first.book.mixtures["plain-sponge"] is again.book.mixtures["plain-sponge"]
    assert first.book == again.book and first.problems == again.problems == ()


def test_another_word_in_the_house_reads_all_of_it_anew(write: Write) -> None:
    """Half a cup is another amount where the house has another cup, though no recipe changed."""
    mix = {"mixtures/plain-sponge.yaml": "name: Plain\nkind: buttercream\nmakes: 1 kg\nmix: [1 cup butter]\n"}
    folder, parses = write({**mix, "house/house.yaml": "book: 1\nname: A\ncup: US cup\n"}), Parses()
    us = load_book(folder, parses=parses).book
    Path(folder, "house/house.yaml").write_text("book: 1\nname: A\ncup: metric cup\n", "utf-8")
    metric = load_book(folder, parses=parses).book
    assert us.mixtures != metric.mixtures
    assert metric == load_book(folder).book


def test_a_book_says_when_it_differs(write: Write) -> None:
    folder, parses = write(), Parses()
    assert parses.differs(folder)
    load_book(folder, parses=parses)
    assert not parses.differs(folder)
    Path(folder, "mixtures/plain-sponge.yaml").touch()
    assert not parses.differs(folder), "by content, not by time"
    Path(folder, "mixtures/plain-sponge.yaml").rename(folder / "mixtures/plainer-sponge.yaml")
    assert parses.differs(folder)
