"""Sums of money against published examples, against fractions, and by their laws."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.engine.money import (
    EXACT,
    coins,
    cost,
    entered,
    margin_of,
    mark_up_of,
    percents,
    price_of,
    times,
    total,
    up_to,
    vat_in,
    vat_on,
)

PENNY = Decimal("0.01")
COINS = (Decimal(1), Decimal("0.1"), PENNY, Decimal("0.001"), Decimal("0.0001"))
SUMS = st.decimals(0, 100_000, places=3, allow_nan=False)
SHARES = st.decimals(0, Decimal("0.95"), places=3, allow_nan=False)


@every(
    ("net", "rate", "vat", "gross"),
    [
        ("100", "0.20", "20", "120"),
        ("100", "0.05", "5", "105"),
        ("100", "0.15", "15", "115"),
        ("100", "0.175", "17.50", "117.50"),
    ],
)
def test_vat_both_ways_by_hmrc(net: str, rate: str, vat: str, gross: str) -> None:
    """HM Revenue & Customs, Calculating VAT for VAT-inclusive and VAT-exclusive prices
    (http://www.hmrc.gov.uk/vat/forms-rates/rates/calculating.htm): the first two. The other two are of the rates before
    2011, by the VAT fractions 3/23 and 7/47, from its table of rates and fractions."""
    assert vat_on(Decimal(net), Decimal(rate), PENNY) == Decimal(vat)
    assert vat_in(Decimal(gross), Decimal(rate), PENNY) == Decimal(vat)
    assert price_of(Decimal(net), Decimal(0), PENNY, PENNY, vat=Decimal(rate)).price == Decimal(gross)


@every(("mark_up", "margin"), [("0.25", "0.2"), ("1", "0.5"), ("0.6", "0.375"), ("0", "0"), ("3", "0.75")])
def test_mark_up_and_margin_by_the_book(mark_up: str, margin: str) -> None:
    """A quarter on the cost is a fifth of the price, and as much again is half of it: most textbooks, from memory, by the
    two definitions that engine/money names."""
    assert margin_of(Decimal(mark_up)) == Decimal(margin) and mark_up_of(Decimal(margin)) == Decimal(mark_up)


def test_a_pair_of_prices_by_hand() -> None:
    """Cost 40, half of it added: 60, of which a third is margin (from memory, a common example)."""
    added = times(Decimal(40), Decimal("0.5"))
    made = price_of(Decimal(40), coins(added, PENNY), PENNY, PENNY)
    assert made.price == 60 and made.rounding == 0
    assert coins(margin_of(Decimal("0.5")) * 100, PENNY) == Decimal("33.33")


@given(SHARES)
@many(2000)
def test_margin_and_mark_up_are_each_others_undoing(margin: Decimal) -> None:
    back = margin_of(mark_up_of(margin))
    assert abs(Fraction(back) - Fraction(margin)) < Fraction(1, 10**60)


@given(SUMS, st.decimals("0.01", 5000, places=2), SUMS)
@many(3000)
def test_a_cost_is_the_fraction_rounded_once(price: Decimal, pack: Decimal, used: Decimal) -> None:
    exact = Fraction(price) * Fraction(used) / Fraction(pack)
    found = cost(price, pack, used)
    assert abs(Fraction(found) - exact) <= Fraction(EXACT) / 2
    for coin in COINS:
        steps = exact / Fraction(coin) + Fraction(1, 2)
        assert Fraction(coins(found, coin)) == (steps.numerator // steps.denominator) * Fraction(coin)


def test_halves_go_up_where_a_quotient_is_one() -> None:
    """1.00 for 300 g: 4.5 g are 0.015 exactly, though a hundredth of a gram has no last digit."""
    assert coins(cost(Decimal("1.00"), Decimal(300), Decimal("4.5")), PENNY) == Decimal("0.02")
    assert entered(0.125) == Decimal("0.13") and entered(1.005) == Decimal("1.01")


@given(SUMS, SUMS, st.sampled_from(COINS), st.sampled_from(["0.01", "0.5", "1", "5", "7.5", "1000"]), SHARES, SUMS)
@many(3000)
def test_a_price_adds_up_covers_its_cost_and_is_rounded(
    spent: Decimal, more: Decimal, coin: Decimal, step: str, vat: Decimal, least: Decimal
) -> None:
    spent, more = coins(spent, coin), coins(more, coin)
    made = price_of(spent, more, coin, Decimal(step), vat, least)
    assert made.cost + made.added + made.rounding + made.vat == made.price
    assert made.net >= spent + more and made.rounding >= 0 and made.price >= least
    whole = max(up_to(Decimal(step), coin), coin)
    assert Fraction(made.price) % Fraction(whole) == 0
    assert made.vat == vat_in(made.price, vat, coin)
    # a step less would not do
    under = made.price - whole
    assert under < 0 or under < least or under - vat_in(under, vat, coin) < spent + more


@given(SUMS, SUMS, SHARES)
@many(1000)
def test_a_price_never_falls_when_its_cost_rises(spent: Decimal, more: Decimal, vat: Decimal) -> None:
    low, high = coins(spent, PENNY), coins(spent + more, PENNY)
    assert (
        price_of(low, Decimal(0), PENNY, Decimal(5), vat).price
        <= price_of(high, Decimal(0), PENNY, Decimal(5), vat).price
    )


@given(st.lists(SUMS, max_size=8))
@many(1000)
def test_percents_add_up(parts: list[Decimal]) -> None:
    found = percents(parts)
    whole = sum(parts)
    assert sum(found) == (100 if whole else 0)
    for part, percent in zip(parts, found, strict=True):
        assert not whole or abs(percent - part * 100 / whole) < 1


def test_a_sum_keeps_its_last_digit() -> None:
    assert total([Decimal("9999999.99"), EXACT]) == Decimal("9999999.99000000000000000001")
