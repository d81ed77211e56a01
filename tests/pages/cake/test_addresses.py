"""Ways from a cake: every one set, every one with the way back in it."""

from __future__ import annotations

from urllib.parse import parse_qs

from tests.every import every
from tests.plans.cakes.conftest import Made

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.addresses import (
    Way,
    batch_at_bench,
    cake_address,
    called,
    cut_plan,
    figure_at_size,
    tier_at_bench,
    used_address,
)
from tinbook.tins import Tin, read_tin

CAKE = {"tiers": ["25 cm", "20 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def asked(way: Way) -> dict[str, str]:
    assert way.anchor.startswith("for?")
    return {name: values[0] for name, values in parse_qs(way.anchor.removeprefix("for?")).items()}


def test_a_tier_leads_to_its_bench_set_to_tin_count_share_and_time(made: Made) -> None:
    tier = made(CAKE).tiers[1]
    way = tier_at_bench("tide-cake", "+1", tier)
    assert way.address == "mixtures/madeira-cake" and tier.baked and tier.baked.time
    said = asked(way)
    assert (said["tin"], said["count"], said["cake"], said["size"]) == ("round 20 cm", "2", "tide-cake", "+1")
    assert abs(float(said["times"]) - tier.baked.exact.factor) < 1e-6
    assert said["look"] == f"{tier.baked.time.check_shown_min:g}"
    assert said["done"] == f"{tier.baked.time.low_shown_min:g}–{tier.baked.time.high_shown_min:g}"


def test_a_filling_leads_to_its_bench_by_weight_and_a_decoration_to_its_cake(made: Made) -> None:
    assert asked(batch_at_bench("dark-ganache", "tide-cake", "written", 1250.0))["grams"] == "1250"
    cake = made({**CAKE, "decorations": [{"technique": "heron-for-the-side", "on": "side", "tier": "2", "count": "3"}]})
    way = figure_at_size("tide-cake", "written", cake.figures[0])
    assert way.address == "techniques/heron-for-the-side"
    assert (asked(way)["tin"], asked(way)["people"]) == ("round 20 cm", "3")


def test_a_tier_leads_to_the_plan_it_is_cut_by(desk: Desk) -> None:
    assert cut_plan(Tin(shape="round", sizes_mm=(200.0,)), desk) == Way("portions/round", "round-20-cm")
    large = cut_plan(Tin(shape="round", sizes_mm=(300.0,)), desk)
    assert large and large.anchor == "round-30-cm" and large.address.startswith("portions/round/")
    assert cut_plan(Tin(shape="round", sizes_mm=(213.0,)), desk) is None
    assert (cake_address("a"), used_address("a")) == ("cakes/a", "cakes/a/used")


@every(
    ("tins", "said"),
    [
        (["round 25 cm", "round 20 cm"], ("25 + 20", "cm round")),
        (["rectangle 23 cm x 33 cm"], ("23 × 33", "cm rectangle")),
        (["square 25 cm", "round 20 cm"], ("square 25 cm + round 20 cm", "")),
    ],
)
def test_tins_alike_are_called_by_their_sizes(tins: list[str], said: tuple[str, str]) -> None:
    assert called(read_tin(each)[1] for each in tins) == said
