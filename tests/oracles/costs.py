"""What an order costs and what is asked for it, worked out again with fractions: nothing of the project is used.

A sum is exact to 20 decimals, halves to even; a coin is rounded halves up; an amount enters to the hundredth, halves up.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil, floor

HALF = Fraction(1, 2)
FINEST = 20


def hundredth(amount: float) -> Fraction:
    """An amount as it is written out, to the hundredth."""
    return Fraction(floor(Fraction(repr(float(amount))) * 100 + HALF), 100)


def finest(amount: Fraction) -> Fraction:
    return round(amount, FINEST)


def in_coins(amount: Fraction, places: int) -> Fraction:
    return Fraction(floor(amount * 10**places + HALF), 10**places)


@dataclass(frozen=True, kw_only=True)
class Receipt:
    """What so much of a thing cost."""

    price: Fraction
    amount: float

    def of(self, used: Fraction) -> Fraction:
        return finest(self.price * used / max(hundredth(self.amount), Fraction(1, 100)))


@dataclass(frozen=True, kw_only=True)
class Taken:
    """A thing an order takes: how much, whether it is eaten, and the packs it is bought in, so many of so much. `like`:
    of what the price counts where it has none, as a colour's for its shades."""

    name: str
    amount: float
    eaten: bool
    like: str = ""
    packs: Sequence[tuple[int, float]] = ()


@dataclass(frozen=True, kw_only=True)
class Rates:
    """What a house goes by, as fractions; nothing is nothing."""

    places: int
    wage: Fraction = Fraction(0)
    by_hour: Fraction = Fraction(0)
    by_order: Fraction = Fraction(0)
    oven_hour: Fraction = Fraction(0)
    packaging: Fraction = Fraction(0)
    a_km: Fraction = Fraction(0)
    wasted: Fraction = Fraction(0)
    mark_up: Fraction = Fraction(0)
    margin: Fraction | None = None
    step: Fraction = Fraction(0)
    least: Fraction = Fraction(0)
    vat: Fraction = Fraction(0)

    @property
    def added(self) -> Fraction:
        """What is added, as a share of the cost: a price p of a cost c with p - c = margin x p."""
        return self.mark_up if self.margin is None else 1 / (1 - self.margin) - 1


@dataclass(kw_only=True)
class Bill:
    """Rows by name, exact; and in whole packs where there are any. `unknown`: nobody knows their price."""

    exact: dict[str, Fraction] = field(default_factory=dict)
    packs: dict[str, Fraction] = field(default_factory=dict)
    unknown: set[str] = field(default_factory=set)


def billed(
    taken: Sequence[Taken], receipts: Mapping[str, Sequence[Receipt]], rates: Rates, hands_min: float, oven_min: float,
    far_km: Fraction | None = None,
) -> Bill:  # fmt: skip
    """The bill of an order. `receipts`: of each thing, from the oldest; `far_km`: one way, if anybody drives."""
    bill, food = Bill(), Fraction(0)
    for each in taken:
        known = receipts.get(each.name) or receipts.get(each.like, ())
        if not known:
            bill.unknown.add(each.name)
            continue
        bill.exact[each.name] = known[-1].of(hundredth(each.amount))
        food += bill.exact[each.name] if each.eaten else 0
        for count, size in each.packs:
            same = [paid for paid in known if hundredth(paid.amount) == hundredth(size)]
            paid = (same or known)[-1]
            one = paid.of(hundredth(size))
            bill.packs[each.name] = bill.packs.get(each.name, Fraction(0)) + count * one
    hands, oven = hundredth(hands_min) / 60, hundredth(oven_min) / 60
    for name, amount in (
        ("wasted", food * rates.wasted), ("packaging", rates.packaging), ("hands", rates.wage * hands),
        ("house", rates.by_hour * hands + rates.by_order), ("oven", rates.oven_hour * oven),
        ("drive", rates.a_km * 2 * (far_km or 0)),
    ):  # fmt: skip
        bill.exact[name] = finest(amount)
    return bill


@dataclass(frozen=True, kw_only=True)
class Asked:
    """A price in coins, part by part."""

    cost: Fraction
    added: Fraction
    vat: Fraction
    price: Fraction


def vat_of(price: Fraction, rates: Rates) -> Fraction:
    """What of a price is VAT: without it the price is p / (1 + rate)."""
    return in_coins(price - price / (1 + rates.vat), rates.places)


def asked(bill: Bill, rates: Rates) -> Asked:
    """The lowest multiple of the step that leaves cost and addition once the VAT is paid, and is not below the least."""
    coin = Fraction(1, 10**rates.places)
    cost = sum((in_coins(each, rates.places) for each in bill.exact.values()), Fraction(0))
    added = in_coins(finest(sum(bill.exact.values(), Fraction(0)) * rates.added), rates.places)
    step = max(ceil(rates.step / coin), 1) * coin
    # without VAT no price is too low that is below what it has to leave, and none is needed a step above it with VAT
    count = floor((cost + added) / step)
    while count * step - vat_of(count * step, rates) < cost + added:
        wanted = (cost + added - count * step + vat_of(count * step, rates)) / step
        count += max(1, floor(wanted) - 1)
    count = max(count, ceil(rates.least / step))
    return Asked(cost=cost, added=added, vat=vat_of(count * step, rates), price=count * step)
