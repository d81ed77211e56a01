"""The whole value: served portions are the sum of tiers, and random cakes are worked out or refused in words."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many
from tests.plans.cakes.conftest import BAKED, Made

from tinbook.loading import Loaded, load_book
from tinbook.models import CakeDesign, read_model
from tinbook.pages.spelling.sayings import formula_of, inputs_of
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.sizes import cake_sizes
from tinbook.plans.cakes.used import everything_used
from tinbook.plans.cakes.whole import portion_of, whole_cake, written_tins
from tinbook.plans.rules.cakes import cake_flaws

ROOT = Path(__file__).parents[3]
CHART = ROOT / "tests" / "data" / "portions_us_chart.csv"
THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm"}


def published(shape: str, *inches: int) -> int:
    """Portions of 1 by 2 in that the chart gives for a set."""
    lines = [line for line in CHART.read_text("utf-8").splitlines() if not line.startswith("#")]
    served = {(row["shape"], row["size_in"]): int(row["wedding_1x2"]) for row in csv.DictReader(lines)}
    return sum(served[shape, str(size)] for size in inches)


@every(("shape", "inches"), [("round", (10, 8, 6)), ("square", (10, 8, 6)), ("round", (12, 9, 6)), ("square", (12, 8))])
def test_a_set_serves_what_the_published_chart_gives(made: Made, shape: str, inches: tuple[int, ...]) -> None:
    """Within 5 % for sets without a tier under 15 cm, whose figures publications differ about most."""
    whole = made({**THREE, "tiers": [f"{shape} {size} in" for size in inches]})
    assert whole.serves == pytest.approx(published(shape, *inches), rel=0.05)


def test_served_is_the_sum_of_the_tiers_less_what_is_kept_back(made: Made) -> None:
    whole, kept = made({**THREE, "beside": "12 standard cups"}), made(THREE, keep_top=True)
    assert whole.serves == sum(tier.serves for tier in whole.every_tier) and whole.kept == 0
    assert kept.kept == kept.tiers[-1].serves and kept.serves == kept.totals.portions - kept.kept
    with pytest.raises(AskError, match="both cut and kept"):
        made({**THREE, "tiers": "20 cm"}, keep_top=True)


def test_a_portion_is_as_asked_or_as_the_cake_says(demo: Loaded, made: Made) -> None:
    whole = made({**THREE, "portion": "tea slice"})
    assert whole.portion.kind == "tea slice"
    assert portion_of(whole.design, demo.book, demo.facts, "finger").kind == "finger"
    assert portion_of(whole.design, demo.book, demo.facts, (30.0, 20.0)).short_mm == 20.0
    with pytest.raises(AskError, match="no portion called"):
        portion_of(whole.design, demo.book, demo.facts, "plank")


def test_the_demos_cakes_are_sound_and_say_how_they_are_worked_out(demo: Loaded) -> None:
    assert set(demo.book.cakes) >= {"lighthouse-cake", "estuary-wedding-cake"}
    for slug, design in demo.book.cakes.items():
        whole = whole_cake(slug, design, demo.book, demo.facts)
        assert whole.tins == written_tins(design) and whole.owned
        assert formula_of(whole.worked) and all(inputs_of(whole.worked))
        assert set(whole.worked.sources) <= set(demo.facts.sources)


def test_where_a_tier_stands(made: Made) -> None:
    whole = made({**THREE, "beside": "12 standard cups"})
    base, _, top, cups = whole.every_tier
    assert whole.level(base) is whole.stacked.levels[0] and whole.level(cups) is None
    assert whole.dowels(base) is whole.stacked.dowels[0] and whole.dowels(top) is whole.dowels(cups) is None


# Random cakes, sound or not, in the kitchen's book and in the public one.

WORDS = st.sampled_from([*BAKED, "cupcakes", "american-buttercream", "sugarpaste", "marzipan", "none", "driftwood", "yes",
                         "hull blue", "heron-for-the-side", "lighthouse-for-the-front", "line-a-tin", "dessert", "ring"])  # fmt: skip
SIZES = st.sampled_from(["25 cm", "20 cm", "15 cm", "5 cm", "60 cm", "square 20 cm", "heart 20 cm", "dome 15 cm",
                         "ball 15 cm", "number 1", "24 standard cups", "1 mini cups", "half sheet", "2 lb loaf", "10 cm x 3 cm",
                         "ring 23 cm, tube 7.5 cm", "roud 3", "3 round 20 cm", "petal 23 cm", "fluted ring 25 cm"])  # fmt: skip
LENGTHS = st.sampled_from(["1 mm", "3 cm", "10 cm", "40 cm", "9 m", "0", "none", "-3 cm"])
COUNTS = st.sampled_from(["0", "1", "2", "7", "20", "99", "many"])
KEYS = {"mixture": WORDS, "filling": WORDS, "coat": WORDS, "cover": WORDS, "colour": WORDS, "height": LENGTHS,
        "layers": COUNTS, "ribbon": WORDS, "border": st.sampled_from(["none", {"opening": "8 mm", "pitch": "14 mm",
        "stroke": "20 mm", "count": "99"}, {"opening": "8 mm", "pitch": "14 mm", "stroke": "20 mm"}])}  # fmt: skip
TIER = st.one_of(
    SIZES, st.fixed_dictionaries({"tier": SIZES}, optional={**KEYS, "on pillars": LENGTHS, "dummy": WORDS})
)
TIERS = st.one_of(SIZES, st.lists(TIER, max_size=4))
DECORATION = st.fixed_dictionaries(
    {"technique": WORDS},
    optional={
        "on": st.sampled_from(["top", "side", "board", "moon"]),
        "tier": COUNTS,
        "count": COUNTS,
        "sized for": SIZES,
    },
)
ANY = st.fixed_dictionaries(
    {"name": st.just("Tide cake"), "tiers": TIERS},
    optional={
        **KEYS,
        "mixture": st.sampled_from(BAKED),
        "beside": TIERS,
        "board": st.one_of(
            LENGTHS,
            st.fixed_dictionaries({}, optional={"size": LENGTHS, "covered": WORDS, "colour": WORDS, "wider": WORDS}),
        ),
        "decorations": st.lists(DECORATION, max_size=2),
        "portion": WORDS,
        "sizes": st.dictionaries(st.sampled_from(["small", "written", "+1"]), TIERS, max_size=2),
    },
)


@pytest.fixture(scope="module")
def both(demo: Loaded) -> tuple[Loaded, Loaded]:
    """The demo in the kitchen, and as a public site has it."""
    return demo, load_book(ROOT / "recipes", kitchen=False)


@given(data=ANY)
@many(2000)
def test_a_random_cake_is_worked_out_or_told_what_is_wrong(both: tuple[Loaded, Loaded], data: dict[str, Any]) -> None:
    for loaded in both:
        book, facts = loaded.book, loaded.facts
        design, flaws = read_model(CakeDesign, data, "a cake", book.house.spoons)
        if design is None:
            assert flaws
            continue
        told = cake_flaws(design, book, facts)
        assert all(flaw.message and flaw.hint and flaw.path for flaw in told)
        if not told:
            whole = whole_cake("tide-cake", design, book, facts)
            assert whole.serves >= 0 and everything_used(whole, book, facts).ingredients is not None
            assert cake_sizes(design, book, facts).written.tins == whole.tins
