"""A quote for whoever asked for a cake: what, when, for how much. It says what `Quote` has room for, and nothing else:
no cost, no hours, no prices paid, nothing of the order's notes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk, cross_contact
from tinbook.pages.base.shared import plural
from tinbook.pages.money.sums import SumWords
from tinbook.pages.orders.order_view import OrderedCake, ordered_cakes
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.money import share
from tinbook.pages.spelling.orders import clock
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.weighing import weigh
from tinbook.plans.mixtures.safety import AllergenStrip, allergens
from tinbook.plans.money.of_orders import OrderMoney, deposit_for
from tinbook.plans.money.till import Till

ASK = "Tell us about any allergy before you agree: this is only what our ingredient cards say."


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """Everything that leaves the kitchen with a quote, in words. `facts`: what stands in its table, name and value;
    `due`: what remains after the deposit."""

    house: str
    made_on: str
    what: tuple[str, ...]
    when: str
    price: str
    with_vat: str
    facts: tuple[tuple[str, str], ...]
    allergens: tuple[str, ...]
    not_food: tuple[str, ...]
    cross_contact: str


def quote(money: OrderMoney, till: Till, desk: Desk, today: date) -> Quote:
    """The quote for an order that is still open. AskError if there is no price to name."""
    order, words = money.order, SumWords(till.money)
    if order.hand_over.date() < today:
        day = words.day(order.hand_over.date())
        raise AskError(f"its day, {day}, is past", 'put "hand over:" right in the order, or write "state: gone"')
    named = order.agreed is not None or order.quoted is not None
    if not named and not money.now.sure:
        names = ", ".join(money.now.cost.unknown)
        raise AskError(
            f"there is no sure price yet: nobody has written what these cost: {names}",
            'log them with "tinbook log price", or write "quoted:" in the order',
        )
    cakes = tuple(ordered_cakes(money.now.worked, desk))
    return Quote(
        house=desk.book.house.name,
        made_on=words.day(today),
        what=tuple(_what(order, cakes, money, desk)),
        when=_when(order, words),
        price=words.whole(money.price),
        with_vat=_vat(till),
        facts=tuple(_facts(money, till, words, today)),
        allergens=tuple(_allergens(money, desk)),
        not_food=tuple(_not_food(cakes)),
        cross_contact=cross_contact(desk),
    )


def _what(order: Order, cakes: tuple[OrderedCake, ...], money: OrderMoney, desk: Desk) -> Iterator[str]:
    for each in cakes:
        serves = each.made.cake.serves
        cups = all(tier.asked.tin.kind.in_trays for tier in each.made.cake.tiers)
        cuts = "" if cups else f", cuts into {plural(serves, 'portion')}"
        yield each.name if cups else f"{each.name}: {each.made.tins_said}{cuts}"
    for tub in money.now.worked.tubs:
        yield f"{formats.grams(tub.mass_g)} {tub.mixture.name}"
    if order.class_:
        known = desk.book.techniques
        names = [known[slug].name for slug in order.class_.techniques if slug in known]
        yield f"A class for {plural(order.class_.people, 'person', 'people')}: {', '.join(names)}"
    if order.guests:
        yield f"For {plural(order.guests, 'guest')}"


def _when(order: Order, words: SumWords) -> str:
    how = "" if order.class_ else ", brought to you" if order.delivered else ", collected from us"
    return f"{words.day(order.hand_over.date())} at {clock(order.hand_over)}{how}"


def _vat(till: Till) -> str:
    return f"with VAT at {share(till.money.vat)}" if till.money.vat else ""


def _facts(money: OrderMoney, till: Till, words: SumWords, today: date) -> Iterator[tuple[str, str]]:
    order = money.order
    if money.deposit is not None:
        yield "Deposit received", words.whole(money.deposit)
        yield "Still to pay", words.whole(money.due)
    elif (asked := deposit_for(money.price, till)) is not None:
        yield "Deposit, which holds the date", words.whole(asked)
        yield "To pay on the day", words.whole(money.price - asked)
    if order.agreed is None:
        yield "This offer stands until", words.day(_stands_until(order, till, today))


def _stands_until(order: Order, till: Till, today: date) -> date:
    days, due = till.money.offer_stands, order.hand_over.date()
    return due if days is None else min(today + timedelta(days), due)


def in_any_letters(order: Order, till: Till, today: date) -> dict[str, str]:
    """What a quote says in signs and letters that a typeface may not have, and what then stands for it: the code of the
    currency, and days in figures."""
    words = SumWords(till.money)
    days = (today, order.hand_over.date(), _stands_until(order, till, today))
    return {words.sign: words.by_code, **{words.day(day): day.isoformat() for day in days}}


def _allergens(money: OrderMoney, desk: Desk) -> Iterator[str]:
    """Of all that is in it, in one."""
    worked, book = money.now.worked, desk.book
    strips = [cake.allergens for cake in worked.cakes]
    strips += [allergens(weigh(tub.slug, tub.mixture, book, desk.facts), book, desk.facts) for tub in worked.tubs]
    if not strips:
        return
    yield from _told(strips)
    yield ASK


def _told(strips: list[AllergenStrip]) -> Iterator[str]:
    contains = dict.fromkeys(each.allergen for strip in strips for each in strip.contains)
    unknown = dict.fromkeys(name for strip in strips for name in strip.unknown)
    if contains:
        yield f"Contains {formats.sentence(contains)}."
    elif not unknown:
        yield "None of the fourteen allergens is listed on our cards. That is no promise that it is free from them."
    if unknown:
        yield f"Not known yet: what is in {formats.sentence(unknown)}."


def _not_food(cakes: tuple[OrderedCake, ...]) -> Iterator[str]:
    for each in cakes:
        found = each.made.not_food
        name = f"{each.name}: " if len(cakes) > 1 else ""
        if found.hidden:
            yield f"{name}hidden inside: {found.hidden}. Take them out as you cut, and count them."
        if found.shown:
            yield f"{name}in plain view: {found.shown}. Not to be eaten."


def quote_text(found: Quote) -> Iterator[str]:
    """A quote as lines to send."""
    yield f"Quote from {found.house}, {found.made_on}"
    yield ""
    yield from found.what
    yield found.when
    yield ""
    yield f"Price: {found.price}{f', {found.with_vat}' if found.with_vat else ''}"
    for name, value in found.facts:
        yield f"{name}: {value}"
    for title, told in (("Allergens", found.allergens), ("Not food", found.not_food)):
        if told:
            yield ""
            yield title
            yield from (formats.title(said) for said in told)
    if found.cross_contact:
        yield ""
        yield found.cross_contact
