"""Cakes in every size with their prices; what if."""

from __future__ import annotations

from decimal import Decimal

import pytest
from tests.plans.money.conftest import TillOf

from tinbook.engine.money import coins
from tinbook.plans.base.asking import AskError
from tinbook.plans.money.offered import cake_priced, priced, sizes_priced, what_ifs
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked


def test_every_size_offered_has_its_price(till: Till) -> None:
    found = sizes_priced("lighthouse-cake", till)
    own = next(each for each in found if each.size.steps == 0)
    assert own.priced.price == cake_priced("lighthouse-cake", None, till).price
    assert [each.priced.serves for each in found] == [each.size.serves for each in found]
    food = [each.priced.cost.of("ingredients").exact for each in found]
    assert food == sorted(food) and len(found) > 5
    with pytest.raises(AskError):
        cake_priced("lighthouse-cake", "as big as the sea", till)


def test_what_it_comes_to_for_each(till: Till) -> None:
    found = cake_priced("lighthouse-cake", None, till)
    assert found.each(found.serves) == coins(found.price.price / found.serves, till.coin)
    assert found.each(0) is None
    hours = Decimal(found.hours.hands_min) / 60
    left = found.price.net - (found.cost.shown - found.cost.of("hours").shown)
    assert found.hour_shown == coins(left / hours, till.coin)


def test_what_if(orders_worked: dict[str, OrderWorked], till_with: TillOf) -> None:
    till = till_with(currency="GBP", an_hour="12", mark_up="50 %")
    now = priced(orders_worked["wedding"], till)
    ifs = {(each.said.key, *dict(each.said.figures).values()): each for each in what_ifs(now, till)}
    # an hour is 12, and half as much is added
    assert ifs["if_hours", 1.0].more == Decimal("18.00") and ifs["if_hours", -1.0].more == Decimal("-18.00")
    assert {key[0] for key in ifs} == {"if_hours", "if_guests", "if_filling", "if_cover"}
    for each in ifs.values():
        assert each.price == now.price.price + each.more
    assert len({each.price for each in ifs.values()}) > 4


def test_what_is_not_filled_or_is_no_cake_has_only_hours(orders_worked: dict[str, OrderWorked], till: Till) -> None:
    for slug in ("tubs", "cups"):
        found = priced(orders_worked[slug], till)
        assert {each.said.key for each in what_ifs(found, till)} <= {"if_hours"}
