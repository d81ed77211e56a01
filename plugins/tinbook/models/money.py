"""What is paid and what is asked: house/money.yaml, and house/prices.yaml, which only ever grows."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tinbook.models.currency import NOTHING_SAID, Currency, CurrencyCode, MarkUp, OneSum, PartOfAll, Power, Tongue
from tinbook.models.finish import Day
from tinbook.models.packs import HowMuch
from tinbook.models.reading import Private, Text, Written, such_as, whole_number


class PricePaid(Written):
    """What one pack of something cost."""

    day: Annotated[Day, such_as("2026-12-01")]
    """The day you paid it: year, month, day."""
    of: Annotated[Text, such_as("butter", "gel food colour, black", "drum, round 30 cm")]
    """What it is: an ingredient by any name on its card, a colour with its shade, or a thing with its size."""
    pack: Annotated[HowMuch, such_as("250 g", "6", "4 x 250 g", "25 m")]
    """What you got for it: a weight, a volume, a length, or how many."""
    price: Annotated[OneSum, such_as("2.10", "£2.10", "2.10 GBP")]
    """What you paid for all of that: with VAT, unless you are registered and get it back."""
    note: Annotated[Text | None, such_as("In the sale.")] = None
    """Anything worth knowing about it. Left out: nothing is shown."""


class PriceLog(Written):
    """A log of what you paid. The newest price of a thing counts; the ones before it show how it went."""

    prices: Annotated[
        tuple[PricePaid, ...],
        such_as(
            "- {day: 2026-11-02, of: egg, pack: 6, price: 1.95}\n- {day: 2026-12-01, of: egg, pack: 6, price: 2.10}"
        ),
    ]
    """The prices, one line each. `tinbook log price` adds to it."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""


class KeptUp(Written):
    """What the kitchen costs whether or not a cake is made: rent, insurance, the phone, tools. Write it by the hour
    worked, or by the month."""

    an_hour: Annotated[OneSum | None, such_as("3.20")] = None
    """What that comes to for each hour worked. Left out: write `a month` instead."""
    a_month: Annotated[OneSum | None, such_as("120")] = None
    """What it comes to in a month. Left out: write `an hour` instead."""
    cakes_a_month: Annotated[int | None, whole_number(1, 999), such_as("10")] = None
    """Over how many orders a month is shared out, each taking the same. Left out: write `an hour` instead."""


class OvenFuel(Written):
    """What the oven uses up."""

    draws: Annotated[Power, such_as("2.2 kW", "900 W")]
    """What it draws while it is on, on average: a meter at the plug knows. What its plate says is more."""
    a_kwh: Annotated[OneSum, Field(alias="a kWh", examples=["0.29"])]
    """What you pay for a kilowatt-hour."""


class HouseMoney(Written):
    """What your work costs and how you come to a price. It is for your eyes only: no page for others shows it."""

    paid_in: Annotated[CurrencyCode | None, Field(alias="currency", examples=["GBP", "EUR", "JPY"])] = None
    """The currency of every sum in the book, by its three letters. Left out: sums have no sign, and two decimals."""
    language: Annotated[Tongue, such_as("en-GB", "fr-FR")] = "en-GB"
    """Whose way of writing sums and days you use: a language and a country."""
    an_hour: Annotated[OneSum | None, such_as("16")] = None
    """What you want for an hour of your own work. Left out: your hours cost nothing."""
    kept_up: Annotated[KeptUp | None, such_as("{an hour: 3.20}", "{a month: 120, cakes a month: 10}")] = None
    """What the kitchen costs, whatever is made in it. Left out: nothing."""
    oven: Annotated[OvenFuel | None, such_as("{draws: 2.2 kW, a kWh: 0.29}")] = None
    """What the oven uses up. Left out: nothing."""
    packaging: Annotated[OneSum | None, such_as("1.20")] = None
    """What goes with each order besides boards and boxes: tissue, tape, a card. Left out: nothing."""
    a_km: Annotated[OneSum | None, such_as("0.45")] = None
    """What a kilometre costs you on the road; there and back is counted. Left out: nothing."""
    wasted: Annotated[PartOfAll | None, such_as("3 %")] = None
    """How much more of the ingredients you pay for than goes into cakes: the last smear in the tub, the broken egg.
    Left out: none."""
    mark_up: Annotated[MarkUp | None, Field(alias="mark-up", examples=["25 %"])] = None
    """What you add, as a share of the cost. Left out: what `margin` says; without either, nothing is added."""
    margin: Annotated[PartOfAll | None, such_as("20 %")] = None
    """What you add, as a share of the price without VAT. Left out: what `mark-up` says; without either, nothing is
    added."""
    round_up_to: Annotated[OneSum | None, such_as("5")] = None
    """Prices are rounded up to a multiple of this. Left out: to the smallest coin there is."""
    least: Annotated[OneSum | None, such_as("45")] = None
    """The least you take for an order, whatever it costs. Left out: there is none."""
    vat: Annotated[PartOfAll | None, Field(alias="VAT", examples=["20 %"])] = None
    """The rate of VAT on what you sell, if you are registered. Prices are then with VAT. Left out: you are not."""
    deposit: Annotated[PartOfAll | None, such_as("30 %")] = None
    """The share of the price that holds a date. Left out: a quote asks for none."""
    offer_stands: Annotated[int | None, whole_number(1, 365), such_as("14")] = None
    """For how many days a quote stands. Left out: until the order is handed over."""
    private: Annotated[Private, such_as("yes")] = False
    """This file never leaves the kitchen, whatever you write here."""

    @property
    def currency(self) -> Currency:
        """The currency of every sum."""
        return self.paid_in or NOTHING_SAID

    @property
    def coin(self) -> Decimal:
        """The smallest part of the currency."""
        return smallest(self.currency)


def smallest(currency: Currency) -> Decimal:
    """The smallest part of a currency: 0.01 of a pound, 1 yen."""
    return Decimal(1).scaleb(-currency.places)
