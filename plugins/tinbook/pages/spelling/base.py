"""What plans/base says: weighing and scaling, and how the house finishes its cakes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping


def counted_tins(tins: Iterable[tuple[int, str]]) -> str:
    """`2 round 15 cm, 1 loaf 2 lb`."""
    return ", ".join(f"{count} {tin}" for count, tin in tins)


def _counted_tin(count: int, tin: str) -> str:
    """`2 × round 20 cm × 7.5 cm`, `24 standard cups`."""
    return f"{count} {tin}" if tin.endswith("cups") else f"{count} × {tin.replace(' x ', ' × ')}"


PARTS = ("", "the whole", "half", "a third", "a quarter", "a fifth", "a sixth")
"""Shares of a mix as they are said; smaller ones in figures."""


def _too_few_owned(have: int, of: int) -> str:
    """`you have 1: bake one after the other, half the mix in each`; without a share if it is for one."""
    how = "one after the other" if have == 1 else f"{have} at a time"
    part = PARTS[of] if of < len(PARTS) else f"1/{of}"
    share = f", {part}{'' if of == 2 else ' of'} the mix in each" if of > 1 else ""
    return f"you have {have}: bake {how}{share}"


def _several_bakes(bakes: int, at_once: int) -> str:
    """`2 oven loads, at most 1 per load`; the last of several may have room to spare."""
    return f"{bakes} oven loads, at most {at_once} per load"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # who says so, and how often
    "this_cake": "for this cake",
    "the_house": "our own figure",
    "of_your_bakes": "{bakes} of your bakes",
    # a mixture, weighed
    "batter_depth": "batter depth = weight of the mixture / (weight of 1 ml of batter × area of the tins)",
    "mixture_weighs": "weight {mass_g:.0f} g",
    "depth_measured": "the batter depth measured in this kitchen",
    "batter_weighs": "1 ml of batter weighs {gravity:g} g ({low:g} to {high:g})",
    # a mixture in its tins
    "too_shallow": "too shallow for all the batter: fill {fill} tins",
    "too_few_owned": _too_few_owned,
    "wider_than_shelf": "wider than the oven shelf",
    "several_bakes": _several_bakes,
    "remarks": lambda remarks: "; ".join(remarks),
    "tin_factor": (
        "factor = batter for the new tins / batter for the recipe's own tins, at the same depth; "
        "whole eggs = eggs × factor, to the nearest egg, and everything else follows them"
    ),
    "written_for": lambda tins: f"written for {', '.join(_counted_tin(*each) for each in tins)}",
    "batter_in_tins": "batter {deep_mm:.0f} mm deep, {batter_ml:.0f} ml in all",
    "rise_in_tins": "rise {rise:g}, so about {baked_mm:.0f} mm baked",
    "eggs_written": "{eggs:g} eggs; beaten egg, by weight, where whole eggs would be more than {tolerance:.0%} out",
    "scales_to": "scales read to {step_g:g} g, or to {fine_step_g:g} g under {fine_below_g:g} g",
    # a question answered
    "by_depth": "same batter depth",
    "by_own_depth": "each as deep as chosen",
    "by_brim": "filled as full as in the recipe",
    "by_depth_and_brim": "same batter depth; cupcake cases, domes and balls filled as full as in the recipe",
    "by_asked": "the amount you asked for",
    "factor_is": "factor {factor:.4f}",
    "factor_by_batter": "factor = batter wanted / batter in the recipe",
    "factor_by_eggs": "factor = eggs wanted / eggs in the recipe",
    "factor_by_weight": "factor = weight wanted / weight the mixture makes",
    "factor_by_batches": "factor = number of batches",
    "factor_by_share": "factor = 1 + the share to add",
    "factor_by_left": "factor = what is left / what the recipe asks for",
    "as_bought": "as it says on the pack",
    "factor_as_written": "factor = 1, as in the recipe",
    # its tables
    "every_tin": "{mixture}, every tin",
    "scaled": "{mixture}, scaled",
    "in_its_tins": "{mixture}, in its tins",
    "exact_version": "exact",
    "whole_eggs": "whole eggs",
    # a tin converted
    "tin_factors": "Convert tin sizes",
    "tin_sizes": "Tins",
    "tin_to_tin": "factor = volume of the new tin / volume of the old one, at the same depth of batter",
    "tins_compared_at": "batter {deep_mm:g} mm deep; with straight sides any depth gives the same factor",
    "depth_of_the_house": "an everyday tin with no depth given is taken to be {deep_mm:g} mm deep, our usual depth",
    "nearest_by_batter": "nearest tin you have: a tin for the same purpose, of the same shape or an everyday one, "
    "with the factor "
    "nearest to 1, with batter {deep_mm:g} mm deep in both; none if that is over 2 or under a half",
    "sizes_of_the_trade": "sizes as the trade sells them, each taken to be its stated size in {sold}",
    "tin_volume": "volume = area of the tin × depth; for a tin measured with water, that measurement is used",
}
