"""Scaling: a rule of the trade by hand, and laws over tins of every shape."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, House
from tinbook.pages.spelling.sayings import inputs_of, spelled_all
from tinbook.plans.base.answering import Scaled, scale
from tinbook.plans.base.asking import Query
from tinbook.plans.base.scaling import Fit, mixes, owned_count, row_count, tin_table, wanted_ml
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch, as_owned
from tinbook.tins import SHAPES, Tin, read_tin

Batches = Callable[..., Batch]
LAWS = settings(max_examples=60)
CAKES = [shape for shape in SHAPES.values() if shape.kept == "depth" and shape.standard]
NO_EGGS = ["300 g butter", "300 g caster sugar", "300 g self-raising flour", "2 tsp baking powder", "60 ml milk"]
MADE = {"tins": None, "bake": None, "kind": "buttercream", "makes": "790 g",
        "mix": ["250 g butter", "500 g caster sugar", "2 tbsp milk", "2 tsp vanilla extract"]}  # fmt: skip


def tin(text: str) -> Tin:
    return read_tin(text)[1]


@st.composite
def cake_tins(draw: st.DrawFn) -> Tin:
    """Any standard outline that keeps the batter's depth, of any depth the trade sells."""
    shape = draw(st.sampled_from(CAKES))
    sizes, _ = draw(st.sampled_from(shape.standard))
    return Tin(shape=shape.key, sizes_mm=sizes, depth_mm=draw(st.sampled_from((25.0, 50.0, 75.0, 100.0))))


CUPS = st.sampled_from([Tin(shape="cups", sizes_mm=sizes, depth_mm=depth) for sizes, depth in SHAPES["cups"].standard])
ANY_TIN = st.one_of(cake_tins(), CUPS)
TARGETS = st.lists(st.tuples(st.integers(1, 4), ANY_TIN), min_size=1, max_size=3)
DEPTH = st.integers(15, 60)
COUNT = st.integers(1, 12)


def written(batch: Batches, own: Tin, eggs: int, depth: int, **more: Any) -> Batch:
    mix = ["345 g butter", "335 g caster sugar", f"{eggs} eggs", "2 tsp baking powder", "60 ml milk"]
    if not eggs:
        del mix[2]
    return batch(**{"tins": own.full_name, "batter_depth": f"{depth} mm", "mix": mix, **more})


def exact_g(made: Batch, version: Version) -> dict[str, float]:
    """Exact grams of every line, whatever its unit; a line's name is used once in these tests."""
    return {
        line.name: line.mass_g * got.exact / (line.mass_g if got.unit == "g" else line.amount)
        for line, got in zip(made.ingredients, version.amounts, strict=True)
    }


def asked(made: Batch, book: Book, facts: Facts, *tins: tuple[int, Tin], **more: Any) -> Scaled:
    return scale(made, book, facts, Query(tins=tins, **more))


# The trade's own example


def test_a_quarter_more_of_a_carving_sponge(
    batch: Batches, kitchen: Book, facts: Facts, practice: Callable[[str], tuple[float, ...]]
) -> None:
    """Common practice, no source: tests/data/common_practice.csv."""
    each, eggs = practice("grams each of butter sugar and flour and the eggs of a sponge that carves")
    more, more_eggs = practice("the same of a quarter more of it for two deep 15 cm rounds")
    mix = [f"{each:g} g butter", f"{each:g} g caster sugar", f"{eggs:g} eggs", f"{each:g} g self-raising flour"]
    answer = scale(batch(mix=mix), kitchen, facts, Query(plus=0.25))
    assert [(got.shown, got.unit) for got in answer.whole.amounts] == [
        (more, "g"), (more, "g"), (more_eggs, ""), (more, "g"),
    ]  # fmt: skip
    assert not answer.beaten
    assert (answer.whole.off, answer.whole.weight_error, answer.whole.spoon_error) == (0.0, 0.0, 0.0)


