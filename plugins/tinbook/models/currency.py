"""Sums of money as they are written, and the currency a house reckons in."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, Annotated

from tinbook.models.reading import like, spelled
from tinbook.units import Measures, Misread, patterns

if TYPE_CHECKING:
    from babel import Locale

USUAL_PLACES, MOST_PLACES, LARGEST = 2, 6, Decimal(10_000_000)
_NONE = ("BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF")
_THREE = ("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND")
PLACES: Mapping[str, int] = {
    **dict.fromkeys((*_NONE, "XPF"), 0),
    **dict.fromkeys(_THREE, 3),
    **dict.fromkeys(("CLF", "UYW"), 4),
}
"""Decimal places of the minor unit, where there are not two: ISO 4217, list one, from memory."""
NOT_MONEY = frozenset(
    ("CNH", "XAG", "XAU", "XBA", "XBB", "XBC", "XBD", "XDR", "XPD", "XPT", "XSU", "XTS", "XUA", "XXX")
)
"""Metals, codes for tests and the like: nothing in a shop has its price in them."""
NO_CURRENCY = "XXX"
"""ISO 4217's own code for no currency: amounts stand by themselves."""
_SUM = re.compile(r"([^0-9\s.,+−–-]{0,4})\s*([0-9]+(?:\.[0-9]+)?)\s*([^0-9\s.,+−–-]{0,4})")
_SHARE = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*%")
_POWER = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*(kW|W)")
_AWAY = re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*(km|kilomet(?:re|er)s?|miles?|mi)")
KM_IN_MILE = Decimal("1.609344")
"""Exactly, by definition."""


@dataclass(frozen=True, slots=True)
class Currency:
    """A currency by its code, and the decimal places of its smallest part."""

    code: str
    places: int


@dataclass(frozen=True, slots=True)
class MoneySaid:
    """A sum as it was written; `sign`: the currency's sign or code, empty if there is none."""

    amount: Decimal
    sign: str
    written: str

    @property
    def places(self) -> int:
        """Decimal places that say something: `2.50` has one."""
        exponent = self.amount.normalize().as_tuple().exponent
        return max(0, -exponent) if isinstance(exponent, int) else 0


POUNDS = Currency("GBP", 2)
NOTHING_SAID = Currency(NO_CURRENCY, USUAL_PLACES)


@lru_cache(maxsize=1)
def currencies() -> frozenset[str]:
    """The codes of money that is in use somewhere today."""
    from babel.core import get_global

    every = get_global("territory_currencies").values()
    return frozenset(code for of in every for code, _, end, _ in of if end is None) - NOT_MONEY


def read_currency(text: str, _: Measures) -> Currency:
    """`GBP`: a code of ISO 4217; raises Misread."""
    code = text.upper()
    if code not in currencies():
        hint = "write the three letters of your currency, such as GBP, EUR, USD or JPY"
        raise Misread(f'"{text}" is not the code of a currency', hint, 0, len(text))
    return Currency(code, PLACES.get(code, USUAL_PLACES))


def read_money(text: str, _: Measures) -> MoneySaid:
    """`2.10`, `2.10 GBP`, `£2.10`; raises Misread."""
    found = _SUM.fullmatch(text)
    if found is None or (found[1] and found[3]):
        raise _misread_money(text)
    amount = Decimal(found[2])
    if amount >= LARGEST:
        raise Misread(f'"{text}" is more than any cake costs', "check the figure", 0, len(text))
    said = MoneySaid(amount, found[1] or found[3], text)
    if said.places > MOST_PLACES:
        raise Misread(f'"{text}" is too fine', f"write at most {MOST_PLACES} decimals", 0, len(text))
    return said


def _misread_money(text: str) -> Misread:
    """Why a text is not a sum, and what to write instead."""
    plain = re.sub(r"[^\d.,]", "", text)
    if re.search(r"[-−–]\s*\d", text) or text.startswith(("-", "−", "–")):
        return Misread(f'"{text}" is less than nothing', f"write it without the minus: {plain or '2.10'}", 0, len(text))
    if "," in plain:
        whole, _, rest = plain.rpartition(",")
        meant = plain.replace(",", "") if len(rest) == 3 or "." in plain else f"{whole.replace(',', '')}.{rest}"
        return Misread(f'"{text}" has a comma in it', f"write it with a point for the decimals: {meant}", 0, len(text))
    return Misread(f'"{text}" is not a sum of money', "write a plain figure, such as 2.10", 0, len(text))


