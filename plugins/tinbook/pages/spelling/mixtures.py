"""What plans/mixtures says: a mixture by itself: balance, batches, the tins owned."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tinbook.pages.spelling.base import counted_tins


def _part(part: str, shares: Iterable[tuple[str, float]]) -> str:
    """`fat: butter 100, milk 18`."""
    return f"{part}: {', '.join(f'{name} {per_100:g}' for name, per_100 in shares)}"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # balance
    "for_a_hundred": "per 100 g of {base} = 100 × weight of the ingredient / weight of the {base}; "
    "eggs weighed without their shells",
    "part_of_formula": _part,
    "note_of_rule": "{title}: {note}",
    # batches
    "factor_of_amounts": "factor = amount wanted / amount in the recipe",
    "mixture_as_written": "as given in the recipe, the mixture weighs {mass_g:.0f} g",
    # the tins on hand
    "tins_to_fill": "number of tins = batter in the recipe / batter one tin takes, to the nearest whole tin; "
    "factor = batter for these tins / batter in the recipe",
    "nearly_the_recipe": "nearly: the factor is within {share:.0%} of 1, the most that whole eggs are allowed to "
    "be out by",
    "too_many_bakes": "tins that would need more than {bakes} oven loads are left out",
    "deep_as_written": "batter as deep as in the recipe's own tins; domes and cupcake cases filled as full",
    "bakes_counted": "oven loads: from the tins you have, and how many fit on the oven shelves at once",
    # how long it keeps
    "keeps_three_days": "3 days",
    "keeps_a_week": "a week",
    "keeps_a_month": "a month",
    "keeps_frozen": "frozen",
    # its tables
    "allergens_of": "{mixture}, allergens",
    "allergens_by_card": "the allergens on each ingredient's card",
    "cards_read": lambda names: f"ingredients: {', '.join(names)}",
    "comes_from": lambda ingredients: ", ".join(ingredients),
    "balance_of": "{mixture}, balance",
    "percentages_of": "{mixture}, per 100 g of {base}",
    "on_hand": "What fits our tins",
    "tins_filled": lambda tins: counted_tins(tins),
}