def test_twice_the_width_is_four_times_the_mixture(batch: Batches, kitchen: Book, facts: Facts) -> None:
    made = batch(tins="round 15 cm x 10 cm", batter_depth="44 mm")
    answer = asked(made, kitchen, facts, (1, tin("round 30 cm x 10 cm")))
    assert answer.exact.factor == pytest.approx(4.0, rel=1e-9)
    assert answer.whole.amounts[2].shown == 16.0
    assert answer.fits[0].batter_mm == pytest.approx(44.0, rel=1e-9)


def test_a_square_holds_four_over_pi_of_its_round(batch: Batches, kitchen: Book, facts: Facts) -> None:
    made = batch(tins="round 20 cm x 10 cm", batter_depth="40 mm")
    assert asked(made, kitchen, facts, (1, tin("square 20 cm x 10 cm"))).exact.factor == pytest.approx(1.273239545)


# Laws


@LAWS
@given(own=cake_tins(), new=cake_tins(), depth=DEPTH)
def test_there_and_back_returns_the_quantities(
    batch: Batches, kitchen: Book, facts: Facts, own: Tin, new: Tin, depth: int
) -> None:
    assume(depth < min(own.brim_mm, new.brim_mm))
    made = written(batch, own, 0, depth)
    there = asked(made, kitchen, facts, (1, new)).exact
    lines = [
        f"{got.exact:.9f} {got.unit} {line.name}" for line, got in zip(made.ingredients, there.amounts, strict=True)
    ]
    back = asked(written(batch, new, 0, depth, mix=lines), kitchen, facts, (1, own)).exact
    assert back.factor * there.factor == pytest.approx(1.0, rel=1e-9)
    for line, got in zip(made.ingredients, back.amounts, strict=True):
        assert got.exact == pytest.approx(line.amount, rel=1e-6)


@LAWS
@given(first=TARGETS, second=TARGETS, deep=st.booleans())
def test_sums_over_tins_lose_and_double_nothing(
    batch: Batches, kitchen: Book, facts: Facts, first: Any, second: Any, deep: bool
) -> None:
    made = batch(batter_depth="44 mm")
    both = asked(made, kitchen, facts, *first, *second, deep=deep)
    parts = [asked(made, kitchen, facts, *targets, deep=deep) for targets in (first, second)]
    assert both.exact.factor == pytest.approx(sum(part.exact.factor for part in parts), rel=1e-9)
    assert both.exact.mass_g == pytest.approx(sum(part.exact.mass_g for part in parts), rel=1e-9)
    for index, got in enumerate(both.exact.amounts):
        assert got.exact == pytest.approx(sum(part.exact.amounts[index].exact for part in parts), rel=1e-9)


@LAWS
@given(targets=TARGETS, eggs=st.integers(0, 6), deep=st.booleans())
def test_what_goes_into_the_tins_adds_up_to_the_mixture(
    batch: Batches, kitchen: Book, facts: Facts, targets: Any, eggs: int, deep: bool
) -> None:
    made = written(batch, tin("round 20 cm x 10 cm"), eggs, 40)
    answer = asked(made, kitchen, facts, *targets, deep=deep)
    assert sum(fit.each_g * fit.needed for fit in answer.fits) == pytest.approx(answer.whole.mass_g, rel=1e-9)
    gravity = made.mass_g / made.batter_ml
    for fit in answer.fits:
        assert fit.tin.volume_ml(fit.batter_mm) * gravity == pytest.approx(fit.each_g, rel=1e-6)
        assert fit.baked_mm == pytest.approx(fit.batter_mm * made.rise)


@LAWS
@given(tins=st.tuples(cake_tins(), cake_tins()), eggs=st.integers(0, 6))
def test_a_bigger_tin_never_gets_less(
    batch: Batches, kitchen: Book, facts: Facts, tins: tuple[Tin, Tin], eggs: int
) -> None:
    made = written(batch, tin("round 20 cm x 10 cm"), eggs, 40)
    small, big = sorted(tins, key=lambda each: as_owned(each, kitchen).volume_ml(40.0))
    less, more = (asked(made, kitchen, facts, (1, each)) for each in (small, big))
    assert less.exact.factor <= more.exact.factor * (1 + 1e-12)
    assert less.whole.mass_g <= more.whole.mass_g * (1 + 1e-12)


