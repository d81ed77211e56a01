"""Paste over one cake: what stays on, what is rolled, what comes back."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from tinbook.facts import Facts
from tinbook.models import Finish
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.pasting import paste_row, rolled_for
from tinbook.tins import SHAPES, Tin, read_tin


@pytest.fixture
def settled(facts: Facts) -> Finishing:
    return finishing(Finish(), facts)


@pytest.fixture
def paste(batch: Callable[..., Batch]) -> Batch:
    return batch(kind="sugarpaste", tins=None, makes="1 kg", bake=None, mix=["1 kg sugarpaste"])


def test_a_round_by_hand(settled: Finishing, facts: Facts, paste: Batch) -> None:
    row = paste_row(paste, Cake(Tin(shape="round", sizes_mm=(200.0,)), 100.0, 4), True, settled, facts)
    surface = math.pi / 4 * 210**2 + math.pi * 210 * 105
    assert row.net_g == pytest.approx(surface * settled["paste"] / 1000 * 1.4, rel=1e-4)
    assert row.disc
    assert row.rolled_mm[0] == pytest.approx(210 + 2 * 105 + 50)
    assert row.made_g == pytest.approx(math.pi / 4 * row.rolled_mm[0] ** 2 * settled["paste_rolled"] / 1000 * 1.4)
    assert row.back_g == pytest.approx(row.made_g - row.net_g)


def test_squares_and_long_cakes_get_a_rectangle(settled: Finishing) -> None:
    disc, size = rolled_for(Cake(Tin(shape="rectangle", sizes_mm=(300.0, 200.0)), 80.0, 2), 6.0, 50.0)
    assert not disc
    assert sorted(size) == [200 + 12 + 172 + 50, 300 + 12 + 172 + 50]
    assert not rolled_for(Cake(Tin(shape="square", sizes_mm=(200.0,)), 80.0, 2), 6.0, 50.0)[0]


@pytest.mark.parametrize("key", [key for key, shape in SHAPES.items() if not shape.in_trays])
def test_every_shape_can_be_covered(key: str, settled: Finishing, facts: Facts, paste: Batch) -> None:
    shape = SHAPES[key]
    tin = (
        Tin(shape=key, sizes_mm=shape.standard[0][0], depth_mm=shape.standard[0][1])
        if shape.standard
        else read_tin(shape.example)[1]
    )
    row = paste_row(paste, Cake(tin, 100.0, 4), True, settled, facts)
    assert 0 < row.net_low_g <= row.net_g <= row.net_high_g
    assert row.made_g >= row.net_g


def test_a_half_ball_is_measured_over_its_top(settled: Finishing) -> None:
    disc, size = rolled_for(Cake(Tin(shape="dome", sizes_mm=(160.0,)), 80.0, 1), 0.0, 0.0)
    assert disc
    assert size[0] == pytest.approx(math.pi * 80)
