"""What is made ahead, and how long a cake keeps: by the part that keeps least, and never by one nobody speaks of."""

from __future__ import annotations

from dataclasses import replace

from tests.plans.cakes.conftest import Made, bakes, design, made

from tinbook.loading import Loaded
from tinbook.models.steps import DAY_MIN
from tinbook.plans.making.ahead import ahead_table

__all__ = ["bakes", "design", "made"]
CAKE = {
    "tiers": "20 cm",
    "mixture": "madeira-cake",
    "filling": "american-buttercream",
    "coat": "american-buttercream",
}


def test_it_keeps_as_long_as_its_most_delicate_part(made: Made, demo: Loaded) -> None:
    found = ahead_table(made(CAKE), demo.book)
    spoken = {each.name: max((keep.minutes for keep in each.keeps if keep.place != "in the freezer"), default=None)
              for each in found.parts if each.address.startswith("mixtures/")}  # fmt: skip
    known = {name: minutes for name, minutes in spoken.items() if minutes is not None}
    assert found.keeps is not None and found.keeps.minutes == min(known.values()) == known[found.least]
    assert len(known) > 1 and found.least == min(known, key=lambda name: known[name])


def test_a_freezer_is_no_place_for_a_finished_cake(made: Made, demo: Loaded) -> None:
    found = ahead_table(made(CAKE), demo.book)
    assert found.keeps is not None and found.keeps.place != "in the freezer"


def test_what_nobody_says_is_named(made: Made, demo: Loaded) -> None:
    plain = demo.book.mixtures["madeira-cake"].model_copy(update={"keeps_for": ()})
    book = replace(demo.book, mixtures={**demo.book.mixtures, "madeira-cake": plain})
    assert plain.name in ahead_table(made(CAKE), book).unknown


def test_techniques_by_their_steps(made: Made, demo: Loaded) -> None:
    cake = made({**CAKE, "decorations": [{"technique": "lighthouse-for-the-front"}], "techniques": ["cover-a-board"]})
    parts = {each.address: each for each in ahead_table(cake, demo.book).parts}
    tower = parts["techniques/lighthouse-for-the-front"]
    # fourteen days for its first steps; fixing it to the board is the last of ten, on the day
    assert (tower.ahead_min, tower.steps, tower.on_the_day) == (14 * DAY_MIN, 10, 1)
    assert "techniques/cover-a-board" in parts
    assert parts["mixtures/madeira-cake"].on_the_day is None
