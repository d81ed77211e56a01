"""Sums of money and days as a language writes them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from babel import Locale
from babel.dates import format_date
from babel.numbers import NumberPattern, parse_pattern

from tinbook.models.currency import NO_CURRENCY, locale_of
from tinbook.models.money import HouseMoney
from tinbook.pages.spelling.formats import MINUS, NBSP
from tinbook.plans.money.paid import PaidPrice
from tinbook.plans.shopping.things import Thing

CODE = re.compile(r"(?<=[A-Z])(?=\d)|(?<=\d)(?=[A-Z])")
"""Between a code and its figure: `BHD 1.250`."""
HALF_WIDTH = str.maketrans("￥￦", "¥₩")
"""Signs as wide as a Chinese character, which stand beside Latin figures here."""


@dataclass(frozen=True)
class SumWords:
    """How a house writes its sums."""

    money: HouseMoney

    @property
    def _locale(self) -> Locale:
        return locale_of(self.money.language)

    def _pattern(self, kind: str, places: int) -> NumberPattern:
        locale = self._locale
        found = locale.currency_formats["standard"] if kind == "currency" else locale.decimal_formats[None]
        own = parse_pattern(found.pattern)
        own.frac_prec = (places, places)
        return own

    def plain(self, amount: Decimal, places: int | None = None) -> str:
        """`24.61`, for a column; `places`: other decimals than the currency has."""
        places = self.money.currency.places if places is None else places
        said = str(self._pattern("decimal", places).apply(amount, self._locale))
        return said.replace("-", MINUS)

    def whole(self, amount: Decimal, places: int | None = None) -> str:
        """`£24.61`, `¥3,200`, `BHD 1.250`."""
        code = self.money.currency.code
        if code == NO_CURRENCY:
            return self.plain(amount, places)
        own = self._pattern("currency", self.money.currency.places if places is None else places)
        said = str(own.apply(amount, self._locale, currency=code, currency_digits=False))
        return CODE.sub(NBSP, said.translate(HALF_WIDTH).replace("-", MINUS).replace(" ", NBSP))

    def short(self, amount: Decimal) -> str:
        """The same without decimals that are all noughts: `£410`."""
        return self.whole(amount, 0) if amount == amount.to_integral_value() else self.whole(amount)

    def more(self, amount: Decimal) -> str:
        """With its sign, for a difference: `+5.00`, `−2.25`."""
        return f"+{self.plain(amount)}" if amount > 0 else self.plain(amount)

    def rate(self, amount: Decimal) -> str:
        """A rate, which may be finer than any coin: `£0.45`, `£0.2875`."""
        exponent = amount.normalize().as_tuple().exponent
        fine = -exponent if isinstance(exponent, int) else 0
        return self.whole(amount, max(fine, self.money.currency.places))

    def day(self, day: date) -> str:
        """`26 Nov 2026`."""
        return format_date(day, "medium", self._locale)

    @property
    def by_code(self) -> str:
        """What stands for the sign where it cannot be shown."""
        return f"{NBSP}{self.money.currency.code}{NBSP}"

    @property
    def sign(self) -> str:
        """The currency's own sign or code; nothing if there is none."""
        code = self.money.currency.code
        if code == NO_CURRENCY:
            return ""
        return str(self._locale.currency_symbols.get(code, code)).translate(HALF_WIDTH)


def by_measure(price: PaidPrice, thing: Thing, words: SumWords) -> str:
    """What a price comes to by the kilo, the litre, the metre or the piece: `£8.60 a kilo`."""
    count, name = {
        "mass": (1000.0, "a kilo"), "volume": (1000.0, "a litre"), "length": (1000.0, "a metre")
    }.get(thing.kind, (1.0, "each"))  # fmt: skip
    return f"{words.whole(price.per(count * thing.per))} {name}"
