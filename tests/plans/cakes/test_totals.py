"""Sums lose and double nothing: exact ones sum exact figures, printed ones the printed rows."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import assume, given
from tests.every import many
from tests.plans.cakes.conftest import Design, Made, cakes

from tinbook.loading import Loaded
from tinbook.plans.cakes.totals import coat_g, filling_g, over_of_packs_g, packs_of, tier_said
from tinbook.plans.cakes.used import ingredients_used
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.rules.cakes import cake_flaws

THREE = {"tiers": [{"tier": "25 cm", "mixture": "ginger-sponge"}, "20 cm", "15 cm"], "mixture": "madeira-cake",
         "height": "10 cm", "colour": "gull white", "board": {"colour": "hull blue"},
         "decorations": [{"technique": "heron-for-the-side", "on": "side", "tier": "2", "count": "2"}]}  # fmt: skip


@given(data=cakes())
@many(1000)
def test_every_total_sums_its_rows(demo: Loaded, design: Design, data: dict[str, Any]) -> None:
    cake = design(data)
    assume(not cake_flaws(cake, demo.book, demo.facts))
    whole = whole_cake("tide-cake", cake, demo.book, demo.facts)
    tiers, total = whole.every_tier, whole.totals
    assert total.filling_g == pytest.approx(sum(filling_g(tier)[0] for tier in tiers))
    assert total.filling_shown_g == sum(filling_g(tier)[1] for tier in tiers)
    assert total.coat_g == pytest.approx(sum(coat_g(tier)[0] for tier in tiers))
    assert total.coat_shown_g == sum(coat_g(tier)[1] for tier in tiers)
    assert total.portions == whole.serves == sum(tier.serves for tier in tiers)
    assert total.eggs == sum(tier.baked.eggs for tier in tiers if tier.baked)
    # every gram made for a tier is in one mixture's total, once; of an icing that is piped, one bagful
    rows = [
        (slug, row)
        for tier in tiers
        if tier.covered and tier.table
        for slug, row in zip(tier.table.mixtures, tier.covered.made, strict=True)
        if row.made_g
    ]
    bag_g = {slug: row.bag_g for slug, row in rows if row.bag_g}
    made_g = sum(row.made_g - row.bag_g for _, row in rows) + sum(bag_g.values())
    assert sum(each.made_g for each in whole.mixtures) == pytest.approx(made_g)
    shown_g, spared = sum(row.made_shown_g for _, row in rows), sum(row.bag_g for _, row in rows) - sum(bag_g.values())
    assert sum(each.made_shown_g for each in whole.mixtures) == pytest.approx(shown_g - spared, abs=5.0 * len(rows))
    rolled_g = sum(tier.covered.paste.made_g for tier in tiers if tier.covered and tier.covered.paste)
    assert sum(each.mass_g for each in whole.pastes) == pytest.approx(rolled_g + whole.stacked.paste_g)
    for each in whole.mixtures:
        assert each.batches * each.batch.makes_g == pytest.approx(each.made_g + each.over_g)
        assert each.batches - 1 < each.factor <= each.batches + 1e-9


def test_paste_is_told_by_colour_with_what_it_is_for(made: Made) -> None:
    whole = made(THREE)
    told = {(each.paste, each.colour and each.colour.name): len(each.amounts) for each in whole.pastes}
    assert told[("sugarpaste", "gull white")] == 3 and told[("sugarpaste", "hull blue")] == 1
    parts = [each for each in whole.pastes if each.paste == "Boatshed modelling paste"]
    needs = {need.colour.name: need.mass_g for need in whole.figures[0].parts.colours if need.colour}
    assert {each.colour.name: each.mass_g for each in parts if each.colour} == pytest.approx(needs)


def test_pots_are_for_all_of_a_colour(made: Made) -> None:
    """2.4 g of red and 0.1 g of brown go into 100 g of lamp red."""
    whole = made({"tiers": "20 cm", "mixture": "madeira-cake", "colour": "lamp red", "board": {"covered": "no"}})
    (red,) = whole.pastes
    assert [(shade, grams) for _, shade, grams in red.pots] == [
        ("poppy red", pytest.approx(0.024 * red.mass_g)),
        ("chestnut brown", pytest.approx(0.001 * red.mass_g)),
    ]


def test_bought_paste_comes_in_packs(made: Made) -> None:
    white = made(THREE).pastes[0]
    packs = packs_of(white)
    assert packs and sum(count * size for count, size in packs) >= white.mass_g


def test_a_mixture_for_several_tiers_is_one_total(made: Made) -> None:
    (icing,) = made(THREE).mixtures
    assert icing.batch.slug == "american-buttercream"
    assert [amount.what.figures[0][1] for amount in icing.amounts] == [1, 2, 3]


def test_where_a_tier_is_is_said(made: Made) -> None:
    whole = made({**THREE, "beside": "12 standard cups"})
    assert [tier_said(tier, 3).key for tier in whole.every_tier] == [*["tier_of_cake"] * 3, "beside_the_cake"]


def test_what_is_over_of_batches_and_of_packs(made: Made) -> None:
    """Whole batches and packs, less what is made: never less than nothing, never a whole one."""
    cake = made(
        {"tiers": ["25 cm", "20 cm"], "mixture": "madeira-cake", "cover": "sugarpaste", "board": {"covered": "no"}}
    )
    for total in cake.mixtures:
        assert 0.0 <= total.over_g < total.batch.makes_g
        assert total.over_shown_g == pytest.approx(total.batches * total.batch.makes_g - total.made_g, abs=2.5)
    (paste,) = cake.pastes
    bought = sum(count * mass_g for count, mass_g in packs_of(paste))
    assert over_of_packs_g(paste) == pytest.approx(bought - paste.mass_g, abs=2.5) and bought >= paste.mass_g


def test_icing_for_cups_is_weighed_with_the_rest(made: Made, demo: Loaded) -> None:
    """By hand: 36 cups at 35 g are 1260 g; of what is made 5 % stays in the bowl (the fact, beside its source), and the
    one bagful there is has been counted for the cake. On fairy cups, 65 mm across, a swirl takes (65 / 70)² of what
    it does on a standard one: common practice, 35 g of 25 to 50."""
    cups = {"tier": "36 standard cups", "mixture": "cupcakes", "icing": "lemon-buttercream"}
    plain = {"tiers": "15 cm", "mixture": "madeira-cake", "coat": "lemon-buttercream", "filling": "lemon-buttercream",
             "cover": "none", "height": "10 cm"}  # fmt: skip
    alone = made({**plain, "beside": [{"tier": "36 standard cups", "mixture": "cupcakes"}]})
    whole = made({**plain, "beside": [{**cups, "icing each": "35 g"}]})
    (before,), (after,) = alone.mixtures, whole.mixtures
    bowl = demo.facts.numbers["stays in the bowl"].value
    assert after.made_g - before.made_g == pytest.approx(36 * 35.0 / (1.0 - bowl))
    assert coat_g(whole.beside[0]) == (pytest.approx(1260.0), 1260.0)
    assert whole.totals.coat_g - alone.totals.coat_g == pytest.approx(1260.0)
    assert whole.beside[0].weight_g - alone.beside[0].weight_g == pytest.approx(1260.0)
    used = {each.name: each.mass_g for each in ingredients_used(whole, demo.book, demo.facts)}
    less = {each.name: each.mass_g for each in ingredients_used(alone, demo.book, demo.facts)}
    grown = sum(used.values()) - sum(less.values())
    assert grown == pytest.approx((after.made_g - before.made_g) * sum(
        line.mass_g for line in after.batch.ingredients) / after.batch.makes_g)  # fmt: skip
    fairy = made({**plain, "beside": [{**cups, "tier": "24 fairy cups"}]}).beside[0].icing
    assert fairy is not None
    told = (fairy.each_g, fairy.low_g, fairy.high_g)
    assert told == pytest.approx([figure * (65.0 / 70.0) ** 2 for figure in (35.0, 25.0, 50.0)])
    heft = cake_weights(made({**plain, "beside": [cups]}), demo.book, demo.facts).beside[0].parts["coat"]
    assert (heft.low_g, heft.mass_g, heft.high_g) == pytest.approx((36 * 25.0, 36 * 35.0, 36 * 50.0))


def test_what_is_only_in_the_icing_of_cups_is_among_the_allergens(made: Made) -> None:
    plain = {"tiers": "15 cm", "mixture": "madeira-cake", "coat": "none", "filling": "none", "cover": "none"}
    cups = {"tier": "12 standard cups", "mixture": "cupcakes", "icing": "royal-icing"}
    bare = made({**plain, "beside": [{"tier": "12 standard cups", "mixture": "cupcakes"}]})
    iced = made({**plain, "beside": [cups]})
    named = {each for allergen in iced.allergens.contains for each in allergen.ingredients}
    assert named - {each for allergen in bare.allergens.contains for each in allergen.ingredients}
    assert len(iced.cautions) >= len(bare.cautions)


SHELLS = {"marks": "shells", "nozzle": "open star", "opening": "8 mm", "pitch": "14 mm", "stroke": "20 mm"}
LOOPS = {"marks": "loops", "nozzle": "round", "opening": "4 mm", "pitch": "15 mm", "stroke": "39 mm"}
CUPS = {"tier": "12 standard cups", "mixture": "cupcakes", "icing": "lemon-buttercream", "icing each": "35 g"}


@pytest.mark.parametrize(
    ("tiers", "beside", "bags"),
    [
        (["20 cm", "15 cm"], [], 1),
        ([{"tier": "20 cm", "border": SHELLS}, {"tier": "15 cm", "border": LOOPS}], [], 2),
        ([{"tier": "20 cm", "border": "none"}, {"tier": "15 cm", "border": LOOPS}], [CUPS], 1),
        ([{"tier": "20 cm", "border": LOOPS}, {"tier": "15 cm", "border": "none"}], [CUPS], 1),
        ([{"tier": "20 cm", "colour": "tide blue"}, {"tier": "15 cm", "colour": "gull white"}], [], 2),
        ([{"tier": "20 cm", "colour": "tide blue", "cover": "sugarpaste"}, {"tier": "15 cm", "colour": "tide blue"}], [], 2),
        ("20 cm", [CUPS, {**CUPS, "icing": "meringue-buttercream"}], 2),
    ],
)  # fmt: skip
def test_an_icing_in_one_colour_from_one_nozzle_leaves_one_bagful(
    made: Made, demo: Loaded, tiers: Any, beside: list[dict[str, str]], bags: int
) -> None:
    """By hand: what is on the cake, with what stays in the bowl, and a bagful of 240 ml (the fact, beside its source)
    for each nozzle and each colour."""
    data = {"tiers": tiers, "beside": beside, "mixture": "madeira-cake", "height": "10 cm", "cover": "none",
            "coat": "lemon-buttercream", "filling": "lemon-buttercream"}  # fmt: skip
    whole = made(data)
    bowl, bag_ml = (demo.facts.numbers[name].value for name in ("stays in the bowl", "stays in the bag"))
    on_it_g = whole.totals.filling_g + whole.totals.coat_g
    over_g = sum(each.made_g for each in whole.mixtures) - on_it_g / (1.0 - bowl)
    of = [each.batch.kind.gravity.typical for each in whole.mixtures]
    assert over_g == pytest.approx(bag_ml * (sum(of) if len(of) > 1 else bags * of[0]))
    # the first to take it has the bagful in its printed amount
    assert all(each.made_shown_g >= each.made_g for each in whole.mixtures)
