"""Where the money of a price goes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from tinbook.engine.money import FINE, NOTHING, percents
from tinbook.plans.money.cost import BOARDS, HOURS, INGREDIENTS, KEPT_UP, ROAD
from tinbook.plans.money.offered import Priced

OF_ALL, VAT = "added", "vat"
"""What is no cost: what is added, with the rounding; and what goes to the state."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyShare:
    """A part of a price: in coins, as a share of all of it, and in whole percent, which add up to 100."""

    of: str
    amount: Decimal
    share: Decimal
    percent: int


def shares_of(found: Priced) -> tuple[MoneyShare, ...]:
    """The parts of a price that come to something; they add up to the price."""
    parts = [(name, amount) for name, amount in _parts(found) if amount > NOTHING]
    whole = found.price.price
    return tuple(
        MoneyShare(of=name, amount=amount, share=FINE.divide(amount, whole), percent=percent)
        for (name, amount), percent in zip(parts, percents([amount for _, amount in parts]), strict=True)
    )


def _parts(found: Priced) -> Iterator[tuple[str, Decimal]]:
    for group in (HOURS, INGREDIENTS, KEPT_UP, BOARDS, ROAD):
        yield group, found.cost.of(group).shown
    yield OF_ALL, found.price.added + found.price.rounding
    yield VAT, found.price.vat
