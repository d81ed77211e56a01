"""Amounts of things as they are shown: what is wanted is rounded up, what is there is rounded down."""

from __future__ import annotations

from tinbook.engine.rounding import ruler_cm
from tinbook.engine.tolerance import whole_down, whole_up
from tinbook.plans.shopping.shopping import ShopLine
from tinbook.plans.shopping.things import Thing

FINE_BELOW = 10.0
"""Below so many grams or millilitres, tenths are shown."""


def needed_shown(thing: Thing, amount: float) -> float:
    """An amount in the thing's unit as it is asked for: g, ml, mm or pieces, by its kind. Never less than asked for."""
    asked = amount / thing.per
    if thing.kind == "length":
        return ruler_cm(asked)
    if thing.kind == "count" or asked >= FINE_BELOW:
        return float(whole_up(asked))
    return whole_up(asked * 10.0) / 10.0


def home_shown(thing: Thing, amount: float) -> float:
    """The same for what is there: never more than there is."""
    there = amount / thing.per
    if thing.kind == "length":
        return whole_down(there / 5.0) * 5.0
    if thing.kind == "count" or there >= FINE_BELOW:
        return float(whole_down(there))
    return whole_down(there * 10.0) / 10.0


def loose_shown(line: ShopLine) -> float:
    """How much to ask for of what has no packs; 0 if it has some."""
    if line.packs or not line.to_buy:
        return 0.0
    asked = needed_shown(line.thing, line.short)
    return float(whole_up(asked))
