"""Prices paid: the newest counts, and only like packs are compared."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from tests.plans.money.conftest import entry

from tinbook.plans.money.paid import PaidPrices, dearer, paid_prices, risen_percent
from tinbook.plans.money.till import Till

LOG = (
    entry("butter", "250 g", "2.00", "2026-03-01"),
    entry("butter", "1 kg", "7.00", "2026-06-01"),
    entry("butter", "250 g", "2.20", "2026-11-01"),
    entry("egg", "6", "2.10", "2026-11-01"),
    entry("Unsalted butter", "250 g", "2.30", "2026-11-01"),
    entry("gel food colour", "25 g", "2.50"),
    entry("ribbon, 15 mm", "25 m", "3.75"),
    entry("drum, round 30 cm", "4 x 1", "6.40"),
)


def paid(till: Till) -> PaidPrices:
    return paid_prices(LOG, till.things)


def test_the_newest_counts_by_any_name_of_its_card(till: Till) -> None:
    newest = paid(till).newest("butter")
    assert newest is not None and (newest.price, newest.amount) == (Decimal("2.30"), Decimal(250))
    assert newest.for_(Decimal(1000)) == Decimal("9.20")


def test_a_shade_goes_by_its_colour(till: Till) -> None:
    found = paid(till)
    assert found.newest("gel food colour, poppy red") == found.newest("gel food colour")
    assert found.newest("salt") is None and found.newest("nothing like it") is None


def test_ribbon_by_the_metre_and_packs_by_the_piece(till: Till) -> None:
    ribbon, drum = paid(till).newest("ribbon, 15 mm"), paid(till).newest("drum, round 30 cm")
    assert ribbon is not None and ribbon.for_(Decimal(1000)) == Decimal("0.15")
    assert drum is not None and drum.for_(Decimal(1)) == Decimal("1.60")


def test_what_is_dearer_is_dearer_for_the_same_pack(till: Till) -> None:
    changed = dearer("butter", paid(till))
    assert changed is not None and (changed[0].price, changed[1].price) == (Decimal("2.20"), Decimal("2.30"))
    assert risen_percent(*changed) == 5
    # a large pack is cheaper by the gram, which is no fall of the price
    other = paid_prices((entry("butter", "1 kg", "7.00", "2026-06-01"), entry("butter", "250 g", "2.20")), till.things)
    assert other.before("butter") is None and dearer("butter", other) is None


def test_a_pack_costs_what_that_pack_did(till: Till) -> None:
    large, small = paid(till).of_pack("butter", 1000.0), paid(till).of_pack("butter", 500.0)
    assert large is not None and large.price == Decimal("7.00")
    assert small is not None and small.price == Decimal("2.30")


def test_as_they_were_known_on_a_day_and_one_change_ago(till: Till) -> None:
    found = paid(till)
    then = found.up_to(date(2026, 4, 1))
    assert set(then.of) == {"butter"} and then.of["butter"][-1].price == Decimal("2.00")
    before = found.one_before().newest("butter")
    assert before is not None and before.price == Decimal("2.20")
    assert found.one_before().newest("egg") == found.newest("egg")


def test_older_than_half_a_year(till: Till) -> None:
    old = paid(till).of["butter"][0]
    assert not old.is_old(date(2026, 8, 31)) and old.is_old(date(2026, 9, 1))
