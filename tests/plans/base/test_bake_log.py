"""What the log says of bakes, in plain figures."""

from __future__ import annotations

import pytest

from tinbook.models import Baked
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.bake_log import batter_mm, losses, of_bakes, rises
from tinbook.tins import Tin

ENTRY = {
    "day": "2026-05-02",
    "of": "plain-sponge",
    "tin": "round 20 cm x 7.5 cm",
    "oven": "160 °C",
    "done after": "60 min",
}


ROUND = Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0)


def entry(**keys: str) -> Baked:
    return Baked.model_validate({**ENTRY, **{key.replace("_", " "): value for key, value in keys.items()}})


def test_depth_from_weight_and_as_measured() -> None:
    """π × 100² mm² × 40 mm is 1257 ml."""
    assert batter_mm(entry(batter="1068.1 g"), 0.85, ROUND) == pytest.approx(40.0, abs=0.01)
    assert batter_mm(entry(batter="1 kg", batter_depth="38 mm"), 0.85, ROUND) == 38.0
    assert batter_mm(entry(), 0.85, ROUND) is None


def test_a_measured_tin_is_taken_at_its_measure() -> None:
    """1000 g at 0.8 g/ml are 1250 ml; a tin 75 mm deep that holds 2000 ml is 2000 / 75 ml deep a mm."""
    tin = Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0, measured_ml=2000.0)
    made = entry(batter="1000 g", baked="75 mm")
    assert batter_mm(made, 0.8, tin) == pytest.approx(1250 / (2000 / 75))
    assert rises([(made, tin)], 0.8) == [pytest.approx(75 / (1250 / (2000 / 75)))]


def test_only_entries_that_tell_are_counted() -> None:
    log = [entry(batter_depth="40 mm", baked="60 mm"), entry(batter="1 kg", out="0.9 kg"), entry(batter_depth="40 mm")]
    assert rises([(each, ROUND) for each in log], 0.85) == [1.5]
    assert losses(log) == [pytest.approx(0.1)]


def test_an_entry_that_tells_both() -> None:
    """1068.1 g at 0.85 g/ml stand 40 mm deep in that tin."""
    flat = entry(batter="1068.1 g", baked="48 mm", out="1000 g")
    assert rises([(flat, ROUND)] * 2, 0.85) == [pytest.approx(1.2, abs=1e-4)] * 2
    assert losses([flat]) == [pytest.approx(68.1 / 1068.1)]


def test_how_many_bakes_in_words() -> None:
    assert (spell(of_bakes(1)), spell(of_bakes(5))) == ("1 of your bakes", "5 of your bakes")
