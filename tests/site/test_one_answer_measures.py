"""One question, one answer: heats, eggs, cups, spoons, ounces, lengths and tins, each asked at several doors."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from tests.every import every

DIAL, SET = "Oven by the dial", "What to set on the dial"
HOLDS, FACTORS = "What each tin holds", "Factors between our tins"
SPONGE = "creamed-butter-sponge"
DEEP = "round 20 cm x 7.5 cm"


def printed_mark(d: Any, celsius: float) -> float:
    """The mark for which printed tables have that heat, as the table of gas marks says."""
    (mark,) = [row["gas_mark"] for row in d.rows("oven") if row["print_low_c"] <= celsius <= row["print_high_c"]]
    return float(mark)


USUAL = 1
"""Which of the depths that tins at a glance is asked for is the usual one."""


def tin(d: Any, name: str) -> Any:
    """What tins at a glance hands its script of a tin."""
    told = d.data("tins", "tb-tins")
    return next(dict(zip(told["heads"], row, strict=True)) for row in told["rows"] if row[0] == name)


def owned(d: Any, *words: str) -> bool:
    (row,) = d.rows(*words)
    return bool(row["owned"])


ASKED: dict[str, tuple[Callable[[Any], object], ...]] = {
    "which gas mark is 170 °C": (
        lambda d: d.row("heat", conventional_c=170.0)["gas_mark"],
        lambda d: printed_mark(d, 170.0),
        lambda d: d.number("measures", DIAL, "170", "Nearest gas mark"),
        lambda d: d.number("oven", SET, "170", "or gas mark"),
    ),
    "which gas mark is 180 °C": (
        lambda d: d.row("heat", conventional_c=180.0)["gas_mark"],
        lambda d: printed_mark(d, 180.0),
        lambda d: d.number("measures", DIAL, "180", "Nearest gas mark"),
        lambda d: d.number("oven", SET, "180", "or gas mark"),
    ),
    "what is 160 °C in a fan oven": (
        lambda d: d.row("heat", conventional_c=160.0)["fan_c"],
        lambda d: d.number("measures", DIAL, "160", "Fan"),
        lambda d: d.number("oven", SET, "160", "or, if it says fan"),
    ),
    "what is 150 °C in °F": (
        lambda d: d.row("heat", conventional_c=150.0)["fahrenheit_f"],
        lambda d: d.number("measures", DIAL, "150", "Fahrenheit"),
        lambda d: d.number("oven", SET, "150", "or says|°F"),
    ),
    "what is gas mark 4 in °C": (
        lambda d: d.row("oven", gas_mark=4.0)["conventional_low_c"],
        lambda d: d.number("measures", "Oven by gas mark", "4", "Conventional"),
        lambda d: next(row["conventional_c"] for row in d.rows("heat") if row["gas_mark"] == 4.0),
    ),
    "what is set here for 160 °C": (
        lambda d: d.number("oven", SET, "160", "Set here"),
        lambda d: d.figure(d.data(f"mixtures/{SPONGE}", "tb-recipe")["bake"]["oven"]),
        lambda d: d.figure(d.words(f"mixtures/{SPONGE}").split("at 160 °C (", 1)[1]),
        lambda d: d.figure(re.split('class="tb-dial">', d.page(f"mixtures/{SPONGE}"))[1]),
    ),
    "how much is a UK large egg without its shell": (
        lambda d: d.row("eggs", egg_class="UK large")["shelled_shown_g"],
        lambda d: d.row("bowl", eggs=1)["UK_large_g"],
        lambda d: d.row("egg-parts", count=1)["whole_g"],
        lambda d: d.number("measures", "Whites and yolks of our eggs", "1", "Whole"),
        lambda d: d.number("measures", "Eggs in the bowl", "1", "UK large"),
    ),
    "what do five eggs weigh to the last gram": (
        lambda d: d.row("bowl", eggs=5)["UK_large_exact_g"],
        lambda d: d.rows("scaled", "--of", SPONGE)[0]["egg_exact_g"],
        lambda d: next(line["mass_g"] for line in d.data(f"mixtures/{SPONGE}", "tb-recipe")["lines"] if line["name"] == "egg"),
    ),
    "how much is the white of an egg": (
        lambda d: d.row("egg-parts", count=1)["white_g"],
        lambda d: d.number("measures", "Whites and yolks of our eggs", "1", "Whites"),
    ),
    "what does a cup of caster sugar weigh": (
        lambda d: d.row("cups", ingredient="caster sugar")["cup_g"],
        lambda d: d.row("weights", ingredient="caster sugar", measure="US cup")["shown_g"],
        lambda d: d.number("measures", "Ingredients by the cup", "Caster sugar", "US cup"),
    ),
    "what does a tablespoon of jam weigh": (
        lambda d: d.row("cups", ingredient="apricot jam")["tablespoon_g"],
        lambda d: d.number("measures", "Ingredients by the cup", "Apricot jam", "Tablespoon"),
        lambda d: d.row("weights", ingredient="apricot jam", measure="metric tablespoon")["shown_g"],
    ),
    "how much does a cup hold": (
        lambda d: d.row("spoons", measure="US cup")["volume_ml"],
        lambda d: round(d.data(f"mixtures/{SPONGE}", "tb-recipe")["cup_ml"], 6),
        lambda d: round(d.data("techniques/rope-edge", "tb-kit")["cup_ml"], 6),
    ),
    "how many grams are eight ounces": (
        lambda d: d.row("ounces", ounces_oz=8.0)["shown_g"],
        lambda d: d.number("measures", "Ounces to grams", "8 oz", "Exact"),
        lambda d: d.to(1.0, 8.0 * d.data(f"mixtures/{SPONGE}", "tb-recipe")["g_per_oz"]),
    ),
    "how many mm are eight inches": (
        lambda d: d.row("lengths", inches_in=8.0)["shown_mm"],
        lambda d: d.number("measures", "Inches and centimetres", "8", "Exact"),
    ),
    "which tin is eight inches": (
        lambda d: d.row("lengths", inches_in=8.0)["trade_mm"] / 10.0,
        lambda d: d.number("measures", "Inches and centimetres", "8", "Tin sold as"),
        lambda d: d.figure(d.row("sizes", tin_by_inches="round 8 in")["tin"]),
    ),
    "plain flour for 100 g of self-raising": (
        lambda d: d.row("flour", self_raising_g=100.0)["plain_g"],
        lambda d: d.row("swaps", swap="self-raising from plain", instead="self-raising flour", amount_g=100.0, part="plain flour")["shown_g"],
        lambda d: d.number("measures", "Self-raising flour from plain", "100", "Plain flour"),
    ),
    "what does a round 20 cm tin hold": (
        lambda d: d.to(0.01, d.row("sizes", tin="round 20 cm")["brim_ml"] / 1000.0),
        lambda d: d.number("tins/all", HOLDS, "round 20 cm", "Holds"),
        lambda d: d.figure(tin(d, "round 20 cm")["brim"]),
    ),
    "what does a measured tin hold": (
        lambda d: d.row("sizes", tin="round 23 cm")["brim_ml"] / 1000.0,
        lambda d: d.number("tins/all", HOLDS, "round 23 cm", "Holds"),
        lambda d: d.figure(tin(d, "round 23 cm")["brim"]),
    ),
    "how far is it round a 20 cm tin": (
        lambda d: d.to(0.5, d.row("sizes", tin="round 20 cm")["perimeter_mm"] / 10.0),
        lambda d: d.number("tins/all", HOLDS, "round 20 cm", "Round the rim"),
    ),
    "how much more goes into a 25 cm than into a 20 cm": (
        lambda d: d.to(0.01, d.row("factors", "--tin", "round 20 cm", to="round 25 cm")["factor"]),
        lambda d: d.number("tins", FACTORS, "round 20 cm", "round 25 cm"),
        lambda d: d.to(0.01, tin(d, "round 25 cm")["ml"][USUAL] / tin(d, "round 20 cm")["ml"][USUAL]),
    ),
    "which tin of the house is nearest to a round 20 cm": (
        lambda d: d.row("sizes", tin="round 20 cm")["nearest_owned"],
        lambda d: d.row("loads", "--of", SPONGE, tin=DEEP)["nearest_owned"],
        lambda d: d.cell("tins/all", HOLDS, "round 20 cm", "Nearest you have").split(",")[0],
        lambda d: tin(d, "round 20 cm")["near"][0],
    ),
    "is the round 20 cm owned, its depth not told": (
        lambda d: owned(d, "sizes", "--tin", "round 20 cm"),
        lambda d: owned(d, "portions", "--tin", "round 20 cm"),
        lambda d: d.row("tins", "--of", SPONGE, tin="round 20 cm")["owned"],
        lambda d: d.row("coats", "--of", "american-buttercream", tin="round 20 cm")["owned"],
        lambda d: d.bench(SPONGE, "round 20 cm")["owned"],
        lambda d: any(row[0] == "round 20 cm" for row in d.data("tins", "tb-tins")["rows"]),
        lambda d: next(bool(each[1]) for each in d.data("guests", "tb-sets")["tins"] if each[0] == "round 20\xa0cm"),
    ),
    "is the round 20 cm owned, 7.5 cm deep": (
        lambda d: owned(d, "sizes", "--tin", DEEP),
        lambda d: owned(d, "portions", "--tin", DEEP),
        lambda d: d.row("layers", "--of", SPONGE, tin=DEEP)["owned"],
    ),
    "is a round 20 cm owned, 5 cm deep": (
        lambda d: owned(d, "sizes", "--tin", "round 20 cm x 5 cm"),
        lambda d: owned(d, "portions", "--tin", "round 20 cm x 5 cm"),
        lambda d: False,  # by hand: those of the house are 7.5 cm deep
    ),
    "is the tin of the village hall owned": (
        lambda d: owned(d, "sizes", "--tin", "round 30 cm"),
        lambda d: owned(d, "portions", "--tin", "round 30 cm x 7.5 cm"),
        lambda d: d.bench(SPONGE, "round 30 cm")["owned"],
        lambda d: bool(d.bench(SPONGE, "round 30 cm")["have"]),
    ),
    "what does a factor to a dome go by": (
        lambda d: d.row("tins", "--of", SPONGE, tin="dome 15 cm")["factor_by"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "dome 15 cm")[0]["factor_by"],
        lambda d: d.row("factors", "--tin", "standard cups", to="mini cups")["factor_by"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "round 20 cm x 7.5 cm", "--deep")[0]["factor_by"],
        lambda d: "filled as full as in the recipe" if d.bench(SPONGE, "dome 15 cm")["by_brim"] else "",
        lambda d: "filled as full as in the recipe" * ("domes and balls are filled as full as in the recipe" in d.words(f"mixtures/{SPONGE}")),
    ),
    "what does a factor to a round tin go by": (
        lambda d: d.row("tins", "--of", SPONGE, tin="round 20 cm")["factor_by"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "round 20 cm")[0]["factor_by"],
        lambda d: d.row("factors", "--tin", "round 15 cm", to="round 20 cm")["factor_by"],
        lambda d: d.row("loads", "--of", SPONGE, tin=DEEP)["factor_by"],
        lambda d: "" if d.bench(SPONGE, "round 20 cm")["by_brim"] else "same batter depth",
    ),
}  # fmt: skip
"""Questions of the kitchen's measures, with the ways of asking each."""


@every("question", ASKED)
def test_one_answer(question: str, agree: Callable[[Any], None]) -> None:
    agree(ASKED[question])
