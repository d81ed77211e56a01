"""Weights against GNU units and the egg standards, depths against the tins, and laws."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Card, House, read_take
from tinbook.plans.base.weighing import (
    Batch,
    Ingredient,
    Unweighable,
    as_owned,
    each_g,
    g_per_ml,
    makes_shown_g,
    mass_of,
    same_outline,
    volume_at,
    weigh_all,
)
from tinbook.tins import Tin, read_tin

Batches = Callable[..., Batch]
PER_CENT = 0.01


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def line(batch: Batches, text: str, **more: Any) -> Ingredient:
    """One line, weighed beside a pound of butter."""
    return batch(mix=["453.59237 g butter", text], **more).ingredients[1]


@every(
    ("text", "gnu"),
    [
        ("1 cup caster sugar", "200 g"),
        ("1 metric cup caster sugar", "1 metriccup * 200 g/uscup"),
        ("2 cups plain flour", "250 g"),
        ("3 tbsp honey", "45 ml * 339 g/uscup"),
        ("2 tsp baking powder", "10 ml * 4.6 g/usteaspoon"),
        ("1 US tbsp butter", "1 ustablespoon * 227 g/uscup"),
        ("250 ml milk", "250 ml * 244 g/uscup"),
        ("2 fl oz milk", "2 usfloz * 244 g/uscup"),
        ("1 lb 4 oz butter", "20 oz"),
        ("1 pinch caster sugar", "5|16 ml * 200 g/uscup"),
    ],
)
def test_a_line_weighs_what_gnu_units_says(batch: Batches, gnu_units: Any, text: str, gnu: str) -> None:
    """Grams to the cup and teaspoon are those of USDA SR28, food by food; spoons of the house are metric."""
    (grams,) = gnu_units([(gnu, "g")])
    assert line(batch, text).mass_g == pytest.approx(grams, rel=1e-5)


@pytest.mark.parametrize(
    ("eggs", "row"), [("UK medium", ("EU/UK", "M")), ("UK large", ("EU/UK", "L")), ("US large", ("USA", "Large"))]
)
def test_eggs_weigh_what_their_class_does(
    batch: Batches, kitchen: Book, house: Callable[..., House], table: Any, eggs: str, row: tuple[str, str]
) -> None:
    """EU marketing standards and USDA classes, shell 11.5 %, white 58 % and yolk 30 %: eggs.csv."""
    book = replace(kitchen, house=house(eggs=eggs))
    printed = next(each for each in table("eggs") if (each["system"], each["class"]) == row)
    for text, column in (
        ("2 eggs", "shelled_g_at_11.5pct"),
        ("2 egg whites", "white_g_58pct_of_inshell"),
        ("2 egg yolks", "yolk_g_30pct_of_inshell"),
    ):
        assert line(batch, text, book=book).mass_g == pytest.approx(2 * float(printed[column]), abs=0.11)


@every(
    ("text", "unit", "amount"),
    [
        ("250 g milk", "g", 250.0),
        ("1 kg milk", "g", 1000.0),
        ("60 ml milk", "ml", 60.0),
        ("1 1/2 l milk", "ml", 1500.0),
        ("2 fl oz milk", "ml", 59.1470591),
        ("1 1/4 tsp milk", "tsp", 1.25),
        ("2 tbsp milk", "tbsp", 2.0),
        ("1 pinch bicarbonate of soda", "tsp", 0.0625),
        ("4 eggs", "", 4.0),
        ("1/2 lemon", "", 0.5),
    ],
)
def test_the_unit_a_line_is_scaled_in(batch: Batches, text: str, unit: str, amount: float) -> None:
    got = line(batch, text)
    assert (got.unit, got.amount) == (unit, pytest.approx(amount))


def test_a_cup_is_scaled_in_grams(batch: Batches) -> None:
    got = line(batch, "1 cup plain flour")
    assert (got.unit, got.amount) == ("g", got.mass_g)


def test_what_a_line_knows_of_itself(batch: Batches) -> None:
    made = batch(
        mix=["250 g sweet butter, soft", "4 eggs", {"take": "2 tsp baking powder", "note": "sifted", "part": "dry"}]
    )
    butter, egg, powder = made.ingredients
    assert (butter.name, butter.wanted, butter.part) == ("butter", "soft", "")
    assert (powder.wanted, powder.part) == ("sifted", "dry")
    assert [each.whole_egg for each in made.ingredients] == [False, True, False]
    assert [each.raises for each in made.ingredients] == [False, False, True]
    assert egg.volume_ml is None
    assert butter.volume_ml == pytest.approx(250 * 236.5882365 / 227)


def test_eggs_by_weight_are_not_counted_as_whole_eggs(batch: Batches) -> None:
    assert batch(mix=["250 g butter", "240 g eggs"]).eggs == 0
    assert batch(mix=["250 g butter", "4 egg whites"]).eggs == 0
    assert batch(mix=["250 g butter", "4 eggs", "2 eggs, for the glaze"]).eggs == 6


@pytest.mark.parametrize(
    ("text", "cure"),
    [("3 butter", "each:"), ("2 tbsp egg", "weighs:"), ("1 cup sugarpaste", "no volume measure")],
)
def test_what_cannot_be_weighed_says_what_to_write(kitchen: Book, facts: Facts, text: str, cure: str) -> None:
    take = read_take(text, kitchen.house.spoons)
    name = kitchen.house_word(take.name) or ""
    with pytest.raises(Unweighable) as told:
        mass_of(take, name, kitchen, facts)
    assert name in told.value.message
    assert cure in told.value.hint and told.value.hint.startswith("write ")


def test_weights_of_a_card(card: Callable[..., Card], kitchen: Book, facts: Facts) -> None:
    assert g_per_ml(card(weighs_as="honey"), facts) == facts.densities["honey"].value
    assert g_per_ml(card(weighs="12 g per tbsp"), facts) == pytest.approx(0.8)
    assert g_per_ml(card(weighs="no volume measure"), facts) is None
    assert g_per_ml(card(), facts) is None
    assert each_g(card(each="58 g"), kitchen, facts) == 58.0
    assert each_g(card(), kitchen, facts) is None


def test_batter_volume_is_weight_over_gravity(batch: Batches, facts: Facts) -> None:
    made = batch()
    gravity = facts.kinds["creamed"].gravity.typical
    assert made.batter_ml == pytest.approx(made.mass_g / gravity, rel=1e-12)
    # Two straight round tins: depth = volume / area.
    area_mm2 = 2 * 3.14159265 * 75**2
    assert made.depth_mm == pytest.approx(made.batter_ml * 1000 / area_mm2, abs=0.001)
    assert made.baked_mm == pytest.approx(made.depth_mm * 1.5)


def test_a_measured_depth_wins_over_gravity(batch: Batches) -> None:
    made = batch(batter_depth="44 mm")
    assert made.depth_mm == 44.0
    assert made.batter_ml == pytest.approx(2 * 3.14159265 * 75**2 * 44 / 1000)
    assert made.share == pytest.approx(0.44)


def test_batter_stands_as_deep_in_unlike_tins(batch: Batches) -> None:
    made = batch(tins=["round 20 cm x 10 cm", "2 square 13 cm x 7.5 cm"])
    assert volume_at(made.tins, made.depth_mm) == pytest.approx(made.batter_ml, rel=1e-5)


def test_a_low_tin_fills_to_its_brim_and_no_further(batch: Batches) -> None:
    low, deep = tin("round 20 cm x 2.5 cm"), tin("round 20 cm x 10 cm")
    assert volume_at(((1, low), (2, deep)), 60.0) == pytest.approx(low.brim_ml() + 2 * deep.volume_ml(60.0))
    made = batch(tins=["round 18 cm x 2.5 cm", "round 15 cm x 10 cm"])
    assert made.depth_mm > 25.0
    assert volume_at(made.tins, made.depth_mm) == pytest.approx(made.batter_ml, rel=1e-5)


def test_more_than_the_brim_raises(batch: Batches) -> None:
    with pytest.raises(ValueError, match="brim"):
        batch(tins="round 10 cm x 5 cm")


def test_what_is_made_by_weight_has_no_tins(batch: Batches) -> None:
    made = batch(tins=None, bake=None, kind="buttercream", makes="900 g", mix=["300 g butter", "600 g caster sugar"])
    assert (made.tins, made.depth_mm, made.makes_g, made.mass_g) == ((), 0.0, 900.0, 900.0)
    less = batch(tins=None, bake=None, kind="buttercream", makes="700 g", mix=["300 g butter", "600 g caster sugar"])
    assert (less.makes_g, less.mass_g) == (700.0, 900.0)
    assert (less.makes_shown_g, less.mass_shown_g) == (700.0, 900.0)


@every(
    ("written", "measured"),
    [
        ("round 23 cm x 7.5 cm", True),
        ("round 9 in x 3 in", True),
        ("round 23 cm", True),
        ("round 23 cm x 10 cm", False),
        ("round 20 cm x 7.5 cm", False),
        ("square 23 cm x 7.5 cm", False),
    ],
)
def test_a_tin_measured_by_its_owner_wins(kitchen: Book, written: str, measured: bool) -> None:
    owned = as_owned(tin(written), kitchen)
    assert (owned.measured_ml == 2850.0) == measured
    assert owned == tin(written) or measured


def test_a_recipe_for_a_measured_tin_goes_by_the_measure(batch: Batches) -> None:
    made = batch(tins="round 23 cm x 7.5 cm", batter_depth="37.5 mm")
    assert made.batter_ml == pytest.approx(2850 / 2, rel=1e-9)


def test_depth_makes_no_other_outline() -> None:
    assert same_outline(tin("round 20 cm x 5 cm"), tin("round 8 in"))
    assert not same_outline(tin("round 20 cm"), tin("square 20 cm"))
    assert not same_outline(tin("round 20 cm"), tin("round 203.2 mm"))


@settings(max_examples=50)
@given(grams=st.lists(st.integers(1, 400), min_size=1, max_size=6), eggs=st.integers(1, 6))
def test_the_whole_is_the_sum_of_its_lines(batch: Batches, grams: list[int], eggs: int) -> None:
    made = batch(mix=[*(f"{each} g butter" for each in grams), f"{eggs} eggs"], tins="square 30 cm x 10 cm")
    assert made.mass_g == pytest.approx(sum(grams) + eggs * 68 * 0.885, rel=1e-12)
    assert made.eggs == eggs


@settings(max_examples=50)
@given(grams=st.integers(50, 3000), more=st.integers(1, 1000))
def test_more_batter_stands_deeper(batch: Batches, grams: int, more: int) -> None:
    less_deep = batch(mix=[f"{grams} g butter"], tins="loaf 30 cm x 20 cm x 10 cm")
    deeper = batch(mix=[f"{grams + more} g butter"], tins="loaf 30 cm x 20 cm x 10 cm")
    assert deeper.depth_mm > less_deep.depth_mm
    assert volume_at(deeper.tins, deeper.depth_mm) == pytest.approx(deeper.batter_ml, rel=1e-4)


def test_the_demo_mixtures_fit_their_tins(demo: Loaded) -> None:
    made = weigh_all(demo.book, demo.facts)
    assert set(made) == set(demo.book.mixtures)
    for each in made.values():
        assert each.mass_g > 0 and each.batter_ml > 0
        if each.tins:
            assert 0 < each.depth_mm <= min(own.brim_mm for _, own in each.tins)
            assert 0 < each.share < 1
            gravity = each.mass_g / each.batter_ml
            assert each.kind.gravity.low - PER_CENT <= gravity <= each.kind.gravity.high + PER_CENT, each.slug
        assert each.worked.sources and all(key in demo.facts.sources for key in each.worked.sources)


def test_what_is_made_by_weight_is_shown_as_scales_show_it(demo: Loaded) -> None:
    """A variation makes what its base makes by the weight of its own mix: no whole number of grams."""
    made = weigh_all(demo.book, demo.facts)
    by_weight = [slug for slug, mixture in demo.book.mixtures.items() if mixture.makes]
    assert by_weight
    for slug in by_weight:
        shown = makes_shown_g(demo.book.mixtures[slug], demo.book)
        assert shown == made[slug].makes_shown_g
        assert shown % 1 == 0
