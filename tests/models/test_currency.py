"""Sums as they are written, and currencies with the right decimals."""

from __future__ import annotations

from decimal import Decimal

import pytest
from babel.numbers import get_currency_precision
from tests.every import every

from tinbook.models.currency import (
    PLACES,
    Currency,
    currencies,
    fits_currency,
    locale_of,
    read_currency,
    read_money,
)
from tinbook.models.reading import NONE
from tinbook.units import METRIC, Misread

HABIT = {
    "AFN", "ALL", "IQD", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "RSD", "SOS", "SYP", "YER",
}  # fmt: skip
"""Where the decimals in use (CLDR, as Babel has them) are fewer than the standard's."""


def test_minor_units_are_those_of_the_standard() -> None:
    """ISO 4217 against CLDR, another list: they differ where small coins have gone out of use."""
    assert {"GBP", "EUR", "USD", "JPY", "BHD", "CLF"} <= currencies() and "XXX" not in currencies()
    differ = {code for code in currencies() if get_currency_precision(code) != PLACES.get(code, 2)}
    assert differ <= HABIT
    assert (PLACES["JPY"], PLACES["BHD"], PLACES["KWD"], PLACES["KRW"], PLACES["IQD"]) == (0, 3, 3, 0, 3)


def test_every_currency_is_read_in_any_case() -> None:
    for code in currencies():
        assert read_currency(code.lower(), METRIC) == Currency(code, PLACES.get(code, 2))


@every(
    ("text", "amount", "sign"),
    [
        ("2.10", "2.10", ""),
        ("£2.10", "2.10", "£"),
        ("2.10 GBP", "2.10", "GBP"),
        ("410", "410", ""),
        ("0", "0", ""),
        ("3 €", "3", "€"),
        ("R$ 12.5", "12.5", "R$"),
    ],
)
def test_sums_are_read(text: str, amount: str, sign: str) -> None:
    said = read_money(text, METRIC)
    assert (said.amount, said.sign, said.written) == (Decimal(amount), sign, text)


@every(
    ("text", "hint"),
    [
        ("-2.10", "without the minus: 2.10"), ("−3", "without the minus: 3"), ("2,10", "2.10"), ("1,250", "1250"), ("1,250.50", "1250.50"), ("two pounds", "2.10"),
        ("£2 GBP", "2.10"), ("2.1234567", "6 decimals"), ("99999999", "check the figure"), (NONE, "2.10"), ("", "2.10"), ("1e3", "2.10"),
    ],
)  # fmt: skip
def test_what_is_no_sum_says_what_to_write(text: str, hint: str) -> None:
    with pytest.raises(Misread) as told:
        read_money(text, METRIC)
    assert hint in told.value.hint


def test_a_sign_belongs_to_its_currency() -> None:
    pounds, dollars, none = Currency("GBP", 2), Currency("AUD", 2), Currency("XXX", 2)
    assert (
        fits_currency("", pounds, "en-GB")
        and fits_currency("£", pounds, "en-GB")
        and fits_currency("gbp", pounds, "en-GB")
    )
    assert not fits_currency("€", pounds, "en-GB") and not fits_currency("USD", pounds, "en-GB")
    assert fits_currency("$", dollars, "en-AU") and fits_currency("A$", dollars, "en-GB")
    assert fits_currency("", none, "en-GB") and not fits_currency("£", none, "en-GB")


def test_languages_are_known_or_refused() -> None:
    assert str(locale_of("fr-FR")) == str(locale_of("fr_FR")) == "fr_FR"
    with pytest.raises(ValueError, match="xx"):
        locale_of("xx-YY")
