"""Rise and loss: of the kind, as the house wrote, as its bakes told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Baked, Book, Finish
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.base.rising import LearnedFrom, rise_said, risen
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.layers import stack_table

BAKED = {
    "day": "2026-05-02",
    "tin": "round 20 cm x 7.5 cm",
    "oven": "160 °C",
    "done after": "60 min",
    "batter": "1068.1 g",
    "baked": "48 mm",
    "out": "1030 g",
}


def test_bakes_move_rise_and_loss_the_more_the_more_there_are(facts: Facts) -> None:
    kind = facts.kinds["creamed"]
    # 48 mm baked of 40 mm of batter, 1000 g out of 1068.1 g
    several = [risen(kind, None, [1.2] * count, [68.1 / 1068.1] * count, facts) for count in (0, 1, 5, 200)]
    rise, loss = [made.rise for made in several], [made.loss for made in several]
    assert rise[0] == kind.rise.typical and loss[0] == kind.loss.typical
    assert rise == sorted(rise, reverse=True) and loss == sorted(loss, reverse=True)
    assert rise[-1] == pytest.approx(1.2, abs=0.01)
    assert loss[-1] == pytest.approx(68.1 / 1068.1, abs=0.002)
    assert several[2].learned == LearnedFrom(5, 5)


def test_rise_and_loss_are_learned_apart(facts: Facts) -> None:
    kind = facts.kinds["creamed"]
    made = risen(kind, None, [1.2, 1.2], [], facts)
    assert made.rise < kind.rise.typical and made.loss == kind.loss.typical
    assert made.learned == (2, 0)


def test_what_the_house_wrote_is_where_learning_starts(facts: Facts) -> None:
    said, usual = (risen(facts.kinds["creamed"], rise, [1.5], [], facts).rise for rise in (1.3, None))
    assert 1.3 < said < 1.5 == pytest.approx(usual)


def test_of_a_kind_that_is_not_baked_nothing_is_learned(facts: Facts) -> None:
    assert risen(facts.kinds["ganache"], None, [1.2], [0.1], facts) == (1.0, 0.0, LearnedFrom())


def test_layers_follow_the_log(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    usual = batch()
    book = replace(kitchen, mixtures={usual.slug: usual.mixture})
    flat = Baked.model_validate({**BAKED, "of": usual.slug})
    logged = replace(book, bakes=(flat,) * 8)
    made = weigh(usual.slug, usual.mixture, logged, facts)
    assert made.rise < usual.rise and made.loss < usual.loss
    low, high = (
        stack_table(tin_table(each, where, facts), where, facts) for each, where in ((made, logged), (usual, book))
    )
    assert low.rows[3].stack.baked_mm < high.rows[3].stack.baked_mm
    assert "from 8 of your bakes" in inputs_of(low.worked)[0]
    assert any("weight lost in the oven" in line and "8 of your bakes" in line for line in inputs_of(low.worked))
    # less steam is more cake, level for level
    mass = low.rows[3].stack.weight_g / low.rows[3].stack.tins / low.rows[3].stack.batter_mm
    assert mass > high.rows[3].stack.weight_g / high.rows[3].stack.tins / high.rows[3].stack.batter_mm


def found(rise: dict[str, str]) -> Finish:
    return Finish.model_validate({"rise": rise})


@pytest.mark.parametrize(("own", "rise"), [(None, 1.35), (found({"creamed": "1.42"}), 1.42)])
def test_rise_as_it_was_found(own: Finish | None, rise: float) -> None:
    house = found({"creamed": "1.35"})
    assert rise_said("creamed", house, own) == rise
    assert rise_said("madeira", house, own) is None
