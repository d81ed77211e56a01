"""All times of a mixture in one go: the same as one by one, in the order of its table."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tinbook.loading import Loaded
from tinbook.models import Mixture
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.tin_times import bake_step, tin_times
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import weigh


@pytest.mark.parametrize("slug", ["mud-cake", "cupcakes"])
def test_each_row_has_the_time_of_its_own_tin(demo: Loaded, slug: str) -> None:
    batch = weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts)
    known, table = Bakes(demo.book, demo.facts).of(batch), tin_table(batch, demo.book, demo.facts)
    assert known is not None
    made = tin_times(known, table)
    assert len(made.times) == len(made.far) == len(table.rows)
    for row, time, far in zip(table.rows, made.times, made.far, strict=True):
        cake = row.tin, row.fit.batter_mm
        assert time.likely_min == pytest.approx(known.times([cake])[0].likely_min)
        assert far.told == known.told(*cake)


def test_the_curve_rises_through_what_was_baked(demo: Loaded) -> None:
    batch = weigh("mud-cake", demo.book.mixtures["mud-cake"], demo.book, demo.facts)
    known = Bakes(demo.book, demo.facts).of(batch)
    assert known is not None
    curve = tin_times(known, tin_table(batch, demo.book, demo.facts)).curve
    widths = [width for width, _ in curve]
    assert widths == sorted(widths) and {point.width_mm for point in known.points} <= set(widths)
    assert widths[0] <= 100 and widths[-1] >= 400
    likely = [time.likely_min for _, time in curve]
    assert likely == sorted(likely)


def test_the_baking_is_the_step_that_waits_as_long(demo: Loaded) -> None:
    found = {slug: bake_step(mixture) for slug, mixture in demo.book.mixtures.items()}
    for slug, mixture in demo.book.mixtures.items():
        at = found[slug]
        assert (at is None) == (mixture.bake is None), slug
        if at is not None and mixture.bake is not None:
            assert mixture.method[at].waiting == mixture.bake.time


def test_without_such_a_wait_it_is_the_step_that_says_so(mixture: Callable[..., Mixture]) -> None:
    bake = {"oven": "170 °C", "time": "40 min"}
    chill = {"do": "Chill.", "waiting": "1 h"}
    assert bake_step(mixture(bake=bake, method=[chill, {"do": "Bake it.", "waiting": "50 min"}])) == 1
    assert bake_step(mixture(bake=bake, method=[chill, {"do": "Leave it.", "waiting": "50 min"}])) is None
