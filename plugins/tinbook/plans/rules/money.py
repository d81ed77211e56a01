"""What is wrong with what is paid and asked: each slip with what to write instead."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from tinbook.models import Flaw
from tinbook.models.currency import NO_CURRENCY, MoneySaid, fits_currency
from tinbook.models.money import HouseMoney, PricePaid
from tinbook.models.orders import Order
from tinbook.models.reading import Path
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.stock import SOUND, other_kind, unknown_thing
from tinbook.plans.shopping.things import Things


def money_flaws(money: HouseMoney) -> Iterator[Flaw]:
    """What is wrong with house/money.yaml."""
    if money.mark_up is not None and money.margin is not None:
        hint = "keep the one you go by: the book says what the other comes to"
        message = "a price has either a mark-up or a margin"
        yield Flaw(code="money", path=("margin",), message=message, hint=hint, on_key=True)
    yield from _kept_up_flaws(money)
    for path, said, whole in _sums(money):
        yield from sum_flaws(said, path, money, whole)
    if money.round_up_to is not None and not money.round_up_to.amount:
        hint = "write something like 5, or leave it out"
        yield Flaw(code="money", path=("round up to",), message="nothing can be rounded up to this", hint=hint)


def _kept_up_flaws(money: HouseMoney) -> Iterator[Flaw]:
    kept = money.kept_up
    if kept is None:
        return
    path: Path = ("kept up",)
    if kept.an_hour is not None and (kept.a_month is not None or kept.cakes_a_month is not None):
        message, hint = "this says it by the hour and by the month", 'keep either "an hour" or the other two'
        yield Flaw(code="money", path=path, message=message, hint=hint)
    elif kept.an_hour is None and (kept.a_month is None or kept.cakes_a_month is None):
        hint = 'write "an hour: 3.20", or both "a month: 120" and "cakes a month: 10"'
        yield Flaw(code="money", path=path, message="this does not say what it comes to", hint=hint)


def _sums(money: HouseMoney) -> Iterator[tuple[Path, MoneySaid, bool]]:
    """Every sum in it with its place, and whether somebody hands it over: a rate may be finer than any coin."""
    kept, oven = money.kept_up, money.oven
    told = (
        (("an hour",), money.an_hour, False),
        (("kept up", "an hour"), kept.an_hour if kept else None, False),
        (("kept up", "a month"), kept.a_month if kept else None, False),
        (("oven", "a kWh"), oven.a_kwh if oven else None, False),
        (("packaging",), money.packaging, True),
        (("a km",), money.a_km, False),
        (("round up to",), money.round_up_to, True),
        (("least",), money.least, True),
    )
    yield from ((path, said, whole) for path, said, whole in told if said is not None)


def sum_flaws(said: MoneySaid, path: Path, money: HouseMoney, whole: bool = True) -> Iterator[Flaw]:
    """What is wrong with a sum in a book with this money. `whole`: somebody hands it over, in coins."""
    code, places = money.currency.code, money.currency.places
    if not fits_currency(said.sign, money.currency, money.language):
        message = f'"{said.written}" is in another currency than the book\'s, {code}'
        hint = f"write what it came to in {code}, without a sign"
        if code == NO_CURRENCY:
            message = f'"{said.written}" names a currency, and the book has none'
            hint = 'leave the sign out, or add such as "currency: GBP" to house/money.yaml'
        yield Flaw(code="currency", path=path, message=message, hint=hint)
    elif whole and said.places > places:
        message = f'"{said.written}" is finer than a coin: {code} has {places} decimals'
        if not places:
            message = f'"{said.written}" is finer than a coin: {code} has no smaller part'
        yield Flaw(code="currency", path=path, message=message, hint=f"write something like {said.amount:.{places}f}")


def price_flaws(
    entry: PricePaid, things: Things, money: HouseMoney, spoilt: Spoilt = SOUND, today: date | None = None
) -> Iterator[Flaw]:
    """What is wrong with a price in the log; `spoilt`: cards lost by a problem told elsewhere; `today`: the day it is
    held against, if it is."""
    if today and entry.day > today:
        message, hint = f"{entry.day.isoformat()} is still to come", "write the day on which it was paid"
        yield Flaw(code="future", path=("day",), message=message, hint=hint)
    yield from sum_flaws(entry.price, ("price",), money)
    thing = things.called(entry.of)
    if thing is None:
        yield unknown_thing(entry.of, things, spoilt)
    elif things.amount_of(thing, entry.pack) is None:
        yield other_kind("pack", entry.pack.kind, thing, things)
    elif not entry.pack.total:
        hint = "write how much you got for it, as it stands on the pack"
        yield Flaw(code="pack", path=("pack",), message=f'"{entry.pack.written}" is nothing', hint=hint)


def order_money_flaws(order: Order, money: HouseMoney) -> Iterator[Flaw]:
    """What is wrong with the sums of an order."""
    for key in ("quoted", "agreed", "deposit"):
        said = getattr(order, key)
        if said is not None:
            yield from sum_flaws(said, (key,), money)
    price = order.agreed or order.quoted
    if price and order.deposit and order.deposit.amount > price.amount:
        message = f"a deposit of {order.deposit.written} is more than the price, {price.written}"
        yield Flaw(code="money", path=("deposit",), message=message, hint="check which of the two is right")
