"""What plans/making says: what a cake weighs, what holds it up, how it travels, what is made ahead."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tinbook.pages.spelling import formats

AT_ITS_CENTRE = "its centre of gravity {} up from its foot"


def heavy(mass_g: float) -> str:
    """`14 g`, `480 g`, `4.6 kg`: as heavy as a hand can tell."""
    if mass_g >= 1000.0:
        return formats.with_unit(formats.number(round(mass_g / 1000.0, 1)), "kg")
    return formats.grams(round(mass_g) if mass_g < 100.0 else round(mass_g / 10.0) * 10.0)


def between(low_g: float, high_g: float) -> str:
    """`4.3–4.8 kg`, `450–520 g`: a range in one unit."""
    if high_g >= 1000.0:
        ends = formats.bounds(round(low_g / 1000.0, 1), round(high_g / 1000.0, 1))
        return formats.with_unit(ends, "kg")
    step = 1.0 if high_g < 100.0 else 10.0
    return formats.with_unit(formats.bounds(round(low_g / step) * step, round(high_g / step) * step), "g")


def _hangs(figure: str, each_g: float, centre_mm: float | None) -> str:
    where = f", {AT_ITS_CENTRE.format(formats.millimetres(round(centre_mm)))}" if centre_mm is not None else ""
    return f"{figure}: {heavy(each_g)}, hung on the side{where}. On sticks, keep the figure just clear of the coat"


def _stands(figure: str, each_g: float, centre_mm: float | None) -> str:
    where = f", {AT_ITS_CENTRE.format(formats.millimetres(round(centre_mm)))}" if centre_mm is not None else ""
    return f"{figure}: {heavy(each_g)}, on top{where}. Anything heavier belongs on the board"


def _paste(paste: str, colour: str | None, spare_g: float) -> str:
    of = f"{paste}, {colour}" if colour else paste
    return f"{formats.grams(spare_g)} {of}, for repairs"


def _cm(mm: float) -> str:
    return formats.centimetres(mm)


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # what it weighs
    "weights_of": "What {cake} weighs, {size}",
    "cake_weighed": (
        "batter less what bakes off and what is levelled off; fillings, coats and paste as they lie on the cake; "
        "parts as modelled; cards and drum by their size"
    ),
    "weight_ranges": (
        "the ranges: how much a cake like this loses in the oven, how much air is in it, how near a part is to its sum"
    ),
    "weights_left_out": "left out: dowels and ribbon, a few grams each",
    "the_board": "the board",
    # what holds it up
    "held_of": "What holds up {cake}, {size}",
    "held_worked": "each dowel carries its share of the tier above and of all that stands on it",
    "supports_unknown": (
        "These sums take no account of how firm the cake is, how level it stands or how you drive. Measure every dowel "
        "or pillar on the cake. For a wedding, or anything heavy or tall, ask somebody who builds cakes like that"
    ),
    "hangs_on_a_side": _hangs,
    "stands_on_top": _stands,
    # how it goes out
    "goes_out_whole": "Put it together at home with a dowel through all of it, and drive it in one piece",
    "goes_out_in_tiers": (
        "Box each tier on its own; put dowels or pillars in at home, and stack the cake when you get there"
    ),
    "figures_go_on_last": "Figures travel in a box of their own and go on last",
    "take_paste": _paste,
    "take_icing": "a bag of {mixture}, for repairs",
    "take_glue": "edible glue or royal icing, and a brush",
    "take_spare_dowel": "two spare dowels or pillars, and what you cut them with",
    "take_to_stack": "spirit level, two broad palette knives, something to fix a card with",
    "take_always": "non-slip mat, clean cloth, ruler, small knife, gloves, the note for the person cutting it",
    "taller_than_a_box": lambda high_mm, tallest_mm: (
        f"it needs a box {_cm(high_mm)} high, and your tallest is {_cm(tallest_mm)}: let it travel in tiers"
    ),
    "whole_taller_than_a_box": lambda high_mm, tallest_mm: (
        f"put together it would need a box {_cm(high_mm)} high, and your tallest is {_cm(tallest_mm)}"
    ),
    "tier_taller_than_a_box": lambda tier, high_mm, tallest_mm: (
        f"the box for {tier.partition(',')[0]} has to be {_cm(high_mm)} high, and your tallest is {_cm(tallest_mm)}"
    ),
    "too_high_for_the_fridge": lambda high_mm, shelf_mm: (
        f"stacked, it is {_cm(high_mm)} high: too tall for a fridge shelf of {_cm(shelf_mm)}"
    ),
    # through one oven
    "cake_loads_of": "{cake} through the oven, {size}",
    "cake_loads_worked": (
        "the fewest loads; tins share one if they go in and come out together: at one heat, side by side on the shelf, "
        "the slowest most likely done before any other is overdone"
    ),
    "loads_by_turns": "there are too many tins to try every way of sharing; fewer loads may be possible",
    "mixed_by_load": "mixed load by load, because batter should not wait",
    # ahead
    "ahead_of": "What can be made ahead for {cake}",
    "kept_unfrozen": "kept without a freezer; decorations that are not eaten do not count",
    "ahead_worked": (
        "by the steps of each recipe and technique; the cake keeps no longer than the part that keeps least"
    ),
}
