"""Times in the oven: the laws as a baker meets them, and never less than the middle needs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.oracles.conduction import minutes_to

from tinbook.engine import conduction
from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Baked, Book, House
from tinbook.pages.spelling.sayings import inputs_of, spell
from tinbook.plans.baking.times import Bakes, Baking, baking_worked, heat_of, prior, width_mm
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.tins import Tin, read_tin

ENTRY = {"day": "2026-05-02", "of": "plain-sponge", "oven": "160 °C", "batter depth": "40 mm"}


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def bake(where: str, minutes: float, **keys: str) -> Baked:
    more = {key.replace("_", " "): value for key, value in keys.items()}
    return Baked.model_validate({**ENTRY, "tin": where, "done after": f"{minutes:g} min", **more})


@pytest.fixture
def known(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> Callable[..., Baking]:
    """What is known of the plain sponge, with such a log, and such a written bake."""

    def make(*log: Baked, written: object = "as it is", house: House | None = None, **keys: object) -> Baking:
        own = batch(**({} if written == "as it is" else {"bake": written}), **keys)
        book = replace(kitchen, mixtures={own.slug: own.mixture}, bakes=log, house=house or kitchen.house)
        made = Bakes(book, facts).of(own)
        assert made is not None
        return made

    return make


def likely(made: Baking, where: str, depth: float = 40, **asked: float) -> float:
    return made.times([(tin(where), depth)], **asked)[0].likely_min


def test_width_for_the_heat() -> None:
    """The diameter, the side; of a ring twice the cake between tube and wall; of a long tin less than its length."""
    assert width_mm(tin("round 20 cm")) == pytest.approx(200)
    assert width_mm(tin("square 20 cm")) == pytest.approx(200)
    assert width_mm(tin("ring 25 cm x 10 cm, tube 7.5 cm")) == pytest.approx(250 - 75)
    assert 230 < width_mm(tin("rectangle 23 x 33 cm x 5 cm")) < 330


def test_no_log_and_no_written_bake_still_answer_widely(known: Callable[..., Baking], facts: Facts) -> None:
    bare = known(written=None)
    (time,) = bare.times([(tin("round 20 cm"), 40)])
    assert 40 < time.likely_min < 80
    assert time.high_min / time.low_min > 2
    assert spell(bare.told(tin("round 20 cm"), 40)) == "nothing baked of this recipe yet"
    assert "nothing baked yet: the span is wide" in inputs_of(baking_worked(bare, facts))


def test_the_recipes_own_time_is_its_first_entry(known: Callable[..., Baking]) -> None:
    made = known(written={"oven": "160 °C", "time": "55-65 min"})
    assert made.logged == 0 and len(made.points) == 1
    own = made.batch.tins[0][1]
    (time,) = made.times([(own, made.batch.depth_mm)])
    assert time.likely_min == pytest.approx((55 * 65) ** 0.5, rel=0.06)
    assert spell(made.told(own, made.batch.depth_mm)) == "as in the tin it is written for"


def test_the_log_narrows_and_moves(known: Callable[..., Baking]) -> None:
    spans, off = [], []
    for count in (0, 1, 3, 10):
        (time,) = known(*[bake("round 20 cm", 80)] * count).times([(tin("round 20 cm"), 40)])
        spans.append(time.high_min / time.low_min)
        off.append(abs(time.likely_min - 80))
    assert spans == sorted(spans, reverse=True) and spans[-1] < 1.35
    assert off == sorted(off, reverse=True) and off[-1] < 2


def test_further_away_is_wider_and_said(known: Callable[..., Baking]) -> None:
    made = known(*[bake("round 20 cm", 70)] * 2, written=None)
    near, wide, deep = made.times([(tin("round 20 cm"), 40), (tin("round 40 cm"), 40), (tin("round 20 cm"), 70)])
    assert near.high_min / near.low_min < deep.high_min / deep.low_min
    assert near.high_min / near.low_min < wide.high_min / wide.low_min
    assert spell(made.told(tin("round 20 cm"), 40)) == "2 of your bakes in such a tin"
    told = spell(made.told(tin("round 40 cm"), 60))
    assert told == "2 times as wide and 1.5 times as deep as the nearest bake, round 20 cm"


def test_colder_hotter_halves(known: Callable[..., Baking]) -> None:
    made = known(bake("round 20 cm", 70))
    plain = likely(made, "round 20 cm")
    assert likely(made, "round 20 cm", start_c=6) > plain
    assert likely(made, "round 20 cm", oven_c=180) < plain
    assert likely(made, "round 20 cm", depth=20) < plain
    with pytest.raises(ValueError, match="no centre reaches"):
        likely(made, "round 20 cm", oven_c=95)


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
    assert shared.kin == 5 and "5 of other creamed sponge recipes" in spell(shared.told(tin("round 20 cm"), 40))


def test_wide_or_deep_may_go_cooler(known: Callable[..., Baking], facts: Facts) -> None:
    made = known()
    assert made.cooler_c(tin("round 20 cm"), 40, 180, facts) is None
    assert made.cooler_c(tin("round 30 cm"), 40, 180, facts) == pytest.approx(180 - 25 / 1.8, abs=0.1)
    assert made.cooler_c(tin("round 20 cm"), 65, 180, facts) is not None
    assert made.cooler_c(tin("round 30 cm"), 40, 115, facts) is None


def test_what_is_not_baked_has_no_time(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    icing = batch(kind="buttercream", tins=None, makes="900 g", bake=None, mix=["300 g butter", "600 g caster sugar"])
    assert Bakes(kitchen, facts).of(icing) is None
    assert prior(icing.kind, facts) is None


def test_a_timer_can_be_set_by_it(known: Callable[..., Baking]) -> None:
    for time in known().times([(tin(f"round {size} cm"), 40) for size in (10, 15, 20, 25, 30, 40)]):
        assert time.check_shown_min <= time.check_min <= time.low_min <= time.likely_min <= time.high_min
        assert time.low_shown_min <= time.low_min and time.high_min <= time.high_shown_min
        assert time.check_min == pytest.approx(min(0.8 * time.likely_min, time.low_min))


def test_no_time_beats_conduction(demo: Loaded) -> None:
    """A solver of heat in a cylinder as wide as the tin, its batter as deep: nothing in the book is done before."""
    book, facts = demo.book, demo.facts
    checked, raised = 0, 0
    for batch in weigh_all(book, facts).values():
        made = Bakes(book, facts).of(batch)
        if made is None or not batch.tins:
            continue
        rows = [
            row for row in tin_table(batch, book, facts).rows if row.tin.shape in ("round", "standard cups", "ring")
        ]
        cakes = [(row.tin, depth) for row in rows[::4] for depth in (row.fit.batter_mm, 2 * row.fit.batter_mm)]
        for (where, depth), time in zip(cakes, made.times(cakes), strict=True):
            least = minutes_to(
                width_mm(where), depth, made.oven_c, made.centre_c, made.start_c,
                surface_w_m2k=conduction.SURFACE_W_M2K, conductivity_w_mk=conduction.CONDUCTIVITY_W_MK,
                diffusivity_m2_s=conduction.DIFFUSIVITY_M2_S,
            )  # fmt: skip
            assert time.check_min >= least * 0.995
            checked, raised = checked + 1, raised + (time.low_min < least * 1.5)
    assert checked > 50 and raised > 3


def test_the_heat_of_the_written_bake_is_as_written(known: Callable[..., Baking], kitchen: Book, facts: Facts) -> None:
    made = known(written={"oven": "160 °C", "time": "55-65 min"})
    point = made.points[0]
    assert heat_of(point, made.batch, kitchen, facts) == pytest.approx(1.2680, abs=1e-3)
