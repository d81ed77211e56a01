"""What the browser is handed, worked out again with nothing but products, is what the plans say."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict, replace
from math import ceil, pi, sqrt

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, House
from tinbook.plans.base.scaling import TinTable, tin_table
from tinbook.plans.base.weighing import Batch, weigh_all
from tinbook.plans.mixtures.bench import Bench, area_shares, as_plain, bench

Batches = Callable[..., Batch]


@pytest.fixture(scope="module")
def made(demo: Loaded) -> dict[str, tuple[Bench, TinTable | None]]:
    found = {}
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        table = tin_table(batch, demo.book, demo.facts) if batch.tins else None
        found[slug] = (bench(batch, table, demo.book, demo.facts), table)
    return found


def test_a_factor_is_a_product_and_a_quotient(made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    compared = 0
    for handed, table in made.values():
        for tin, row in zip(handed.tins, table.rows if table else (), strict=True):
            assert tin.name == row.tin.name
            assert tin.count * tin.unit_ml / handed.batter_ml == pytest.approx(row.exact.factor, rel=1e-9)
            assert (tin.owned, tin.least_mm, tin.stands) == (row.owned, row.fit.least_mm, row.fit.per_bake)
            compared += 1
    assert compared > 100


def test_too_shallow_a_tin_is_seen_by_its_room(made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    shallow = 0
    for handed, table in made.values():
        for tin, row in zip(handed.tins, table.rows if table else (), strict=True):
            volume_ml = handed.batter_ml * row.whole.factor
            needed = tin.count if tin.room_ml is None else max(tin.count, ceil(volume_ml / tin.room_ml - 1e-6))
            assert needed == row.fit.needed, (handed.name, tin.name)
            shallow += needed > tin.count
    assert shallow


def test_a_tin_is_as_wide_and_as_long_as_its_name_says(made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    """The longer side is the length, as in the name: 23 by 33 cm."""
    tins = {tin.name: tin for handed, _ in made.values() for tin in handed.tins}
    oblong = next(tin for name, tin in tins.items() if name.startswith("rectangle 23 x 33"))
    assert (oblong.width_mm, oblong.length_mm) == (pytest.approx(230, abs=3), pytest.approx(330, abs=3))


def test_lines_and_sums(demo: Loaded, made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    for slug, batch in weigh_all(demo.book, demo.facts).items():
        handed, _ = made[slug]
        assert sum(line.mass_g for line in handed.lines) == pytest.approx(handed.mass_g)
        assert [line.name for line in handed.lines] == [line.name for line in batch.ingredients]
        assert handed.makes_g == batch.makes_g
        assert handed.eggs == sum(line.amount for line in handed.lines if line.name == "egg" and line.unit == "")
        assert (handed.egg_tolerance, handed.g_per_oz) == (0.08, pytest.approx(28.349523125, rel=1e-12))


def test_it_survives_json(made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    for handed, _ in made.values():
        told = json.loads(json.dumps(asdict(handed), allow_nan=False))
        assert told["batter_ml"] == handed.batter_ml
        assert len(told["tins"]) == len(handed.tins)


def test_area_shares_by_hand() -> None:
    """Areas over width x length, or width x width, as any book of formulas has them."""
    assert area_shares() == {
        "round": pytest.approx(pi / 4),
        "square": 1.0,
        "rectangle": 1.0,
        "oval": pytest.approx(pi / 4),
        "hexagon": pytest.approx(3 * sqrt(3) / 8),
        "octagon": pytest.approx(2 * (sqrt(2) - 1)),
        # A square of side s and a circle of diameter s, s (1 + 1/sqrt 2) wide.
        "heart": pytest.approx((1 + pi / 4) / (1 + sqrt(1 / 2)) ** 2),
        # An octagon of side s and four circles of diameter s, s (2 + sqrt 2) wide.
        "petal": pytest.approx((2 + 2 * sqrt(2) + pi) / (2 + sqrt(2)) ** 2),
    }


def test_what_is_made_by_weight_has_no_tins(batch: Batches, kitchen: Book, facts: Facts) -> None:
    cream = batch(tins=None, bake=None, kind="buttercream", makes="790 g", mix=["250 g butter", "540 g caster sugar"])
    handed = bench(cream, None, kitchen, facts)
    assert (handed.tins, handed.shapes, handed.tin, handed.count, handed.share) == ((), {}, "", 1, 0.0)


def test_the_raising_agent_is_told_only_where_it_goes_down(batch: Batches, kitchen: Book, facts: Facts) -> None:
    for raising, told in (("level", None), ("less in wide tins", ((250.0, 1.0), (300.0, 0.84), (350.0, 0.75)))):
        made = batch(raising=raising)
        assert bench(made, tin_table(made, kitchen, facts), kitchen, facts).raising == told


def test_the_house_and_its_measures(batch: Batches, kitchen: Book, house: Callable[..., House], facts: Facts) -> None:
    made = batch()
    handed = bench(made, tin_table(made, kitchen, facts), kitchen, facts)
    assert (handed.cup_ml, handed.tablespoon_ml, handed.teaspoon_ml) == (pytest.approx(236.5882365), 15.0, 5.0)
    assert (handed.bowl_g, handed.steps.step, handed.steps.fine, handed.steps.fine_below) == (2500.0, 5.0, 1.0, 50.0)
    assert {tin.name: tin.have for tin in handed.tins if tin.have} == {
        "round 15 cm": 2, "round 23 cm": 1, "square 20 cm": 1,
    }  # fmt: skip
    assert (handed.tin, handed.count, handed.depth_mm) == ("round 15 cm", 2, made.depth_mm)
    bare = replace(kitchen, house=house(cup=None, mixer_bowl=None))
    handed = bench(made, None, bare, facts)
    assert (handed.cup_ml, handed.bowl_g) == (pytest.approx(236.5882365), None)


def test_names_are_told_once(made: dict[str, tuple[Bench, TinTable | None]]) -> None:
    """Heads and rows say what the tins say."""
    for handed, _ in made.values():
        told = as_plain(handed)["tins"]
        tins = [dict(zip(told["heads"], row, strict=False)) for row in told["rows"]]
        assert tins == [tin._asdict() for tin in handed.tins]
