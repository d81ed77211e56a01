"""What a book knows of baking times: its log moves them, and so does that of mixtures of its kind."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.plans.baking.conftest import bake, likely, tin

from tinbook.facts import Facts
from tinbook.models import Book, House
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.bakes import Bakes, heat_of, prior
from tinbook.plans.baking.times import Baking
from tinbook.plans.base.weighing import Batch


def test_the_log_narrows_and_moves(known: Callable[..., Baking]) -> None:
    spans, off = [], []
    for count in (0, 1, 3, 10):
        (time,) = known(*[bake("round 20 cm", 80)] * count).times([(tin("round 20 cm"), 40)])
        spans.append(time.high_min / time.low_min)
        off.append(abs(time.likely_min - 80))
    assert spans == sorted(spans, reverse=True) and spans[-1] < 1.45
    assert off == sorted(off, reverse=True) and off[-1] < 2


def test_a_cold_start_in_the_log_is_allowed_for(known: Callable[..., Baking]) -> None:
    room, fridge = (known(*[bake("round 20 cm", 80, **keys)] * 20, written=None) for keys in ({}, {"start": "4 °C"}))
    assert likely(fridge, "round 20 cm") < likely(room, "round 20 cm")
    assert likely(fridge, "round 20 cm", oven_c=160, start_c=4) == pytest.approx(80, rel=0.02)


def test_an_oven_off_its_dial(known: Callable[..., Baking], house: Callable[..., House]) -> None:
    """The dial said 160 °C, the oven was at 175: that time belongs to 175 °C."""
    hot = known(
        *[bake("round 20 cm", 70)] * 20, written=None, house=house(oven={"dial": "160 °C", "thermometer": "175 °C"})
    )
    assert likely(hot, "round 20 cm", oven_c=175) == pytest.approx(70, rel=0.02)
    assert likely(hot, "round 20 cm", oven_c=160) > 74


def test_kin_share(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    own = batch(bake=None)
    other = replace(own, slug="slow-sponge")
    slow = tuple(bake("round 20 cm", 100, of="slow-sponge") for _ in range(5))
    book = replace(kitchen, mixtures={own.slug: own.mixture, "slow-sponge": other.mixture})
    alone, shared = (Bakes(replace(book, bakes=log), facts).of(own) for log in ((), slow))
    assert alone is not None and shared is not None
    assert likely(shared, "round 20 cm") > likely(alone, "round 20 cm") * 1.1
    assert shared.kin == 5 and "5 bakes of other recipes of its kind (creamed sponge)" in spell(
        shared.told(tin("round 20 cm"), 40)
    )


def test_what_is_not_baked_has_no_time(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    icing = batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=["300 g butter", "600 g caster sugar"])
    assert Bakes(kitchen, facts).of(icing) is None
    assert prior(icing.kind, facts) is None


def test_the_heat_of_the_written_bake_is_as_written(known: Callable[..., Baking], kitchen: Book, facts: Facts) -> None:
    made = known(written={"oven": "160 °C", "time": "55-65 min"})
    point = made.points[0]
    assert heat_of(point, made.batch, kitchen, facts) == pytest.approx(1.2680, abs=1e-3)
