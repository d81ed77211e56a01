"""The oracle itself, by hand."""

from __future__ import annotations

from fractions import Fraction

from tests.oracles.money import Kept, half_up, hundredths, price, rows

PENNY = Fraction(1, 100)


def test_by_hand() -> None:
    """250 g of a 2.00 pack of 500 g is 1.00; half an hour at 10.00 is 5.00; 25 % on 6.00 is 1.50; 20 % on 7.50 is 1.50."""
    kept = Kept(
        coin=PENNY,
        an_hour=Fraction(10),
        mark_up=Fraction(1, 4),
        vat=Fraction(1, 5),
        paid={"butter": (Fraction(2), Fraction(500))},
    )
    found = rows([(("best butter", "butter"), 250.0, True), (("gold leaf",), 1.0, True)], 30.0, 0.0, kept)
    assert found == [1, 5] and price(found, kept) == (6, Fraction(3, 2), Fraction(3, 2), 9)


def test_rounding() -> None:
    assert half_up(Fraction(1, 200), PENNY) == PENNY and half_up(Fraction(1, 201), PENNY) == 0
    assert hundredths(2.675) == Fraction(268, 100)
