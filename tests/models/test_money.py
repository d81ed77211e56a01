"""The money and the prices as they are written: everything may be left out."""

from __future__ import annotations

from decimal import Decimal

from tests.every import every

from tinbook.models import read_model
from tinbook.models.currency import NOTHING_SAID
from tinbook.models.money import HouseMoney, PricePaid


def test_money_that_says_nothing() -> None:
    found, flaws = read_model(HouseMoney, {}, "money.yaml")
    assert found is not None and not flaws
    assert found.currency == NOTHING_SAID and found.language == "en-GB" and found.coin == Decimal("0.01")
    said = {name for name in HouseMoney.model_fields if getattr(found, name) not in (None, False)}
    assert said == {"language"}


def test_money_that_says_all() -> None:
    data = {"currency": "BHD", "mark-up": "140 %", "VAT": "20 %", "oven": {"draws": "900 W", "a kWh": "0.0295"}}
    found, flaws = read_model(HouseMoney, data, "money.yaml")
    assert found is not None and not flaws
    assert found.coin == Decimal("0.001") and found.mark_up == Decimal("1.4") and found.vat == Decimal("0.2")
    assert found.oven is not None and found.oven.draws == Decimal("0.9")


@every(
    ("key", "said", "hint"),
    [
        ("margin", "100 %", "smaller share"), ("margin", "20", "write 20 %"), ("mark-up", "-5 %", "15 %"), ("mark-up", "1500 %", "check"),
        ("currency", "POUNDS", "GBP"), ("currency", "DEM", "GBP"), ("language", "English", "en-GB"), ("an hour", "-16", "16"),
        ("oven", {"draws": "2 kWh", "a kWh": "1"}, "2.2 kW"), ("oven", {"draws": "0 kW", "a kWh": "1"}, "2.2 kW"), ("offer stands", "0", "1 to 365"), ("wage", "12", ""),
    ],
)  # fmt: skip
def test_a_slip_says_what_to_write(key: str, said: object, hint: str) -> None:
    found, flaws = read_model(HouseMoney, {key: said}, "money.yaml")
    assert found is None and len(flaws) == 1 and hint in flaws[0].hint and flaws[0].message


def test_a_price_needs_its_pack() -> None:
    found, flaws = read_model(PricePaid, {"day": "2026-12-01", "of": "butter", "price": "2.10"}, "this price")
    assert (found is None and [flaw.path for flaw in flaws] == [("pack",)]) or "pack" in flaws[0].message
    assert "250 g" in flaws[0].hint
