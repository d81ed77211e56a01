"""A cost and a price worked out again in fractions, from what was paid as it was written: nothing here comes from engine."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction


def half_up(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple of a step, halves up."""
    steps = value / step + Fraction(1, 2)
    return (steps.numerator // steps.denominator) * step


def hundredths(amount: float) -> Fraction:
    """A float as it is printed, to the hundredth."""
    return half_up(Fraction(Decimal(repr(amount))), Fraction(1, 100))


@dataclass
class Kept:
    """The money of a house, in fractions; shares as such."""

    coin: Fraction
    an_hour: Fraction = Fraction(0)
    kept_an_hour: Fraction = Fraction(0)
    oven_an_hour: Fraction = Fraction(0)
    packaging: Fraction = Fraction(0)
    wasted: Fraction = Fraction(0)
    mark_up: Fraction = Fraction(0)
    step: Fraction = Fraction(0)
    vat: Fraction = Fraction(0)
    least: Fraction = Fraction(0)
    paid: Mapping[str, tuple[Fraction, Fraction]] = field(default_factory=dict)
    """By thing: what was paid for how much."""


Taken = tuple[tuple[str, ...], float, bool]
"""What is taken of a thing: its names, the first with a price counts; how much; whether it is eaten."""


def rows(taken: Iterable[Taken], hands: float, oven: float, kept: Kept) -> list[Fraction]:
    """Every row, exactly; a thing without a price has none."""
    eaten, others = list[Fraction](), list[Fraction]()
    for names, amount, is_food in taken:
        name = next((name for name in names if name in kept.paid), "")
        if name:
            paid, pack = kept.paid[name]
            (eaten if is_food else others).append(paid * hundredths(amount) / pack)
    found = [*eaten, *others]
    found += [sum(eaten, Fraction(0)) * kept.wasted] if kept.wasted else []
    found += [kept.packaging] if kept.packaging else []
    found += [rate * hundredths(hands) / 60 for rate in (kept.an_hour, kept.kept_an_hour) if rate]
    found += [kept.oven_an_hour * hundredths(oven) / 60] if kept.oven_an_hour and oven else []
    return found


def price(exact: Iterable[Fraction], kept: Kept) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """What the printed cost is, what is added, the VAT in the price, and the price: by trying multiples one by one."""
    every = list(exact)
    spent = sum((half_up(row, kept.coin) for row in every), Fraction(0))
    added = half_up(sum(every, Fraction(0)) * kept.mark_up, kept.coin)
    step = max(-(-kept.step // kept.coin) * kept.coin, kept.coin)
    # rounding VAT to a coin can make a lower price do, by less than two steps
    count = max((spent + added) * (1 + kept.vat) // step - 2, 0)
    while count * step - vat_of(count * step, kept) < spent + added:
        count += 1
    asked = count * step
    if asked < kept.least:
        asked = -(-kept.least // step) * step
    return spent, added, vat_of(asked, kept), asked


def vat_of(gross: Fraction, kept: Kept) -> Fraction:
    """The VAT in a price."""
    return half_up(gross * kept.vat / (1 + kept.vat), kept.coin)
