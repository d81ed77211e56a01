"""What plans/measures says: kitchen measures, eggs, ounces, what replaces what."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

PARTS = {"whole egg": "out of the shell", "egg white": "white", "egg yolk": "yolk"}
SHARES = {**PARTS, "whole egg": "shell"}
"""What a part of the egg is called, and the share known for it: for the whole egg, that of its shell."""
FILLED = "spooned in, not sifted, and levelled; brown sugar is pressed in"
"""How every measure is filled: the rows of the facts are chosen by it."""
KNOWN = {"derived": "calculated"}
PARTS_OF_ONE = {0.25: "¼ ", 0.5: "½ ", 1.0: ""}


def _house_spoons(cup: str | None, tablespoon_ml: float, teaspoon_ml: float) -> str:
    cup = cup or "no cup chosen (a US cup is shown)"
    return f"{cup}, tablespoon {tablespoon_ml:.4g} ml, teaspoon {teaspoon_ml:.4g} ml"


def _millilitre_weighs(density: float, low: float | None, high: float | None) -> str:
    spread = (
        "" if low is None else f" ({low:g} to {high:g} across published figures and the usual ways of filling a cup)"
    )
    return f"1 ml weighs {density:.3g} g{spread}"


def _swap_rate(
    part: str,
    rate: float,
    part_unit: str,
    unit: str,
    figure: float | None,
    bounds: tuple[float, float] | None,
    kind: str,
) -> str:
    """`baking powder 0.048 g for 1 g, from 0.05 (0.04 to 0.06); published`."""
    behind = "" if figure is None else f", from {figure:g}"
    spread = "" if bounds is None else f" ({bounds[0]:g} to {bounds[1]:g})"
    return f"{part} {rate:g} {part_unit} for 1 {unit}{behind}{spread}; {KNOWN.get(kind, kind)}"


def _tins_sold_in(sold: str) -> str:
    other = "8 in tin is 203 mm" if sold == "inches" else "8 in tin is 200 mm"
    return f"tins here are sold in {sold}, as house.yaml says: an {other}"


def _printed(figures: Sequence[float]) -> str:
    return "–".join(f"{figure:g}" for figure in figures)


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # the oven
    "oven_table": "Oven",
    "gas_marks": (
        "°F = 275 + 25 × (mark − 1), for marks under one 275 + 25 × log2(mark); °C = (°F − 32) × 5 / 9; "
        "fan = conventional − {fan_c:g} °C"
    ),
    "marks_differ": "printed tables differ by up to 10 °C, so the printed range is given as well",
    "printed_figures": _printed,
    "dial_table": "Oven, by the dial",
    "dials": "°F = °C × 9 / 5 + 32; fan = conventional − {fan_c:g} °C",
    "ovens_differ": "ovens differ: set a fan oven {low_c:g} to {high_c:g} °C lower",
    "nearest_mark": "gas mark: the one that printed tables give for it, or, failing that, the mark nearest in °C",
    # spoons and cups
    "spoon_table": "Spoons and cups",
    "spoon_of_kitchen": "{kitchen} {spoon}",
    "exact_measures": "exact by definition: an inch is 25.4 mm, a pound is 453.59237 g",
    "house_measures_with": "measures used here: {measures}",
    "house_spoons": _house_spoons,
    "met_under_its_name": "{name} {low:.4g} to {high:.4g} {unit}",
    "cup_table": "By the cup",
    "weight_by_volume": f"grams = weight of 1 ml × capacity of the cup or spoon in ml, {FILLED}",
    "weights_of_cards": "the weight of 1 ml, and its range, are on each ingredient's page",
    "weight_table": "What they weigh",
    "millilitre_weighs": _millilitre_weighs,
    "how_known": lambda kind: f"basis of the figure: {KNOWN.get(kind, kind)}",
    "measured_by_house": "measured in this kitchen",
    "weighed_by_house": "weighed in this kitchen",
    # a mixture as written
    "in_every_measure": (
        "ounces = grams / {grams_per_ounce:.5g}, to the nearest quarter, or eighth under 1 oz; "
        "spoons and cups = grams / (weight of 1 ml × capacity of the spoon or cup in ml), "
        f"{FILLED}"
    ),
    "written_table": "{mixture}, as written",
    # ounces, pints, inches
    "ounce_table": "Ounces and pounds",
    "ounces_in_grams": "grams = ounces × {grams_per_ounce:.5g}; 16 ounces make a pound, exactly 453.59237 g",
    "ounce_in_print": "in print: books round an ounce to {low_g:g} or {high_g:g} g",
    "gram_table": "Grams in ounces",
    "pint_table": "Pints and fluid ounces",
    "fluid_ounces_in_ml": "ml = fluid ounces × {uk_ml:.5g} (UK) or × {us_ml:.5g} (US)",
    "two_pints": "a UK pint is 20 UK fluid ounces and a US pint is 16 US ones; both are fixed by law",
    "part_of_measure": lambda kitchen, share, measure: f"{kitchen} {PARTS_OF_ONE[share]}{measure}",
    "inch_table": "Inches",
    "inch": "an inch is exactly 25.4 mm",
    "sold_as": "sold as: the rounded size printed beside it on trade labels",
    "tins_sold_in": _tins_sold_in,
    "measured_wins": "the measurements of a measured tin override both",
    # eggs
    "egg_table": "Eggs",
    "egg_shelled": "shelled = in shell × (1 − proportion that is shell)",
    "shell_of_egg": "the shell is {share:.1%} of the egg; each size is taken at the middle of its range",
    "class_range": "the range: the limits of the size, with the shell at its heaviest and its lightest",
    "bowl_table": "Eggs in the bowl",
    "egg_part_table": "Whites and yolks, {egg_class}",
    "egg_weighs": "one {egg_class} egg weighs {in_shell_g:g} g in its shell",
    "part_of_egg": lambda part, low, high: f"{PARTS[part]}: {low:.1%} to {high:.1%} of the egg in its shell",
    "share_of_egg": lambda part, share, low, high: (
        f"the {SHARES[part]} is {share:.1%} of the egg in its shell ({low:.1%} to {high:.1%})"
    ),
    "eggs_by_share": "grams = eggs × weight in the shell × share",
    "eggs_by_shell": "grams = eggs × weight in the shell × (1 − proportion that is shell)",
    # self-raising flour
    "flour_table": "Self-raising from plain",
    "self_raising": "baking powder = share × plain flour; plain flour + baking powder = self-raising flour",
    "powder_share": "the share is {share:.0%} of the plain flour ({low:.0%} to {high:.0%} in print)",
    # how many, how much, from what is left
    "piece_table": "How many from a batter",
    "how_many": "how many = batter × (1 − what stays in the bowl) / weight of one, rounded down",
    "batter_lost": "{share:.0%} of the batter stays on the bowl, beater and scoop ({low:.0%} to {high:.0%})",
    "cupcake_loses": "in the oven a cupcake loses {share:.0%} of its weight ({low:.0%} to {high:.0%})",
    "needed_table": "How much batter to mix",
    "batter_needed": "batter = how many × weight of one / (1 − what stays in the bowl)",
    "left_in_one_unit": "both in the same unit: eggs, grams, spoons or packets",
    "left_table": "Using up what is left",
    "from_left": "factor = what is left / what the recipe asks for; multiply everything else by the same factor",
    # what stands in for what
    "swap_table": "What to use instead",
    "swap_by_share": "each part = its share × the amount you want",
    "swap_by_rate": "each ingredient = its rate × the amount it replaces",
    "swap_by_either": "each ingredient = its rate, or its share of the whole, × the amount it replaces",
    "swap_rate": _swap_rate,
    "swapped_egg": "one {egg_class} {part} weighs {grams:g} g",
}