@LAWS
@given(own=cake_tins(), cups=CUPS, count=st.integers(1, 48), depth=DEPTH)
def test_cups_keep_the_share_of_the_brim(
    batch: Batches, kitchen: Book, facts: Facts, own: Tin, cups: Tin, count: int, depth: int
) -> None:
    assume(depth < own.brim_mm)
    made = written(batch, own, 0, depth)
    (fit,) = asked(made, kitchen, facts, (count, cups)).fits
    share = made.batter_ml / as_owned(own, kitchen).brim_ml()
    assert cups.volume_ml(fit.batter_mm) / cups.brim_ml() == pytest.approx(share, rel=1e-6)
    assert fit.needed == fit.count == count


@LAWS
@given(own=cake_tins(), new=cake_tins(), count=COUNT, depth=DEPTH)
def test_a_depth_asked_for_keeps_the_share_of_the_tin(
    batch: Batches, kitchen: Book, facts: Facts, own: Tin, new: Tin, count: int, depth: int
) -> None:
    assume(depth < own.brim_mm)
    made = written(batch, own, 0, depth)
    share = made.batter_ml / as_owned(own, kitchen).brim_ml()
    answer = asked(made, kitchen, facts, (count, new), deep=True)
    volume_ml = made.batter_ml * answer.exact.factor
    assert volume_ml / (count * as_owned(new, kitchen).brim_ml()) == pytest.approx(share, rel=1e-9)


@LAWS
@given(own=cake_tins(), new=cake_tins(), count=COUNT, depth=DEPTH)
def test_otherwise_the_batter_keeps_its_depth(
    batch: Batches, kitchen: Book, facts: Facts, own: Tin, new: Tin, count: int, depth: int
) -> None:
    assume(depth < own.brim_mm)
    made = written(batch, own, 0, depth)
    answer = asked(made, kitchen, facts, (count, new))
    volume_ml = made.batter_ml * answer.exact.factor
    assert as_owned(new, kitchen).fill_mm(volume_ml / count) == pytest.approx(depth, rel=1e-6)


@LAWS
@given(new=cake_tins(), count=COUNT, eggs=st.integers(0, 6), depth=DEPTH, deep=st.booleans())
def test_never_over_the_rim(
    batch: Batches, kitchen: Book, facts: Facts, new: Tin, count: int, eggs: int, depth: int, deep: bool
) -> None:
    """Raw batter stands so low that it bakes to the rim at most; no tin more than that takes is filled."""
    made = written(batch, tin("round 20 cm x 10 cm"), eggs, depth)
    answer = asked(made, kitchen, facts, (count, new), deep=deep)
    (fit,) = answer.fits
    assert fit.tin.depth_mm is not None
    assert fit.baked_mm <= fit.tin.depth_mm * (1 + 1e-6)
    capacity_ml = fit.tin.volume_ml(fit.tin.depth_mm / made.rise)
    volume_ml = made.batter_ml * answer.whole.factor
    assert fit.needed * capacity_ml >= volume_ml * (1 - 1e-6)
    assert fit.needed == count or (fit.needed - 1) * capacity_ml < volume_ml
    assert (fit.needed > count) == any("too shallow" in words for words in spelled_all(fit.remarks))


# Tins, bakes and mixes


def test_a_measured_tin_is_asked_for_by_its_measure(batch: Batches, kitchen: Book, facts: Facts) -> None:
    """The table's row and the answer to a question agree: the house's own measure wins in both."""
    made = batch(batter_depth="37.5 mm", mix=NO_EGGS)
    answer = asked(made, kitchen, facts, (2, tin("round 9 in x 3 in")))
    assert answer.exact.factor * made.batter_ml == pytest.approx(2850, rel=1e-9)
    row = next(row for row in tin_table(made, kitchen, facts).rows if row.tin.name == "round 23 cm")
    assert row.exact.factor == pytest.approx(answer.exact.factor, rel=1e-12)


