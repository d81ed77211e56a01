"""What plans/money says: what a row of a cost is of, and what a price is worked out from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from decimal import ROUND_HALF_UP, Decimal

from tinbook.pages.spelling import formats

TENTH = Decimal("0.1")


def share(of_all: Decimal) -> str:
    """`15 %`, `13.1 %`."""
    shown = (of_all * 100).quantize(TENTH, ROUND_HALF_UP)
    return formats.with_unit(formats.number(float(shown)), "%")


def _more_hours(hours: float) -> str:
    told = "an hour" if abs(hours) == 1.0 else f"{formats.number(abs(hours))} hours"
    return f"{told} {'more' if hours > 0 else 'less'} of work"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "price_of": "What {cake} costs, {size}, in {code}",
    "mixture_price_of": "What the ingredients of {mixture} cost, in {code}",
    "price_worked": (
        "each thing by what is used of it, at the price last paid; hours as the timetable has them; what is added is a "
        "share of the cost; each row is rounded once, and sums are of the rows as printed"
    ),
    "at_prices_paid": "prices from the house's own log, the newest of each",
    "unknown_prices": lambda names: f"no price is known for {formats.sentence(names)}: it is in no sum",
    "all_prices_known": "a price is known for everything",
    "cost_wasted": "wasted",
    "cost_packaging": "packaging",
    "cost_hands": "hours",
    "cost_house": "the kitchen's keep",
    "cost_oven": "the oven",
    "cost_drive": "the road",
    "cost_all": "cost",
    "cost_100_g": "a hundred grams",
    "cost_of_a_tin": lambda tin: f"each {formats.tin_words(tin)}",
    "cost_added": lambda mark_up, margin: f"added: {share(mark_up)} of the cost, {share(margin)} of the price",
    "cost_rounding": "rounding",
    "cost_lifted": "up to the least we take",
    "cost_vat": lambda rate: f"VAT, {share(rate)}",
    "cost_price": "price",
    "cost_price_at_least": "price at least: something in it has no price yet",
    "cost_portion": "a portion, of {serves}",
    "if_hours": _more_hours,
    "if_guests": "for {guests} guests",
    "if_filling": "filled with {name}",
    "if_cover": "covered with {name}",
}
