"""What plans/cakes says: tiers and where they stand, sizes and why some cannot be made, everything used."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tinbook.pages.spelling import formats

STEPS = ("", "a step", "two steps", "three steps", "four steps", "five steps")


def _tier_of_cake(place: int, count: int, tin: str) -> str:
    """`base, round 25 cm`, `top, round 15 cm`, `tier 2, round 20 cm`; of a single tier its tin."""
    if count < 2:
        return tin
    word = "base" if place == 1 else "top" if place == count else "middle" if count == 3 else f"tier {place}"
    return f"{word}, {tin}"


def _tier_asked_at(tin: str, mixture: str | None, high_mm: float | None) -> str:
    """`round 20 cm of Madeira, 100 mm high`."""
    of = f" of {mixture}" if mixture else " of foam"
    return f"{tin}{of}{f', {formats.millimetres(high_mm)} high' if high_mm else ''}"


def _size_by_steps(steps: int) -> str:
    """`as written`, `a step up`, `2 steps down`."""
    if not steps:
        return "as written"
    many = STEPS[abs(steps)] if abs(steps) < len(STEPS) else f"{abs(steps)} steps"
    return f"{many} {'up' if steps > 0 else 'down'}"


def _drum_said(drum_mm: float, paste_mm: float, how: str) -> str:
    """`drum 12 mm thick, 3 mm of paste on it`."""
    if how == "no":
        return f"drum {drum_mm:g} mm thick"
    return f"drum {drum_mm:g} mm thick, {paste_mm:g} mm of paste {'round the cake' if how == 'ring' else 'on it'}"


def _icing_each(each_g: float, low_g: float, high_g: float) -> str:
    """`35 g of icing on each cupcake (25 to 50 g)`."""
    usual = f" (usually {low_g:.0f} to {high_g:.0f} g)" if high_g > low_g else ""
    return f"{each_g:.3g} g of icing on each cupcake{usual}"


def _several(words: Sequence[str]) -> str:
    return "; ".join(words)


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # where things are
    "tier_of_cake": _tier_of_cake,
    "beside_the_cake": lambda tin: f"the {formats.cups_said(tin)} served alongside",
    "on_the_board": "on the board",
    "in_a_decoration": "{technique}",
    "in_its_mixture": "{mixture}",
    "in_the_stack": "in the stack",
    "in_all": "in all",
    # how it was worked out
    "whole_cake_of": "{cake}, {size}",
    "whole_cake": (
        "each tier as on its recipe's page, at its own height; height of the cake = drum and the paste on it "
        "+ each tier on its card, with its coats and paste on + the gap at any pillars; totals = sums of the rows"
    ),
    "tiers_asked_at": lambda tiers: _several(tiers),
    "tier_asked_at": _tier_asked_at,
    "stands_on_a_drum": _drum_said,
    "cards_thick": "card under each tier {card_mm:g} mm thick (they are sold from {low_mm:g} to {high_mm:g} mm thick)",
    "icing_each": _icing_each,
    "dowels_as_long": "each dowel is as long as its tier is tall; pillars are longer, to reach the tier above",
    # sizes
    "size_by_steps": _size_by_steps,
    "tier_too_small": "its smallest tier is smaller than a portion",
    "not_sold": lambda tin: f"you have no {tin.removeprefix('the ')} tin, and none is sold",
    # everything used
    "used_of": "Everything used for {cake}, {size}",
    "everything_used": "every mixture as it is weighed out for this cake, added up by ingredient",
    "mixed_as_whole_eggs": "sponges by whole eggs, tier by tier; fillings and icings by weight, all tiers together",
    "parts_by_materials": "pastes for parts as their materials list them, with what stays on hands and board",
}
