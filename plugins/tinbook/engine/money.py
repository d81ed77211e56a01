"""Sums of money, exactly: Decimal throughout, each row rounded once, and every total the sum of its rows.

An exact amount is kept to 20 decimals, a thousand million times finer than the smallest coin, so that sums of exact
amounts are exact too. Mark-up is a share of the cost, margin a share of the price: Centennial College Libraries, Math
help from the Learning Centre, "Markup" (https://libraryguides.centennialcollege.ca/c.php?g=645085&p=5115940).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal

FINE = Context(prec=80, rounding=ROUND_HALF_EVEN)
EXACT = Decimal(1).scaleb(-20)
HUNDREDTH = Decimal("0.01")
NOTHING, ONE = Decimal(0), Decimal(1)
ALL = 100


def entered(amount: float) -> Decimal:
    """An amount in g, ml, mm or pieces as it enters a sum of money: to the hundredth, halves up.

    >>> entered(2.675)
    Decimal('2.68')
    """
    return Decimal(repr(amount)).quantize(HUNDREDTH, ROUND_HALF_UP, FINE)


def exactly(amount: Decimal) -> Decimal:
    """An amount of money as exact ones are kept."""
    return amount.quantize(EXACT, ROUND_HALF_EVEN, FINE)


def cost(price: Decimal, pack: Decimal, used: Decimal) -> Decimal:
    """What `used` of something costs of which `pack` costs `price`; both amounts in one unit, `pack` > 0. Multiplied
    first and divided once.

    >>> cost(Decimal("2.10"), Decimal(250), Decimal(100)).normalize()
    Decimal('0.84')
    """
    return exactly(FINE.divide(FINE.multiply(price, used), pack))


def times(rate: Decimal, amount: Decimal) -> Decimal:
    """A rate times an amount: hours at a wage, kilometres, kilowatt-hours."""
    return exactly(FINE.multiply(rate, amount))


def coins(amount: Decimal, coin: Decimal) -> Decimal:
    """An exact amount in coins, halves up.

    >>> coins(Decimal("0.125"), Decimal("0.01")), coins(Decimal("7.5"), Decimal(1))
    (Decimal('0.13'), Decimal('8'))
    """
    return amount.quantize(coin, ROUND_HALF_UP, FINE)


def total(amounts: Iterable[Decimal]) -> Decimal:
    """Their sum, to the last digit.

    >>> total([Decimal("1e7"), Decimal("1e-20")])
    Decimal('10000000.00000000000000000001')
    """
    found = NOTHING
    for amount in amounts:
        found = FINE.add(found, amount)
    return found


def up_to(amount: Decimal, step: Decimal) -> Decimal:
    """The next multiple of a step that is no less. `step` > 0.

    >>> up_to(Decimal("407.79"), Decimal(5))
    Decimal('410')
    """
    return FINE.multiply(FINE.divide(amount, step).to_integral_value(ROUND_CEILING), step)


def margin_of(mark_up: Decimal) -> Decimal:
    """Which share of the price a mark-up is: m / (1 + m). 25 % on the cost is 20 % of the price.

    >>> margin_of(Decimal("0.25"))
    Decimal('0.2')
    """
    return FINE.divide(mark_up, FINE.add(ONE, mark_up))


def mark_up_of(margin: Decimal) -> Decimal:
    """Which share of the cost a margin is: g / (1 - g), for g < 1. 20 % of the price is 25 % on the cost.

    >>> mark_up_of(Decimal("0.2"))
    Decimal('0.25')
    """
    return FINE.divide(margin, FINE.subtract(ONE, margin))


def vat_in(gross: Decimal, rate: Decimal, coin: Decimal) -> Decimal:
    """The VAT that is in a price: gross x rate / (1 + rate), in coins.

    >>> vat_in(Decimal(120), Decimal("0.2"), Decimal("0.01"))
    Decimal('20.00')
    """
    return coins(FINE.divide(FINE.multiply(gross, rate), FINE.add(ONE, rate)), coin)


def vat_on(net: Decimal, rate: Decimal, coin: Decimal) -> Decimal:
    """The VAT on a price without it, in coins.

    >>> vat_on(Decimal(100), Decimal("0.2"), Decimal("0.01"))
    Decimal('20.00')
    """
    return coins(times(net, rate), coin)


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceMade:
    """How a price came about, in coins: `cost` and `added` and `rounding` are the price without VAT, with `vat` it is
    the price. `least`: it was lifted to the least that is taken."""

    cost: Decimal
    added: Decimal
    rounding: Decimal
    vat: Decimal
    price: Decimal
    least: bool

    @property
    def net(self) -> Decimal:
        """The price without VAT."""
        return self.price - self.vat


def price_of(
    cost: Decimal, added: Decimal, coin: Decimal, step: Decimal, vat: Decimal = NOTHING, least: Decimal = NOTHING
) -> PriceMade:
    """The lowest multiple of `step` that leaves at least `cost` + `added` once the VAT is taken out and is no less than
    `least`. All in coins but the rate of `vat`.

    >>> price_of(Decimal("354.60"), Decimal("53.19"), Decimal("0.01"), Decimal(5)).price
    Decimal('410.00')
    """
    wanted = cost + added
    step = max(up_to(step, coin), coin)
    price = up_to(FINE.multiply(wanted, FINE.add(ONE, vat)), step)
    while price - vat_in(price, vat, coin) < wanted:
        price += step
    # VAT is rounded to a coin, which can be kind to the step below
    while price and price - step - vat_in(price - step, vat, coin) >= wanted:
        price -= step
    lifted = price < least
    price = coins(up_to(least, step) if lifted else price, coin)
    inside = vat_in(price, vat, coin)
    return PriceMade(
        cost=cost, added=added, rounding=price - inside - wanted, vat=inside, price=price, least=lifted
    )  # fmt: skip


def percents(parts: Sequence[Decimal]) -> tuple[int, ...]:
    """Each part of a whole in percent, so that they add up to 100: rounded down, and what is missing goes to those that
    lost most. Zeros if there is nothing at all; parts below nothing count as nothing.

    >>> percents([Decimal(1), Decimal(1), Decimal(1)])
    (34, 33, 33)
    """
    kept = [max(part, NOTHING) for part in parts]
    whole = total(kept)
    if not whole:
        return (0,) * len(kept)
    exact = [FINE.divide(FINE.multiply(part, Decimal(ALL)), whole) for part in kept]
    down = [int(each.to_integral_value(ROUND_FLOOR)) for each in exact]
    lost = sorted(range(len(kept)), key=lambda at: down[at] - exact[at])
    for at in lost[: ALL - sum(down)]:
        down[at] += 1
    return tuple(down)