def _share(text: str) -> Decimal:
    found = _SHARE.fullmatch(text)
    if found is None:
        hint = f"write {text} %" if re.fullmatch(r"[0-9]+(?:\.[0-9]+)?", text) else "write a figure and %, such as 15 %"
        raise Misread(f'"{text}" is not a share', hint, 0, len(text))
    return Decimal(found[1]) / 100


def _below_all(text: str, _: Measures) -> Decimal:
    share = _share(text)
    if share >= 1:
        hint = "write a smaller share, such as 30 %: of a price nobody can keep all"
        raise Misread(f'"{text}" is all of it, or more', hint, 0, len(text))
    return share


def _mark_up(text: str, _: Measures) -> Decimal:
    share = _share(text)
    if share > 10:
        raise Misread(f'"{text}" is more than ten times the cost', "check the figure", 0, len(text))
    return share


def _power(text: str, _: Measures) -> Decimal:
    found = _POWER.fullmatch(text)
    kilowatts = Decimal(found[1]) / (1 if found[2] == "kW" else 1000) if found else Decimal(0)
    if not 0 < kilowatts <= 100:
        raise Misread(f'"{text}" is not what an oven draws', "write it such as 2.2 kW", 0, len(text))
    return kilowatts


def _away(text: str, _: Measures) -> Decimal:
    found = _AWAY.fullmatch(text)
    if found is None or not Decimal(found[1]):
        raise Misread(f'"{text}" is not how far it is', "write it such as 18 km or 11 miles", 0, len(text))
    return Decimal(found[1]) * (KM_IN_MILE if found[2].startswith("mi") else 1)


def locale_of(tag: str) -> Locale:
    """How a language writes sums and days. ValueError for one that nobody has written down."""
    from babel import Locale, UnknownLocaleError

    try:
        return Locale.parse(tag, sep="-" if "-" in tag else "_")
    except UnknownLocaleError as error:
        raise ValueError(str(error)) from None


def fits_currency(sign: str, currency: Currency, language: str) -> bool:
    """Whether a sign that was written means this currency, in its own country's short form too."""
    if not sign or sign.upper() == currency.code:
        return True
    if currency.code == NO_CURRENCY:
        return False
    from babel.numbers import get_currency_symbol

    signs = {get_currency_symbol(currency.code, locale_of(tag)) for tag in ("en", language)}
    return sign in signs | {each.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ") for each in signs}


def _language(text: str, _: Measures) -> str:
    try:
        locale_of(text)
    except (ValueError, TypeError):
        hint = "write a language and a country, such as en-GB, fr-FR or ja-JP"
        raise Misread(f'"{text}" is not a language that is known', hint, 0, len(text)) from None
    return text.replace("_", "-")


SUM = r"[^0-9\s.,+−–-]{0,4}\s*[0-9]+(?:\.[0-9]+)?\s*[^0-9\s.,+−–-]{0,4}"
_LIKE_SUM = {"type": ["string", "number"], "pattern": patterns.whole(SUM)}
_LIKE_SHARE = like(r"[0-9]+(?:\.[0-9]+)?\s*%", "share")
OneSum = Annotated[MoneySaid, spelled(read_money, _LIKE_SUM)]
CurrencyCode = Annotated[Currency, spelled(read_currency, like("[A-Za-z]{3}", "currency"))]
PartOfAll = Annotated[Decimal, spelled(_below_all, _LIKE_SHARE)]
"""A share of a whole, below all of it."""
MarkUp = Annotated[Decimal, spelled(_mark_up, _LIKE_SHARE)]
"""A share of the cost, which may be more than all of it."""
Power = Annotated[Decimal, spelled(_power, like(r"[0-9]+(?:\.[0-9]+)?\s*(?:kW|W)", "power"))]
"""In kW."""
Away = Annotated[
    Decimal, spelled(_away, like(r"[0-9]+(?:\.[0-9]+)?\s*(?:km|kilomet(?:re|er)s?|miles?|mi)", "distance"))
]
"""In km."""
Tongue = Annotated[str, spelled(_language, like("[A-Za-z]{2,3}(?:[-_][A-Za-z0-9]+)*", "language"))]
