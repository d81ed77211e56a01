"""What plans/mixtures says: a mixture by itself: balance, batches, the tins on hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tinbook.pages.spelling.base import counted_tins

SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # its tables
    "allergens_of": "{mixture}, allergens",
    "allergens_by_card": "the allergens on the card of each ingredient",
    "comes_from": lambda ingredients: ", ".join(ingredients),
    "balance_of": "{mixture}, balance",
    "percentages_of": "{mixture}, for 100 of {base}",
    "on_hand": "What the tins on hand allow",
    "tins_filled": lambda tins: counted_tins(tins),
}
