"""The house's own oven: its dial, ways to bake, its log."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, House
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.oven import bakes, dial, dials, own_dial, ways
from tinbook.plans.base.weighing import weigh_all
from tinbook.units import read_heat


def with_oven(kitchen: Book, house: Callable[..., House], **oven: str) -> Book:
    return replace(kitchen, house=house(oven=oven))


OVENS: tuple[dict[str, str], ...] = (
    {"kind": "conventional"},
    {"kind": "fan"},
    {"kind": "fan", "dial": "160 °C fan", "thermometer": "165 °C"},
    {"kind": "conventional", "dial": "180 °C", "thermometer": "168 °C"},
    {"kind": "conventional", "dial": "350 °F", "thermometer": "180 °C"},
)


@pytest.mark.parametrize("oven", OVENS)
@given(wanted=st.floats(110, 230))
def test_what_is_set_gives_the_heat_that_is_wanted(
    kitchen: Book, house: Callable[..., House], facts: Facts, oven: dict[str, str], wanted: float
) -> None:
    book = with_oven(kitchen, house, **oven)
    there = read_heat(spell(dial(wanted, book, facts))).celsius + book.house.oven.off_c
    # a dial goes by fives
    assert abs(there - wanted) <= 2.5 + 1e-6


def test_a_gas_oven_is_set_by_the_published_marks(
    kitchen: Book, house: Callable[..., House], facts: Facts, table: Callable[[str], list[dict[str, str]]]
) -> None:
    """oven_conversion_tables.csv, column D: the exact °C of each mark."""
    book = with_oven(kitchen, house, kind="gas")
    for row in table("oven_conversion_tables"):
        shown = spell(dial(float(row["D_exact_C"]), book, facts))
        assert shown.startswith("gas mark ")
        assert read_heat(shown).celsius == pytest.approx(float(row["D_exact_C"]), abs=0.1)


def test_only_another_dial_is_told(kitchen: Book, house: Callable[..., House], facts: Facts) -> None:
    plain, fan, hot, _, american = (with_oven(kitchen, house, **oven) for oven in OVENS)
    assert own_dial(160, plain, facts) is None
    assert spell(own_dial(160, fan, facts) or "") == "140 °C fan"
    # 5 °C hotter than its dial says, and a fan oven
    assert spell(own_dial(160, hot, facts) or "") == "135 °C fan"
    assert spell(own_dial(176.7, american, facts) or "").endswith(" °F")


def test_the_usual_heats_stand_beside_what_is_set(kitchen: Book, house: Callable[..., House], facts: Facts) -> None:
    rows = dials(with_oven(kitchen, house, kind="fan"), facts)
    assert [row.conventional_c for row, _ in rows] == list(range(120, 201, 10))
    assert all(spell(shown) == f"{row.fan_c:g} °C fan" for row, shown in rows)


def test_half_the_batter_is_quicker_and_a_cooler_oven_slower(demo: Loaded) -> None:
    batches = weigh_all(demo.book, demo.facts)
    known = Bakes(demo.book, demo.facts, batches)
    cooler = 0
    for batch in batches.values():
        made = known.of(batch)
        if made is None or not batch.tins:
            continue
        way = ways(made, demo.book, demo.facts)
        assert way.half.likely_min < way.whole.likely_min and way.half.check_min < way.whole.check_min
        if way.cooler is not None and way.cooler_c is not None:
            assert way.cooler_c < made.oven_c and way.cooler.likely_min > way.whole.likely_min
            cooler += 1
    assert cooler


def test_the_log_comes_newest_first_with_what_is_expected(demo: Loaded) -> None:
    batches = weigh_all(demo.book, demo.facts)
    known = Bakes(demo.book, demo.facts, batches)
    made = bakes(batches.values(), known, demo.book)
    assert len(made) == len(demo.book.bakes) > 5
    assert [each.entry.day for each in made] == sorted((each.entry.day for each in made), reverse=True)
    for each in made:
        law = known.of(each.batch)
        assert law is not None
        alone = law.times([(each.tin, each.depth_mm)], each.oven_c, each.entry.start)[0]
        assert each.expected.likely_min == pytest.approx(alone.likely_min)
        # the house's oven is as hot as it was measured
        assert each.oven_c == each.entry.oven.celsius + demo.book.house.oven.off_c
    assert bakes(batches.values(), Bakes(replace(demo.book, bakes=()), demo.facts), replace(demo.book, bakes=())) == []