@every(
    ("count", "text", "shelves", "bowl", "bakes", "words"),
    [
        # 44 x 36 cm with 1 cm clear: two by two of 15 cm, two of 20 cm side by side, none of 35 cm.
        (2, "round 15 cm x 10 cm", "1", "2.5 kg", 1, ""),
        (5, "round 15 cm x 10 cm", "1", "2.5 kg", 2, "2 oven loads, at most 4 per load"),
        (5, "round 15 cm x 10 cm", "2", "2.5 kg", 1, ""),
        (3, "round 20 cm x 10 cm", "1", "2.5 kg", 2, "2 oven loads, at most 2 per load"),
        (1, "round 35 cm x 10 cm", "1", "2.5 kg", 0, "wider than the oven shelf"),
        # 44 mm of batter bakes to 66 mm: three tins of 5 cm for two.
        (2, "round 15 cm x 5 cm", "1", "2.5 kg", 1, "too shallow for all the batter: fill 3 tins"),
        (2, "square 20 cm x 5 cm", "1", "2.5 kg", 3,
         "too shallow for all the batter: fill 3 tins; you have 1: bake one after the other, a third of the mix in each"),
        # The kitchen has one of the first and two of the second; for five of these two shelves have room enough.
        (2, "square 20 cm x 5 cm", "1", "5 kg", 3, "too shallow for all the batter: fill 3 tins; "
         "you have 1: bake one after the other, a third of the mix in each"),
        (4, "round 15 cm x 7.5 cm", "1", "2.5 kg", 2, "you have 2: bake 2 at a time, a quarter of the mix in each"),
        (5, "round 15 cm x 7.5 cm", "2", "2.5 kg", 3, "you have 2: bake 2 at a time, a fifth of the mix in each"),
        (2, "round 15 cm x 7.5 cm", "1", "2.5 kg", 1, ""),
    ],
)  # fmt: skip
def test_bakes_and_words_by_hand(
    batch: Batches, kitchen: Book, house: Callable[..., House], facts: Facts,
    count: int, text: str, shelves: str, bowl: str, bakes: int, words: str,
) -> None:  # fmt: skip
    book = replace(kitchen, house=house(shelves=shelves, mixer_bowl=bowl))
    (fit,) = asked(batch(batter_depth="44 mm", mix=NO_EGGS), book, facts, (count, tin(text))).fits
    assert (fit.bakes, "; ".join(spelled_all(fit.remarks))) == (bakes, words)


def test_a_house_that_names_no_shelf_or_bowl_bakes_and_mixes_once(
    batch: Batches, kitchen: Book, house: Callable[..., House], facts: Facts
) -> None:
    book = replace(kitchen, house=house(oven_shelf=None, mixer_bowl=None))
    answer = asked(batch(), book, facts, (9, tin("round 40 cm x 10 cm")))
    assert (answer.fits[0].per_bake, answer.fits[0].bakes, answer.mixes) == (None, 1, 1)


