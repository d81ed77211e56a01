"""What a cake weighs: parts sum to the whole, against the printed ingredients, and against published densities."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from tests.every import check_every, many
from tests.plans.cakes.conftest import Design, Made, cakes

from tinbook.loading import Loaded
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.cakes.totals import coat_g, filling_g
from tinbook.plans.cakes.weights import CakeWeights, Heft, cake_weights, centre_mm, summed
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.rules.cakes import cake_flaws

DATA = Path(__file__).parents[2] / "data"
THREE = {
    "tiers": ["25 cm", "20 cm", "15 cm"],
    "mixture": "creamed-butter-sponge",
    "height": "10 cm",
    "cover": "sugarpaste",
}
BAKED = {
    "creamed-butter-sponge": "baked Victoria sandwich",
    "madeira-cake": "baked Madeira / pound",
    "mud-cake": "baked chocolate mud cake",
    "carrot-cake": "baked carrot cake (oil)",
    "rich-fruit-cake": "rich fruit cake",
    "whisked-sponge": "baked whisked sponge / genoise",
}
"""The rows of tests/data/densities_finishes.csv: that of rich fruit cake is derived from the cooked weights of a
published chart (cakeswebake), the others are from memory."""
FROM_MEMORY = 0.1
"""How far those rows may be out, as their file says at its head."""


def g_per_ml(item: str) -> tuple[float, float]:
    """What is published for it, from the least to the most."""
    with (DATA / "densities_finishes.csv").open(encoding="utf-8") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        row = next(row for row in rows if row["item"] == item)
    slack = FROM_MEMORY if row["kind"] == "from memory" else 0.0
    return float(row["g_per_ml_low"]) * (1.0 - slack), float(row["g_per_ml_high"]) * (1.0 + slack)


def weighed(cake: WholeCake, demo: Loaded) -> CakeWeights:
    return cake_weights(cake, demo.book, demo.facts)


def holds(cake: WholeCake, demo: Loaded) -> None:
    found = weighed(cake, demo)
    every = [*found.tiers, *found.beside]
    assert len(every) == len(cake.every_tier)
    for each in every:
        assert each.whole.mass_g == pytest.approx(sum(part.mass_g for part in each.parts.values()))
        for part in (*each.parts.values(), each.whole):
            assert 0.0 <= part.low_g <= part.mass_g + 1e-9 and part.mass_g <= part.high_g + 1e-9
    kinds = sum(part.mass_g for part in found.by_kind.values())
    on_board = sum(part.mass_g for part in found.board.values())
    assert found.whole.mass_g == pytest.approx(kinds)
    assert found.whole.mass_g == pytest.approx(sum(each.whole.mass_g for each in found.tiers) + on_board)
    for place, each in enumerate(found.tiers):
        assert each.carries.mass_g == pytest.approx(sum(upper.whole.mass_g for upper in found.tiers[place + 1 :]))
    figures = sum(figure.parts_g for figure in cake.figures)
    assert found.by_kind["decorations"].mass_g == pytest.approx(figures)


@many(60)
@given(data=cakes())
def test_parts_sum_to_the_whole(data: dict[str, Any], demo: Loaded, design: Design, bakes: Bakes) -> None:
    found = design(data)
    if not cake_flaws(found, demo.book, demo.facts):
        holds(whole_cake("tide-cake", found, demo.book, demo.facts, bakes=bakes), demo)


def test_every_cake_of_the_demo(demo: Loaded, bakes: Bakes) -> None:
    def check(slug: str) -> None:
        holds(whole_cake(slug, demo.book.cakes[slug], demo.book, demo.facts, bakes=bakes), demo)

    check_every(demo.book.cakes, check)


@pytest.mark.parametrize("mixture", ["creamed-butter-sponge", "madeira-cake", "mud-cake", "rich-fruit-cake"])
def test_a_tier_weighs_its_printed_ingredients_less_the_printed_losses(made: Made, demo: Loaded, mixture: str) -> None:
    """Within 3 %: what the page prints as weighed out, less what it says goes off in the oven and is levelled off; the
    printed filling and coats less what it says stays in the bowl; paste as it lies on the cake."""
    cake = made({**THREE, "mixture": mixture, "coat": "dark-ganache", "filling": "dark-ganache"})
    for tier, weight in zip(cake.tiers, weighed(cake, demo).tiers, strict=True):
        assert tier.baked is not None and tier.baked.stack is not None and tier.covered is not None
        batch, settled, stack = tier.baked.batch, tier.asked.settled, tier.baked.stack
        spare = stack.layers / (stack.cut * tier.baked.fit.needed)
        sponge = tier.baked.whole.mass_shown_g * (1.0 - batch.loss) * (1.0 - settled["level_off"]) * spare
        stays = 1.0 - settled["stays_in_the_bowl"]
        soft = (filling_g(tier)[1] + coat_g(tier)[1]) * stays
        paste = tier.covered.paste.net_g if tier.covered.paste else 0.0
        whole = sum(weight.parts[kind].mass_g for kind in weight.parts.keys() & {"cake", "filling", "coat", "paste"})
        assert whole == pytest.approx(sponge + soft + paste, rel=0.03)


@pytest.mark.parametrize("mixture", list(BAKED))
def test_what_is_baked_is_as_dense_as_such_cakes_are(made: Made, demo: Loaded, mixture: str) -> None:
    """Grams of the levelled layers over the room they take."""
    cake = made({"tiers": "20 cm", "mixture": mixture, "cover": "none"})
    (tier,) = cake.tiers
    assert tier.baked is not None and tier.baked.stack is not None
    stack = tier.baked.stack
    room_ml = tier.asked.tin.area_mm2 * stack.layer_mm * stack.layers / 1000.0
    low, high = g_per_ml(BAKED[mixture])
    assert low <= tier.cake_g / room_ml <= high


def test_paste_and_foam(made: Made, demo: Loaded) -> None:
    """Paste over its own room; a dummy weighs next to nothing."""
    cake = made(THREE)
    tier, weight = cake.tiers[1], weighed(cake, demo).tiers[1]
    assert tier.cake is not None
    under = tier.asked.settled.coats_mm
    low, high = g_per_ml("sugarpaste / rolled fondant")
    room_ml = tier.cake.surface_mm2(under) * tier.asked.settled["paste"] / 1000.0
    assert low <= weight.parts["paste"].mass_g / room_ml <= high
    foam = made({**THREE, "tiers": ["25 cm", {"tier": "20 cm", "dummy": "yes"}, "15 cm"]})
    assert weighed(foam, demo).tiers[1].parts["cake"].mass_g == pytest.approx(
        0.02 * 3.14159 * 100**2 * 100 / 1000, rel=0.01
    )


def test_the_centre_of_the_lighthouse_by_hand(made: Made) -> None:
    """Solids about their own middles by the handbook, each by its weight; the tower's is 30.7 mm up of its 70."""
    (figure,) = made(
        {"tiers": "20 cm", "mixture": "madeira-cake", "decorations": [{"technique": "lighthouse-for-the-front"}]}
    ).figures
    up = centre_mm(figure)
    assert up is not None
    rock = next(part for part in figure.parts.parts if part.name == "rock")
    tower = next(part for part in figure.parts.parts if part.name == "tower")
    assert rock.thick_mm / 2 < up < rock.thick_mm + tower.height_mm / 2
    two = tower.total_g * (rock.thick_mm + 30.7) + rock.total_g * rock.thick_mm * 0.45
    assert up == pytest.approx(two / (tower.total_g + rock.total_g), abs=6.0)


def test_a_coiled_rope_weighs_as_much_as_its_strands(made: Made) -> None:
    """Post, cap and rope by their own middles, the rope's weight shared by its turns and its coil."""
    (figure,) = made(
        {"tiers": "20 cm", "mixture": "madeira-cake", "decorations": [{"technique": "coil-of-rope"}]}
    ).figures
    post, cap, rope = figure.parts.parts
    moments = post.total_g * post.height_mm * 0.475 + cap.total_g * (post.height_mm + cap.thick_mm * 0.45)
    moments += rope.total_g * (5.0 + 15.0 + 5.0) / 3.0
    assert centre_mm(figure) == pytest.approx(moments / figure.parts_g, rel=0.03)


def test_sums_of_nothing() -> None:
    assert summed(()) == Heft() and summed([Heft(1, 1, 2), Heft(2, 1, 3)]) == Heft(3, 2, 5)
