"""Rise and loss learned from the log."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Baked, Book
from tinbook.plans.base.bake_log import batter_mm, learned, losses, of_bakes, rises
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.plans.finish.layers import stack_table

ENTRY = {
    "day": "2026-05-02",
    "of": "plain-sponge",
    "tin": "round 20 cm x 7.5 cm",
    "oven": "160 °C",
    "done after": "60 min",
}


def entry(**keys: str) -> Baked:
    return Baked.model_validate({**ENTRY, **{key.replace("_", " "): value for key, value in keys.items()}})


def test_depth_from_weight_and_as_measured() -> None:
    """π × 100² mm² × 40 mm is 1257 ml."""
    assert batter_mm(entry(batter="1068.1 g"), 0.85) == pytest.approx(40.0, abs=0.01)
    assert batter_mm(entry(batter="1 kg", batter_depth="38 mm"), 0.85) == 38.0
    assert batter_mm(entry(), 0.85) is None


def test_only_entries_that_tell_are_counted() -> None:
    log = [entry(batter_depth="40 mm", baked="60 mm"), entry(batter="1 kg", out="0.9 kg"), entry(batter_depth="40 mm")]
    assert rises(log, 0.85) == [1.5]
    assert losses(log) == [pytest.approx(0.1)]


def test_the_log_moves_rise_and_loss_the_more_the_longer_it_is(facts: Facts) -> None:
    kind = facts.kinds["creamed"]
    flat = entry(batter="1068.1 g", baked="48 mm", out="1000 g")
    found = [learned([flat] * count, kind, 0.85, None, facts) for count in (0, 1, 5, 200)]
    rise, loss = [each[0] for each in found], [each[1] for each in found]
    assert rise[0] == kind.rise.typical and loss[0] == kind.loss.typical
    assert rise == sorted(rise, reverse=True) and loss == sorted(loss, reverse=True)
    assert rise[-1] == pytest.approx(1.2, abs=0.01)
    assert loss[-1] == pytest.approx(68.1 / 1068.1, abs=0.002)
    assert found[2][2] == (5, 5)
    assert (of_bakes(1), of_bakes(5)) == ("1 of your bakes", "5 of your bakes")


def test_what_the_house_wrote_is_where_learning_starts(facts: Facts) -> None:
    said, usual = (learned([entry(batter_depth="40 mm", baked="60 mm")], facts.kinds["creamed"], 0.85, rise, facts)[0]
                   for rise in (1.3, None))  # fmt: skip
    assert 1.3 < said < 1.5 == pytest.approx(usual)


def test_layers_follow_the_log(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    usual = batch()
    book = replace(kitchen, mixtures={usual.slug: usual.mixture})
    flat = Baked.model_validate({**ENTRY, "of": usual.slug, "batter": "1068.1 g", "baked": "48 mm", "out": "1030 g"})
    logged = replace(book, bakes=(flat,) * 8)
    made = weigh(usual.slug, usual.mixture, logged, facts)
    assert made.rise < usual.rise and made.loss < usual.loss
    low, high = (
        stack_table(tin_table(each, where, facts), where, facts) for each, where in ((made, logged), (usual, book))
    )
    assert low.rows[3].stack.baked_mm < high.rows[3].stack.baked_mm
    assert "from 8 of your bakes" in low.worked.inputs[0]
    assert any("weight lost in the oven" in each and "8 of your bakes" in each for each in low.worked.inputs)
    # less steam is more cake, level for level
    mass = low.rows[3].stack.weight_g / low.rows[3].stack.tins / low.rows[3].stack.batter_mm
    assert mass > high.rows[3].stack.weight_g / high.rows[3].stack.tins / high.rows[3].stack.batter_mm
