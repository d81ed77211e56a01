"""The bake log of a book on disk; what is wrong in it is in tests/source/bad/bakes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tinbook.loading import load_book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.weighing import weigh

LINE = "  - {day: 2026-05-02, of: plain-sponge, tin: round 20 cm x 7.5 cm, batter: 600 g, oven: 160 °C, done after: 39 min}\n"
Write = Callable[..., Path]


def test_sound_entries_are_learned_from(write: Write) -> None:
    loaded = load_book(write({"house/bakes.yaml": "bakes:\n" + LINE * 3}))
    assert not loaded.problems
    assert len(loaded.book.bakes) == 3 and set(loaded.book.bakes_of) == {"plain-sponge"}
    batch = weigh("plain-sponge", loaded.book.mixtures["plain-sponge"], loaded.book, loaded.facts)
    made = Bakes(loaded.book, loaded.facts).of(batch)
    assert made is not None and made.logged == 3 and len(made.points) == 4


def test_a_wrong_entry_is_told_and_the_others_count(write: Write) -> None:
    wrong = LINE.replace("39 min", "39 h")
    loaded = load_book(write({"house/bakes.yaml": "bakes:\n" + LINE + wrong + LINE}))
    assert [(problem.place.line, problem.code) for problem in loaded.problems] == [(3, "value")]
    assert len(loaded.book.bakes) == 2


def test_a_broken_mixture_is_told_once(write: Write) -> None:
    loaded = load_book(
        write({"house/bakes.yaml": "bakes:\n" + LINE, "mixtures/plain-sponge.yaml": "name: x\nkind: creamd\n"})
    )
    assert {problem.place.file for problem in loaded.problems} == {"recipes/mixtures/plain-sponge.yaml"}
    assert loaded.book.bakes == ()


def test_what_is_private_is_not_shown(write: Write) -> None:
    whole = {"house/bakes.yaml": "private: yes\nbakes:\n" + LINE}
    assert len(load_book(write(whole)).book.bakes) == 1
    assert load_book(write(whole), kitchen=False).book.bakes == ()


def test_bakes_of_a_private_mixture_are_not_shown(write: Write) -> None:
    folder = write({"house/bakes.yaml": "bakes:\n" + LINE})
    assert len(load_book(folder, kitchen=False).book.bakes) == 1
    path = folder / "mixtures/plain-sponge.yaml"
    path.write_text(path.read_text("utf-8") + "private: yes\n", "utf-8")
    assert load_book(folder, kitchen=False).book.bakes == ()


def test_a_log_goes_on_by_year_and_is_held_back_whole(write: Callable[..., Path]) -> None:
    log = "bakes:\n  - {{day: {}-05-02, of: plain-sponge, tin: round 20 cm, batter: 700 g, oven: 160 °C, done after: 37 min}}\n"
    files = {"house/bakes.yaml": log.format(2025), "house/bakes-2027.yaml": log.format(2027)}
    folder = write({**files, "house/bakes-2026.yaml": log.format(2026)})
    for kitchen in (True, False):
        loaded = load_book(folder, kitchen)
        assert not loaded.problems
        assert [bake.day.year for bake in loaded.book.bakes] == [2025, 2026, 2027]
    folder = write({**files, "house/bakes-2026.yaml": log.format(2026) + "private: yes\n"})
    assert load_book(folder, kitchen=False).book.bakes == ()
    assert len(load_book(folder).book.bakes) == 3


def test_a_year_that_is_broken_leaves_the_others(write: Callable[..., Path]) -> None:
    loaded = load_book(
        write({"house/bakes-2026.yaml": "bakes:\n  - {day: soon}\n", "house/tins-2026.yaml": "tins: []\n"})
    )
    assert {problem.place.file for problem in loaded.problems} == {
        "recipes/house/bakes-2026.yaml", "recipes/house/tins-2026.yaml"
    }  # fmt: skip
