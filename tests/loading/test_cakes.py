"""Cakes in a book: after all they lean on, those from another after it; what is private, what is broken."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tests.loading.conftest import BASE, OF_CAKES

from tinbook.loading import load_book

Write = Callable[..., Path]
TIDE = "name: Tide cake\ntiers: [25 cm, 20 cm]\nmixture: plain-sponge\ncoat: plain-icing\ncolour: lamp red\n"
EBB = "name: Ebb cake\nfrom: tide-cake\ntiers: 20 cm\n"
SAIL = "decorations:\n  - {technique: set-a-sail, on: top}\n"


def files(**cakes: str) -> dict[str, str]:
    return {**OF_CAKES, **{f"cakes/{name.replace('_', '-')}.yaml": text for name, text in cakes.items()}}


def test_a_cake_and_one_that_starts_from_it(write: Write) -> None:
    loaded = load_book(write(files(ebb_cake=EBB, tide_cake=TIDE, slack_cake="name: Slack cake\nfrom: ebb-cake\n")))
    assert not loaded.problems
    assert list(loaded.book.cakes) == ["ebb-cake", "slack-cake", "tide-cake"]
    assert loaded.book.cake_bases == {"ebb-cake": "tide-cake", "slack-cake": "ebb-cake"}
    assert [len(cake.tiers) for cake in loaded.book.cakes.values()] == [1, 1, 2]


def test_a_broken_base_is_told_once_and_stops_what_starts_from_it(write: Write) -> None:
    loaded = load_book(write(files(tide_cake=TIDE + "tides: two\n", ebb_cake=EBB)))
    assert [problem.place.file for problem in loaded.problems] == ["recipes/cakes/tide-cake.yaml"]
    assert set(loaded.broken) == {"cakes/tide-cake", "cakes/ebb-cake"} and not loaded.book.cakes
    assert [problem.hint for problem in loaded.broken["cakes/ebb-cake"]] == ["fix cakes/tide-cake.yaml first"]


def test_a_slip_of_what_is_taken_over_is_told_at_the_base(write: Write) -> None:
    """The tiers here are too wide for the board there."""
    loaded = load_book(write(files(tide_cake=TIDE + "board: 30 cm\n", ebb_cake=EBB.replace("20 cm", "[20 cm, 25 cm]"))))
    assert [(each.place.file, each.place.line) for each in loaded.problems] == [("recipes/cakes/ebb-cake.yaml", 3)]


def test_a_broken_mixture_takes_its_cakes_with_it_and_is_told_once(write: Write) -> None:
    broken = BASE["mixtures/plain-sponge.yaml"].replace("kind: creamed", "kind: craemed")
    loaded = load_book(write({**files(tide_cake=TIDE), "mixtures/plain-sponge.yaml": broken}))
    assert {problem.place.file for problem in loaded.problems} == {"recipes/mixtures/plain-sponge.yaml"}
    assert [problem.hint for problem in loaded.broken["cakes/tide-cake"]] == ["fix mixtures/plain-sponge.yaml first"]


def test_a_broken_cake_leaves_every_other_file(write: Write) -> None:
    loaded = load_book(write(files(tide_cake="name: [", ebb_cake=TIDE)))
    assert list(loaded.book.cakes) == ["ebb-cake"] and "plain-sponge" in loaded.book.mixtures
    assert set(loaded.broken) == {"cakes/tide-cake"}


def test_a_private_cake_and_private_keys_stay_in_the_kitchen(write: Write) -> None:
    folder = write(files(tide_cake=TIDE + "notes: [cormorant]\nprivate: [notes]\n", ebb_cake=TIDE + "private: yes\n"))
    assert set(load_book(folder).book.cakes) == {"tide-cake", "ebb-cake"}
    site = load_book(folder, kitchen=False).book
    assert set(site.cakes) == {"tide-cake"} and "cormorant" not in repr(site)


def test_a_cake_of_a_private_mixture_is_not_shown(write: Write) -> None:
    """Its amounts would give the mixture away."""
    sealed = BASE["mixtures/plain-sponge.yaml"] + "private: yes\n"
    folder = write({**files(tide_cake=TIDE, ebb_cake=EBB), "mixtures/plain-sponge.yaml": sealed})
    assert not load_book(folder).problems and len(load_book(folder).book.cakes) == 2
    site = load_book(folder, kitchen=False)
    assert not site.book.cakes and not site.book.cake_bases and not site.problems


def test_nor_is_one_filled_or_decorated_with_what_is_private(write: Write) -> None:
    """What is in it could not all be told."""
    for name in ("mixtures/plain-icing.yaml", "techniques/set-a-sail.yaml"):
        folder = write({**files(tide_cake=TIDE + SAIL), name: OF_CAKES[name] + "private: yes\n"})
        assert "tide-cake" in load_book(folder).book.cakes, name
        assert not load_book(folder, kitchen=False).book.cakes, name


def test_a_private_technique_that_only_goes_with_it_is_not_named(write: Write) -> None:
    sealed = OF_CAKES["techniques/set-a-sail.yaml"] + "private: yes\n"
    cake = TIDE + "techniques: [line-a-tin, set-a-sail]\n"
    site = load_book(write({**files(tide_cake=cake), "techniques/set-a-sail.yaml": sealed}), kitchen=False).book
    assert site.cakes["tide-cake"].techniques == ("line-a-tin",)


def test_a_private_colour_goes_by_a_number(write: Write) -> None:
    sealed = OF_CAKES["house/colours.yaml"].replace('"#B3261E"', '"#B3261E", private: yes')
    more = "board: {colour: lamp red}\n"
    site = load_book(write({**files(tide_cake=TIDE + more), "house/colours.yaml": sealed}), kitchen=False).book
    cake = site.cakes["tide-cake"]
    assert (cake.colour, cake.board.colour, list(site.colours)) == ("colour 1", "colour 1", ["colour 1"])


def test_a_cake_that_only_the_kitchens_figures_hold_is_not_shown(write: Write) -> None:
    finish = "portions: {plank: 25 mm x 90 mm}\nprivate: [portions]\n"
    folder = write({**files(tide_cake=TIDE + "portion: plank\n"), "house/finish.yaml": finish})
    assert "tide-cake" in load_book(folder).book.cakes
    assert not load_book(folder, kitchen=False).book.cakes
