"""What recipes cost: by hand, and for every one of the demo."""

from __future__ import annotations

from decimal import Decimal

from tests.plans.money.conftest import TillOf, entry

from tinbook.engine.money import HUNDREDTH, coins
from tinbook.plans.money.of_mixtures import mixture_cost, mixture_costs
from tinbook.plans.money.till import Till


def test_a_sponge_by_hand(till_with: TillOf, till: Till) -> None:
    """What its lines weigh, each at its price; a pack of six eggs is six times one egg of the house's size."""
    prices = (
        entry("butter", "250 g", "2.50"), entry("caster sugar", "1 kg", "1.50"), entry("self-raising flour", "1 kg", "1.00"),
        entry("egg", "6", "2.40"), entry("milk", "1 l", "1.00"), entry("vanilla extract", "100 ml", "6.00"),
    )  # fmt: skip
    own = till_with(prices, currency="GBP")
    found = mixture_cost("creamed-butter-sponge", own)
    rows = {row.of: row for row in found.cost.rows}
    butter, egg = rows["butter"], rows["egg"]
    assert butter.exact == Decimal("0.01") * Decimal(str(butter.amount))
    one = own.things.one(own.things.of_card("egg"), "count") or 0.0
    assert coins(egg.exact or Decimal(0), HUNDREDTH) == coins(Decimal(egg.amount / one) * Decimal("0.40"), HUNDREDTH)
    assert found.tin is not None and abs(found.tin * found.tins - found.cost.shown) < Decimal("1e-18")
    assert abs(found.hundred * found.makes_g / 100 - found.cost.shown) < Decimal("1e-15")


def test_every_recipe_of_the_demo(till: Till) -> None:
    found = list(mixture_costs(till))
    assert {each.slug for each in found} == set(till.book.mixtures)
    assert [each.name.lower() for each in found] == sorted(each.name.lower() for each in found)
    for each in found:
        assert each.hundred_shown > 0 and (each.tin is None) == (each.in_tin is None), each.slug
        assert each.tins != 1 or each.tin_shown == each.cost.shown, each.slug
    assert sum(each.tins == 1 for each in found) > 3


def test_packaging_and_hours_are_not_in_a_recipe(till_with: TillOf) -> None:
    bare, rich = till_with(currency="GBP"), till_with(currency="GBP", packaging="5", an_hour="16", mark_up="50 %")
    assert mixture_cost("marzipan", bare).cost.exact == mixture_cost("marzipan", rich).cost.exact
