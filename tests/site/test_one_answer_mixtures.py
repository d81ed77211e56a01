"""One question, one answer: a mixture in other tins, its layers, its times, what is in it, at several doors."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from tests.every import every

SPONGE, DEEP = "creamed-butter-sponge", "round 20 cm x 7.5 cm"
PAGE = f"mixtures/{SPONGE}"
OF = ("--of", SPONGE)
TWO = (*OF, "--tin", f"2 {DEEP}")
WHOLE, EXACT, LAYERS = "Amounts for every tin, whole eggs", "Exact amounts for every tin", "Layers from each tin"
FINISH = "To finish a cake from each tin"
HAND = "What fits our tins"


def in_whole(d: Any, head: str) -> float:
    return float(d.number(PAGE, WHOLE, "round 20 cm", head))


def tins(d: Any) -> Any:
    return d.row("tins", *OF, tin="round 20 cm")


def loads(d: Any) -> Any:
    return d.row("loads", *OF, tin=DEEP)


def ratio(d: Any, slug: str, chocolate: str) -> float:
    """Chocolate to cream by the mix as it is written."""
    grams = {row["ingredient"]: row["exact_g"] for row in d.rows("written", "--of", slug)}
    return float(grams[chocolate] / grams["double cream"])


def handed(d: Any, slug: str) -> float:
    chocolate, cream = (line["mass_g"] for line in d.data(f"mixtures/{slug}", "tb-recipe")["lines"])
    return float(chocolate / cream)


SAID = {"two": 2.0, "two and a half": 2.5, "three": 3.0}
"""Ratios as the demo says them."""


def said(d: Any, address: str, before: str, after: str) -> float:
    text = d.words(address).lower()
    return SAID[text.split(before, 1)[1].split(after, 1)[0].replace("-", " ").strip()]


ASKED: dict[str, tuple[Callable[[Any], object], ...]] = {
    "by what factor does the sponge go into two round 20 cm": (
        lambda d: round(tins(d)["exact_factor"], 6),
        lambda d: d.rows("scaled", *TWO)[0]["factor"],
        lambda d: round(2 * d.bench(SPONGE, "round 20 cm")["unit_ml"] / d.data(PAGE, "tb-recipe")["batter_ml"], 6),
    ),
    "by what factor in whole eggs": (
        lambda d: tins(d)["factor"],
        lambda d: d.rows("scaled", *TWO)[1]["factor"],
        lambda d: loads(d)["factor"],
        lambda d: in_whole(d, "Factor"),
    ),
    "by what factor to the last gram": (
        lambda d: d.to(0.01, tins(d)["exact_factor"]),
        lambda d: d.number(PAGE, EXACT, "round 20 cm", "Factor"),
    ),
    "how many eggs": (
        lambda d: tins(d)["egg_pieces"],
        lambda d: d.rows("scaled", *TWO)[1]["egg_pieces"],
        lambda d: in_whole(d, "Egg"),
    ),
    "how much butter": (
        lambda d: tins(d)["butter_g"],
        lambda d: d.rows("scaled", *TWO)[1]["butter_g"],
        lambda d: in_whole(d, "Butter"),
        lambda d: d.scales(300.0 / 5 * in_whole(d, "Egg")),
    ),
    "how much goes into each tin": (
        lambda d: d.scales(tins(d)["each_tin_g"]),
        lambda d: d.scales(d.rows("fits", *TWO)[0]["each_tin_g"]),
        lambda d: d.scales(loads(d)["each_tin_g"]),
        lambda d: in_whole(d, "Each tin"),
    ),
    "how deep is the batter": (
        lambda d: tins(d)["batter_mm"],
        lambda d: d.rows("fits", *TWO)[0]["batter_mm"],
        lambda d: d.row("layers", *OF, tin=DEEP)["batter_mm"],
        lambda d: d.row("times", *OF, tin=DEEP)["batter_mm"],
    ),
    "how deep is the batter, as printed": (
        lambda d: d.to(1.0, tins(d)["batter_mm"]),
        lambda d: d.number(PAGE, LAYERS, "round 20 cm", "Batter"),
    ),
    "how high does it bake": (
        lambda d: tins(d)["baked_mm"],
        lambda d: d.row("layers", *OF, tin=DEEP)["baked_mm"],
        lambda d: loads(d)["all_in_mm"],
        lambda d: d.rows("fits", *TWO)[0]["baked_mm"],
    ),
    "how much does it rise": (
        lambda d: round(tins(d)["baked_mm"] / tins(d)["batter_mm"], 2),
        lambda d: round(d.row("layers", *OF, tin="round 30 cm x 7.5 cm")["baked_mm"] / d.row("layers", *OF, tin="round 30 cm x 7.5 cm")["batter_mm"], 2),
        lambda d: round(loads(d)["all_in_mm"] / d.row("times", *OF, tin=DEEP)["batter_mm"], 2),
    ),
    "how many layers": (
        lambda d: d.row("layers", *OF, tin=DEEP)["layers"],
        lambda d: d.row("coats", *OF, tin="round 20 cm")["layers"],
        lambda d: d.number(PAGE, LAYERS, "round 20 cm", "Layers"),
    ),
    "how high is the stack": (
        lambda d: d.row("layers", *OF, tin=DEEP)["stack_mm"],
        lambda d: d.row("coats", *OF, tin="round 20 cm")["height_mm"],
        lambda d: d.row("covers", *OF, tin="round 20 cm")["height_mm"],
        lambda d: d.row("boards", *OF, tin="round 20 cm")["height_mm"],
        lambda d: d.row("portions", *OF, tin="round 20 cm")["stands_mm"],
    ),
    "how high does it stand, as printed": (
        lambda d: d.to(1.0, d.row("layers", *OF, tin=DEEP)["stack_mm"]),
        lambda d: d.number(PAGE, LAYERS, "round 20 cm", "Stack"),
        lambda d: 10.0 * d.number(PAGE, FINISH, "round 20 cm", "Height"),
    ),
    "what does it weigh baked": (
        lambda d: d.scales(d.row("layers", *OF, tin=DEEP)["baked_g"]),
        lambda d: d.number(PAGE, LAYERS, "round 20 cm", "Weighs"),
    ),
    "when is it done at the earliest": (
        lambda d: d.row("times", *OF, tin=DEEP)["low_min"],
        lambda d: loads(d)["oven_low_min"],
        lambda d: in_whole(d, "Done"),
    ),
    "when is it done at the latest": (
        lambda d: d.row("times", *OF, tin=DEEP)["high_min"],
        lambda d: loads(d)["oven_high_min"],
        lambda d: float(d.cell(PAGE, WHOLE, "round 20 cm", "Done").split("–")[1]),
    ),
    "when is it looked at first": (
        lambda d: d.row("times", *OF, tin=DEEP)["check_min"],
        lambda d: loads(d)["check_min"],
        lambda d: in_whole(d, "Check"),
    ),
    "when is the written tin looked at first": (
        lambda d: d.row("times", *OF, tin="round 15 cm x 7.5 cm")["check_min"],
        lambda d: d.figure(d.words(PAGE).split("Check at", 1)[1]),
        lambda d: d.number(PAGE, WHOLE, "round 15 cm", "Check"),
    ),
    "how many mixes for the bowl, in two round 30 cm": (
        lambda d: d.row("tins", *OF, tin="round 30 cm")["mixes"],
        lambda d: d.rows("scaled", *OF, "--tin", "2 round 30 cm x 7.5 cm")[1]["mixes"],
        lambda d: d.rows("loads", *OF, "--tin", "2 round 30 cm x 7.5 cm")[0]["mixes"],
        lambda d: d.figure(d.cell(PAGE, WHOLE, "round 30 cm", "2 tins").split("|")[-1]),
    ),
    "how many bakes of two round 25 cm": (
        lambda d: d.row("tins", *OF, tin="round 25 cm")["bakes"],
        lambda d: d.rows("fits", *OF, "--tin", "2 round 25 cm x 7.5 cm")[0]["bakes"],
        lambda d: d.row("loads", *OF, tin="round 25 cm x 7.5 cm")["bakes"],
    ),
    "how deep must the tin be": (
        lambda d: tins(d)["least_depth_mm"],
        lambda d: d.bench(SPONGE, "round 20 cm")["least_mm"],
        lambda d: 10.0 * in_whole(d, "Tin depth, at least"),
    ),
    "what is all of it for one egg": (
        lambda d: d.scales(d.rows("scaled", *OF, "--eggs", "1")[1]["mixture_g"]),
        lambda d: d.number(PAGE, "Amounts without a tin", "1 egg", "Total"),
    ),
    "how many cups of butter": (
        lambda d: d.to(0.01, d.row("written", *OF, ingredient="butter")["measured_cups"]),
        lambda d: d.to(0.01, d.number(PAGE, "The mix in every measure", "Butter", "US cup")),
    ),
    "how many ounces of butter": (
        lambda d: d.row("written", *OF, ingredient="butter")["shown_oz"],
        lambda d: d.number(PAGE, "The mix in every measure", "Butter", "Ounces"),
        lambda d: d.to(0.25, 300.0 / d.data(PAGE, "tb-recipe")["g_per_oz"]),
    ),
    "how much plain flour instead of self-raising": (
        lambda d: d.scales(300.0 * d.row("flour", self_raising_g=100.0)["plain_g"] / 100.0),
        lambda d: d.figure(d.words(PAGE).split("Instead of 300 g use", 1)[1]),
    ),
    "which allergens are in it": (
        lambda d: ", ".join(f"{row['allergen']} ({row['from']})" for row in d.rows("allergens", *OF)),
        lambda d: d.words(PAGE).split("Contains: ", 1)[1].split(". ")[0].replace(" and ", ", ").strip(" ."),
    ),
    "how much sugar for 100 of flour": (
        lambda d: d.row("balance", *OF, rule="Sugar to flour")["per_100"],
        lambda d: d.row("percentages", *OF, ingredient="caster sugar")["per_100"],
        lambda d: d.number(PAGE, "Weights per 100 g of flour", "Per 100 g of flour", "Sugar"),
    ),
    "chocolate to cream in the dark ganache": (
        lambda d: d.rows("balance", "--of", "dark-ganache")[0]["per_100"] / 100.0,
        lambda d: ratio(d, "dark-ganache", "dark chocolate"),
        lambda d: handed(d, "dark-ganache"),
        lambda d: said(d, "mixtures/dark-ganache", "## notes", "parts dark chocolate to one part cream"),
        lambda d: said(d, "techniques/ganache-coat", "works with", "-to-one dark ganache"),
    ),
    "chocolate to cream in the milk ganache": (
        lambda d: d.rows("balance", "--of", "milk-ganache")[0]["per_100"] / 100.0,
        lambda d: ratio(d, "milk-ganache", "milk chocolate"),
        lambda d: handed(d, "milk-ganache"),
        lambda d: said(d, "mixtures/milk-ganache", "## notes", "parts milk chocolate to one part cream"),
        lambda d: said(d, "techniques/ganache-coat", "-to-one dark ganache,", "-to-one milk ganache"),
    ),
    "chocolate to cream of milk chocolate in hot weather": (
        lambda d: said(d, "mixtures/milk-ganache", "in hot weather use", "parts chocolate to one part cream"),
        lambda d: said(d, "techniques/ganache-coat", "parts dark chocolate to one part cream, or", "parts milk"),
    ),
    "how many cupcakes from 500 g": (
        lambda d: d.row("pieces", batter_g=500.0, each_g=45.0)["count"],
        lambda d: d.figure(d.cell("measures", "How many cupcakes", "500 g", "45 g").split("|")[0]),
    ),
    "what is to be mixed for 24 cupcakes": (
        lambda d: d.row("needed", count=24, each_g=45.0)["batter_g"],
        lambda d: d.figure(d.cell("measures", "How much to mix", "24", "45 g").split("|")[0]),
    ),
    "by what factor does the sponge go into the tins on hand": (
        lambda d: d.row("on-hand", mixture="Creamed butter sponge", tin="2 round 15 cm")["factor"],
        lambda d: d.rows("scaled", *OF, "--tin", "2 round 15 cm x 7.5 cm")[0]["factor"],
        lambda d: d.number("on-hand", HAND, "Creamed butter sponge", "Factor"),
    ),
    "what was expected of a bake": (
        lambda d: d.to(1.0, d.row("bakes", day="2026-05-29")["expected_min"]),
        lambda d: d.number("oven", "What was baked", "2026-05-29", "Expected"),
    ),
}  # fmt: skip
"""Questions of mixtures, with the ways of asking each."""


@every("question", ASKED)
def test_one_answer(question: str, agree: Callable[[Any], None]) -> None:
    agree(ASKED[question])