@given(mass_g=st.integers(1, 20000))
def test_mixes_for_the_bowl(kitchen: Book, mass_g: int) -> None:
    assert mixes(kitchen, float(mass_g)) == -(-mass_g // 2500)


def test_tins_owned_are_counted_with_their_depth(kitchen: Book) -> None:
    assert owned_count(kitchen, tin("round 15 cm x 7.5 cm")) == 2
    assert owned_count(kitchen, tin("round 15 cm x 10 cm")) == 0
    assert owned_count(kitchen, tin("round 9 in x 3 in")) == 1


def test_the_least_depth_is_the_least_sold_that_holds_the_cake(batch: Batches, kitchen: Book, facts: Facts) -> None:
    for depth, least in (("30 mm", 50.0), ("44 mm", 75.0), ("60 mm", 100.0), ("70 mm", None)):
        (fit,) = asked(batch(batter_depth=depth, mix=NO_EGGS), kitchen, facts, (1, tin("round 20 cm"))).fits
        assert fit.least_mm == least, depth


# The table of every tin


@pytest.fixture(scope="module")
def tables(demo: Loaded) -> dict[str, Any]:
    from tinbook.plans.base.weighing import weigh_all

    batches = weigh_all(demo.book, demo.facts)
    return {slug: tin_table(made, demo.book, demo.facts) for slug, made in batches.items() if made.tins}


def test_a_row_for_every_standard_outline_and_every_owned_one(demo: Loaded, tables: dict[str, Any]) -> None:
    from tinbook.tins import standard_tins

    everyday = [key for key, shape in SHAPES.items() if shape.everyday]
    wanted = {(each.shape, each.sizes_mm) for each in standard_tins([*everyday, *demo.book.house.also_show])}
    wanted |= {(own.tin.shape, own.tin.sizes_mm) for own in demo.book.tins if own.have}
    assert tables
    for found in tables.values():
        rows = [(row.tin.shape, row.tin.sizes_mm) for row in found.rows]
        assert len(rows) == len(set(rows))
        assert set(rows) == wanted


def test_the_written_tin_has_factor_one(demo: Loaded, tables: dict[str, Any]) -> None:
    for slug, found in tables.items():
        for count, own in found.batch.tins:
            row = next(row for row in found.rows if row.tin.sizes_mm == own.sizes_mm and row.tin.shape == own.shape)
            assert row.exact.factor * sum(number for number, _ in found.batch.tins) == pytest.approx(
                row.fit.count, rel=1e-4
            ), (slug, count)


def test_a_table_row_is_the_answer_to_its_question(demo: Loaded, tables: dict[str, Any]) -> None:
    for found in tables.values():
        for row in found.rows:
            answer = asked(found.batch, demo.book, demo.facts, (row.fit.count, row.tin))
            assert answer.beaten == row.beaten
            for asked_for, told in ((answer.exact, row.exact), (answer.whole, row.whole)):
                assert asked_for.factor == pytest.approx(told.factor, rel=1e-12)
                assert [got.shown for got in asked_for.amounts] == [got.shown for got in told.amounts]
            assert answer.mixes == row.mixes
            (fit,) = answer.fits
            assert same_fit(fit, row.fit), (fit, row.fit)


def same_fit(one: Fit, other: Fit) -> bool:
    same = (one.tin, one.needed, one.least_mm, one.bakes, one.remarks) == (
        other.tin, other.needed, other.least_mm, other.bakes, other.remarks,
    )  # fmt: skip
    return same and one.each_g == pytest.approx(other.each_g) and one.batter_mm == pytest.approx(other.batter_mm)


def test_the_table_tells_its_largest_errors(tables: dict[str, Any]) -> None:
    for found in tables.values():
        weights = max(row.whole.weight_error for row in found.rows)
        spoons = max(row.whole.spoon_error for row in found.rows)
        assert found.weight_error_percent == pytest.approx(weights * 100, abs=0.0501)
        assert found.spoon_error_percent == pytest.approx(spoons * 100, abs=0.0501)


def test_how_many_of_a_tin_a_row_is_for(batch: Batches) -> None:
    two, cups = batch(), batch(tins="24 standard cups", mix=["500 g butter"])
    mixed = batch(tins=["round 15 cm x 10 cm", "2 round 13 cm x 10 cm"])
    assert [row_count(made, tin("round 20 cm")) for made in (two, cups, mixed)] == [2, 1, 3]
    assert [row_count(made, tin("standard cups")) for made in (two, cups)] == [12, 12]
    assert row_count(two, tin("jumbo cups")) == 6


def test_cups_written_for_cups(batch: Batches) -> None:
    made = batch(tins="24 standard cups", mix=["500 g butter", "500 g caster sugar"], kind="cupcake")
    assert wanted_ml(made, tin("standard cups"), 36) == pytest.approx(made.batter_ml * 1.5)


def test_how_it_was_worked_out_names_what_went_in(batch: Batches, kitchen: Book, facts: Facts) -> None:
    worked = tin_table(batch(batter_depth="44 mm"), kitchen, facts).worked
    told = " ".join(inputs_of(worked))
    for words in ("2 × round 15 cm × 10 cm", "44 mm", "1555 ml", "1.5", "4 eggs", "8%", "5 g"):
        assert words in told, told
    assert all(source in facts.sources for source in worked.sources)
