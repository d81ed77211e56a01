"""What the tins on hand allow, against sums by hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import pi
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Mixture, OwnedTin, ShelfLine, read_model
from tinbook.plans.base.scaling import wanted_ml
from tinbook.plans.base.weighing import weigh
from tinbook.plans.mixtures.on_hand import FEW, MOST_BAKES, NO_TIN, TinChoice, by_verdict, choices, hand_table

Make = Callable[..., Mixture]


def shelf(*lines: dict[str, Any]) -> tuple[OwnedTin, ...]:
    found: list[OwnedTin] = []
    for line in lines:
        model, flaws = read_model(ShelfLine, line, "a tin")
        assert model is not None, flaws
        found += model.owned
    return tuple(found)


@pytest.fixture
def ask(kitchen: Book, facts: Facts, mixture: Make) -> Callable[..., tuple[TinChoice, ...]]:
    """The choices for a plain sponge (2 round 15 cm x 10 cm) with these tins on the shelf."""

    def asked(*lines: dict[str, Any], **changes: Any) -> tuple[TinChoice, ...]:
        book = replace(kitchen, tins=shelf(*lines))
        return choices(weigh("plain", mixture(**changes), book, facts), book, facts)

    return asked


def named(made: tuple[TinChoice, ...]) -> list[tuple[str, ...]]:
    return [tuple(f"{count} {tin.name}" for count, tin in each.tins) for each in made]


def test_its_own_tins_come_first(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    made = ask({"tin": "round 20 cm x 10 cm"}, {"tin": "round 15 cm x 10 cm", "have": "2"})
    assert named(made)[0] == ("2 round 15 cm",)
    assert (made[0].written, made[0].near, made[0].factor, made[0].bakes) == (
        True,
        True,
        pytest.approx(1.0, rel=1e-5),
        1,
    )


def test_one_of_two_means_two_bakes(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    (made,) = ask({"tin": "round 15 cm x 10 cm"})
    assert (made.written, made.factor, made.bakes) == (True, pytest.approx(1.0, rel=1e-5), 2)


def test_too_shallow_a_tin_is_not_the_recipes_own(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    assert not any(each.written for each in ask({"tin": "round 15 cm x 4 cm", "have": "2"}))


def test_what_is_known_and_not_owned_is_not_on_hand(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    assert ask({"tin": "round 15 cm x 10 cm", "have": "0"}) == ()


def test_areas_by_hand(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    """Two rounds of 15 cm have pi 15²/2 = 353.4 cm²; the batter stands as deep in straight tins."""
    made = ask(
        {"tin": "square 19 cm x 10 cm"}, {"tin": "heart 25 cm x 10 cm"}, {"tin": "rectangle 10 cm x 20 cm x 10 cm"}
    )
    by_name = dict(zip(named(made), made, strict=True))
    own = pi * 15**2 / 2
    square = by_name["1 square 19 cm",]
    assert square.factor == pytest.approx(19**2 / own) and square.near
    # 25² x 0.61265 cm², see the heart's own file; 8.3 % more, so not nearly.
    heart = by_name["1 heart 25 cm",]
    assert heart.factor == pytest.approx(25**2 * 0.6126517927 / own) and not heart.near
    # Two of 200 cm² are 13 % more, and there is one: two bakes.
    rectangle = by_name["2 rectangle 10 x 20 cm",]
    assert (rectangle.factor, rectangle.bakes) == (pytest.approx(400 / own), 2)
    assert named(made)[0] == ("1 square 19 cm",)


def test_a_set_is_one_choice_with_one_factor(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    made = ask({"tin": "set of round 10, 13 cm x 10 cm"})
    (whole,) = [each for each in made if each.of_set]
    assert (whole.of_set, named((whole,))) == ("set of round 10 cm, 13 cm", [("1 round 10 cm", "1 round 13 cm")])
    assert whole.factor == pytest.approx((10**2 + 13**2) / (2 * 15**2))


def test_cups_are_for_what_is_written_for_cups(ask: Callable[..., tuple[TinChoice, ...]]) -> None:
    assert ask({"tin": "standard cups", "have": "24"}) == ()
    made = ask({"tin": "fairy cups", "have": "24"}, {"tin": "round 20 cm x 10 cm"}, tins="24 standard cups",
               mix=["100 g butter", "100 g caster sugar", "2 eggs", "100 g self-raising flour"])  # fmt: skip
    assert {tin.shape for each in made for _, tin in each.tins} <= {"cups"}


def test_the_whole_book(demo: Loaded) -> None:
    table = hand_table(demo.book, demo.facts)
    assert {row.batch.slug for row in table.rows} == {slug for slug, each in demo.book.mixtures.items() if each.tins}
    assert {batch.slug for batch in table.tinless} == {
        slug for slug, each in demo.book.mixtures.items() if not each.tins
    }
    assert sum(by_verdict(table).values()) == len(table.rows)
    assert table.owned == 15
    mine = {(own.tin.shape, own.tin.sizes_mm) for own in demo.book.tins if own.have}
    for row in table.rows:
        assert len(row.choices) <= FEW
        for each in row.choices:
            batter_ml = sum(wanted_ml(row.batch, tin, count) for count, tin in each.tins)
            assert each.factor == pytest.approx(batter_ml / row.batch.batter_ml)
            assert each.near == (abs(each.factor - 1) <= 0.08)
            assert 1 <= each.bakes <= MOST_BAKES
            assert {(tin.shape, tin.sizes_mm) for _, tin in each.tins} <= mine


def test_a_house_without_tins(demo: Loaded) -> None:
    table = hand_table(replace(demo.book, tins=()), demo.facts)
    assert {row.choices for row in table.rows} == {()}
    assert by_verdict(table)[NO_TIN] == len(table.rows)
