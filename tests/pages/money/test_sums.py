"""Sums and days as languages write them, with the decimals of the standard."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from tests.every import every
from tests.plans.money.conftest import entry, money

from tinbook.loading import Loaded
from tinbook.pages.money.sums import SumWords, by_measure
from tinbook.plans.money.paid import paid_prices
from tinbook.plans.shopping.things import Things


@every(
    ("code", "language", "plain", "whole", "day"),
    [
        ("GBP", "en-GB", "1,234.50", "£1,234.50", "26 Nov 2026"), ("JPY", "ja-JP", "1,235", "¥1,235", "2026/11/26"),
        ("BHD", "en-GB", "1,234.500", "BHD\xa01,234.500", "26 Nov 2026"), ("EUR", "fr-FR", "1\u202f234,50", "1\u202f234,50\xa0€", "26 nov. 2026"),
        ("EUR", "de-DE", "1.234,50", "1.234,50\xa0€", "26.11.2026"), ("IQD", "en-GB", "1,234.500", "IQD\xa01,234.500", "26 Nov 2026"),
        ("USD", "en-US", "1,234.50", "$1,234.50", "Nov 26, 2026"),
    ],
)  # fmt: skip
def test_as_a_language_has_it(code: str, language: str, plain: str, whole: str, day: str) -> None:
    words = SumWords(money(currency=code, language=language))
    amount = Decimal("1234.5") if code != "JPY" else Decimal(1235)
    assert (words.plain(amount), words.whole(amount), words.day(date(2026, 11, 26))) == (plain, whole, day)


def test_without_a_currency_there_is_no_sign() -> None:
    words = SumWords(money())
    assert words.whole(Decimal("2.5")) == "2.50" and words.sign == ""
    assert SumWords(money(currency="GBP")).sign == "£"


def test_short_more_and_rates() -> None:
    words = SumWords(money(currency="GBP"))
    assert (words.short(Decimal("410.00")), words.short(Decimal("410.50"))) == ("£410", "£410.50")
    assert (words.more(Decimal(5)), words.more(Decimal("-2.25"))) == ("+5.00", "−2.25")
    assert (words.rate(Decimal("0.2875")), words.rate(Decimal(16))) == ("£0.2875", "£16.00")


@every(
    ("of", "pack", "said"),
    [
        ("butter", "250 g", "£8.40 a kilo"),
        ("egg", "6", "£0.35 each"),
        ("milk", "568 ml", "£3.70 a litre"),
        ("ribbon, 15 mm", "5 m", "£0.42 a metre"),
    ],
)
def test_by_the_measure_it_is_bought_by(demo: Loaded, of: str, pack: str, said: str) -> None:
    things, words = Things(demo.book, demo.facts), SumWords(money(currency="GBP"))
    thing = things.called(of)
    assert thing is not None
    (price,) = paid_prices((entry(of, pack, "2.10"),), things).of[thing.name]
    assert by_measure(price, thing, words) == said
