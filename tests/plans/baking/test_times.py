"""Times in the oven: the laws as a baker meets them, and never less than the middle needs."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.oracles.conduction import minutes_to
from tests.plans.baking.conftest import bake, likely, tin

from tinbook.engine import conduction
from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import inputs_of, spell
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.times import Baking, Time, baking_worked, width_mm
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import weigh_all
from tinbook.tins import Tin


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
    assert spell(bare.told(tin("round 20 cm"), 40)) == "this recipe has not been baked yet"
    assert "nothing baked yet, so the span is wide" in inputs_of(baking_worked(bare, facts))


def test_the_recipes_own_time_is_its_first_entry(known: Callable[..., Baking]) -> None:
    made = known(written={"oven": "160 °C", "time": "55-65 min"})
    assert made.logged == 0 and len(made.points) == 1
    own = made.batch.tins[0][1]
    (time,) = made.times([(own, made.batch.depth_mm)])
    assert time.likely_min == pytest.approx((55 * 65) ** 0.5, rel=0.06)
    assert spell(made.told(own, made.batch.depth_mm)) == "based on the time given in the recipe"


def test_further_away_is_wider_and_said(known: Callable[..., Baking]) -> None:
    made = known(*[bake("round 20 cm", 70)] * 2, written=None)
    near, wide, deep = made.times([(tin("round 20 cm"), 40), (tin("round 40 cm"), 40), (tin("round 20 cm"), 70)])
    assert near.high_min / near.low_min < deep.high_min / deep.low_min
    assert near.high_min / near.low_min < wide.high_min / wide.low_min
    assert spell(made.told(tin("round 20 cm"), 40)) == "based on 2 of your own bakes in this tin"
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


def test_wide_or_deep_may_go_cooler(known: Callable[..., Baking], facts: Facts) -> None:
    made = known()
    assert made.cooler_c(tin("round 20 cm"), 40, 180, facts) is None
    assert made.cooler_c(tin("round 30 cm"), 40, 180, facts) == pytest.approx(180 - 25 / 1.8, abs=0.1)
    assert made.cooler_c(tin("round 20 cm"), 65, 180, facts) is not None
    assert made.cooler_c(tin("round 30 cm"), 40, 115, facts) is None


def test_a_timer_can_be_set_by_it(known: Callable[..., Baking]) -> None:
    for time in known().times([(tin(f"round {size} cm"), 40) for size in (10, 15, 20, 25, 30, 40)]):
        assert time.check_shown_min <= time.check_min <= time.low_min <= time.likely_min <= time.high_min
        assert time.low_shown_min <= time.low_min and time.high_min <= time.high_shown_min
        assert time.check_min == pytest.approx(min(0.8 * time.likely_min, time.low_min))


def test_where_heat_decides_it_begins_at_that_minute_and_the_fold_says_so(
    known: Callable[..., Baking], facts: Facts
) -> None:
    """A log that says 12 min for a cake whose middle cannot be warm by then."""
    made = known(*[bake("round 20 cm", 12)] * 5, written=None)
    (slow,) = made.times([(tin("round 20 cm"), 40)])
    (usual,) = known(*[bake("round 20 cm", 60)] * 5, written=None).times([(tin("round 20 cm"), 40)])
    least = conduction.centre_minutes(200, 40, made.oven_c, made.start_c, made.centre_c)
    assert slow.held and not usual.held
    assert slow.check_shown_min == slow.check_min == slow.low_min == slow.likely_min == math.ceil(least) < slow.high_min
    (said,) = [
        each for each in inputs_of(baking_worked(made, facts, [slow, usual])) if "set by how fast heat travels" in each
    ]
    assert said.startswith("in 1 of 2 tins the time is set by how fast heat travels")
    assert not [
        each for each in inputs_of(baking_worked(made, facts, [usual])) if "set by how fast heat travels" in each
    ]


@given(st.floats(8.0, 120.0), st.floats(60.0, 350.0), st.floats(15.0, 90.0), st.floats(140.0, 200.0))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_what_is_shown_keeps_the_laws_where_heat_decides(
    known: Callable[..., Baking], minutes: float, width: float, depth: float, oven: float
) -> None:
    """Ends in order, never shown before the middle can be warm, and no later in a narrower, shallower or hotter one."""
    made = known(*[bake("round 20 cm", round(minutes))] * 3, written=None)

    def asked(width: float, depth: float, oven: float) -> Time:
        return made.times([(Tin(shape="round", sizes_mm=(width,)), depth)], oven)[0]

    here = asked(width, depth, oven)
    assert here.check_shown_min <= here.low_shown_min <= here.low_min <= here.likely_min
    assert here.likely_min <= here.high_min <= here.high_shown_min
    assert here.low_shown_min <= round(here.likely_min) <= here.high_shown_min
    least = conduction.centre_minutes(width, depth, oven, made.start_c, made.centre_c)
    assert here.check_shown_min >= least - 1e-6
    assert asked(width * 0.97, depth, oven).likely_min <= here.likely_min
    assert asked(width, depth * 0.97, oven).likely_min <= here.likely_min
    assert asked(width, depth, oven + 3).likely_min <= here.likely_min


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
            assert time.check_shown_min >= least * 0.995
            checked, raised = checked + 1, raised + (time.low_min < least * 1.5)
    assert checked > 50 and raised > 3
