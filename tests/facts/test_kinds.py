"""Kinds of mixture against tests/data/densities_finishes.csv, which names the source of each row.

And against the weight, which must be the same in the batter as in the cake and the steam.
"""

from __future__ import annotations

import pytest

FINISHES = {
    "buttercream": "American buttercream (1:2 butter:icing sugar, beaten)",
    "meringue buttercream": "Swiss or Italian meringue buttercream",
    "sugarpaste": "sugarpaste / rolled fondant",
    "modelling paste": "sugarpaste / rolled fondant",
    "marzipan": "marzipan (23-50 % almond)",
    "royal icing": "royal icing (piping consistency beaten)",
    "curd": "lemon curd",
}
RISES = {
    "whisked": "volume gain batter->baked: whisked sponge",
    "creamed": "volume gain: creamed cake (Victoria, US layer)",
    "madeira": "volume gain: Madeira/pound",
    "mud": "volume gain: mud cake",
    "rich fruit": "volume gain: rich fruit",
}
LOSSES = {
    "creamed": "bake weight loss: layer cake conventional oven",
    "madeira": "bake weight loss: Madeira/pound",
    "mud": "bake weight loss: mud cake",
    "rich fruit": "bake weight loss: rich fruit",
}
BAKED = {
    "creamed": "baked Victoria sandwich",
    "madeira": "baked Madeira / pound",
    "mud": "baked chocolate mud cake",
    "rich fruit": "rich fruit cake",
    "whisked": "baked whisked sponge / genoise",
    "oil": "baked carrot cake (oil)",
}
# Low and high, from memory; whisked, creamed, Madeira and oil in pairs, as the trade gives them.
BATTERS = {"whisked": (0.4, 0.5), "creamed": (0.8, 0.9), "madeira": (0.9, 1.0), "oil": (0.9, 1.0)}
CAKES = ["creamed", "madeira", "mud", "rich fruit", "whisked", "oil", "cupcake"]


@pytest.fixture
def printed(table):
    def numbers(name: str) -> tuple[float, float, float]:
        (row,) = [row for row in table("densities_finishes") if row["item"] == name]
        cells = [row[f"g_per_ml_{column}"] for column in ("low", "typical", "high")]
        low, typical, high = (float(cell.removesuffix(" %")) / (100 if cell.endswith("%") else 1) for cell in cells)
        return low, typical, high

    return numbers


@pytest.mark.parametrize("key", FINISHES)
def test_finishes_are_those_of_the_table(facts, printed, key):
    gravity = facts.kinds[key].gravity
    assert (gravity.low, gravity.typical, gravity.high) == printed(FINISHES[key])
    assert gravity.kind == "from memory"


def test_ganache_spans_both_of_the_tables(facts, printed):
    gravity = facts.kinds["ganache"].gravity
    even, coating = printed("ganache 1:1 unwhipped"), printed("ganache 2:1 or 3:1 (dark/white coating)")
    assert (gravity.low, gravity.typical, gravity.high) == (even[0], coating[1], coating[2])


@pytest.mark.parametrize("key", RISES)
def test_rises_are_those_of_the_table(facts, printed, key):
    rise = facts.kinds[key].rise
    assert (rise.low, rise.typical, rise.high) == printed(RISES[key])


@pytest.mark.parametrize("key", LOSSES)
def test_losses_are_those_of_the_table(facts, printed, key):
    loss = facts.kinds[key].loss
    low, typical, high = printed(LOSSES[key])
    assert (loss.low, loss.high) == pytest.approx((low, high))
    assert loss.typical == pytest.approx(typical, abs=0.005)


@pytest.mark.parametrize("key", BATTERS)
def test_batters_weigh_what_the_trade_says(facts, key):
    gravity = facts.kinds[key].gravity
    assert (gravity.low, gravity.high) == BATTERS[key]
    assert gravity.kind == "from memory"


@pytest.mark.parametrize("key", BAKED)
def test_weight_is_kept(facts, printed, key):
    """Batter less steam weighs what the cake weighs: gravity x (1 - loss) = density of the cake x rise.

    The spans of the two sides, each from its own row, must meet. The sides of a tin go straight up, so
    rise in depth is gain in volume.
    """
    kind, (low, _, high) = facts.kinds[key], printed(BAKED[key])
    batter = kind.gravity.low * (1 - kind.loss.high), kind.gravity.high * (1 - kind.loss.low)
    cake = low * kind.rise.low, high * kind.rise.high
    assert max(batter[0], cake[0]) <= min(batter[1], cake[1])


def test_oil_cake_rises_by_what_its_weight_says(facts, printed):
    kind, (_, baked, _) = facts.kinds["oil"], printed("baked carrot cake (oil)")
    rise = kind.gravity.typical * (1 - kind.loss.typical) / baked
    assert kind.rise.typical == pytest.approx(rise, abs=0.05)


def test_syrup_is_half_sugar(facts, gnu_units):
    """GNU units: the density of a sugar solution by its share of sugar, the table of the sugar trade."""
    gravity = facts.kinds["syrup"].gravity
    quarter, half, two_thirds = gnu_units([(f"brix({share})", "g/ml") for share in (25, 50, 66.7)])
    assert gravity.typical == pytest.approx(half, rel=0.002)
    assert (gravity.low, gravity.high) == pytest.approx((quarter, two_thirds), rel=0.01)


def test_jam_is_the_usdas_tablespoon(facts):
    """USDA SR28 19297: 20 g to the tablespoon of 14.787 ml."""
    assert facts.kinds["jam"].gravity.typical == pytest.approx(20 / 14.78676, abs=6e-5)
    assert facts.kinds["jam"].gravity.typical == facts.densities["jam"].value


def test_only_cakes_rise_and_lose(facts):
    for key, kind in facts.kinds.items():
        assert (kind.group == "cake") == (key in CAKES)
        assert (kind.rise is not None) == (kind.loss is not None) == (key in CAKES)
    assert len(facts.kinds) == 18


def test_a_kind_answers_for_its_gravity(facts):
    creamed = facts.kinds["creamed"]
    assert (creamed.source, creamed.kind) == ("from memory", "from memory")
    assert [one.source for one in creamed.ranges] == ["from memory", "fill chart", "bake loss", "fill chart"]
