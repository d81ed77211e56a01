"""What an order costs: against fractions to the last digit, by its laws, and by hand."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest
from tests.every import all_seeds, check_every
from tests.oracles import money as oracle
from tests.plans.money.conftest import TillOf, entry, money

from tinbook.models.currency import PLACES, currencies
from tinbook.models.money import HouseMoney
from tinbook.models.orders import Order
from tinbook.plans.money.cost import (
    BOARDS,
    GROUPS,
    INGREDIENTS,
    PACKAGING,
    WASTED,
    CostSum,
    asked_for,
    cost_of,
    cost_of_needs,
    material_rows,
    recipe_rows,
)
from tinbook.plans.money.hours import OrderHours, hours_of
from tinbook.plans.money.paid import PaidPrice, PaidPrices
from tinbook.plans.money.till import Till
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.shopping.needs import OrderNeeds, needs_of
from tinbook.plans.shopping.shopping import shopping_list
from tinbook.plans.shopping.things import FOOD

SEEDS = 4000 if all_seeds() else 100
DAY = date(2026, 12, 5)
ORDER = Order.model_construct({"cake"}, handle="quay")


@dataclass
class Case:
    """A random cake in a random currency."""

    needs: OrderNeeds
    hours: OrderHours
    till: Till
    kept: oracle.Kept


def scaled(needs: OrderNeeds, by: float) -> OrderNeeds:
    return replace(needs, food={name: mass * by for name, mass in needs.food.items()})


def random_case(seed: int, pool: list[OrderNeeds], till: Till) -> Case:
    """A cake of the demo, larger or smaller, at prices, wages, rates and in a currency of any kind."""
    dice = random.Random(seed)
    code = dice.choice(sorted(currencies()))
    places = PLACES.get(code, 2)

    def sum_of(most: int) -> str:
        return f"{Decimal(dice.randint(0, most * 10**places)).scaleb(-places):f}"

    def share(most: int) -> str:
        return f"{dice.randint(0, most * 10) / 10} %"

    keys = {"currency": code, "packaging": sum_of(30), "wasted": share(20)}
    keys |= {"an_hour": f"{dice.randint(0, 900_000) / 10_000}"}
    keys |= {"kept_up": {"an hour": sum_of(20)}} if dice.random() < 0.7 else {}
    keys |= {"oven": {"draws": "1.7 kW", "a kWh": "0.2931"}} if dice.random() < 0.7 else {}
    keys |= {"margin": share(80)} if dice.random() < 0.5 else {"mark_up": share(150)}
    keys |= {"round_up_to": dice.choice(["1", "5", "25"])} if dice.random() < 0.5 else {}
    keys |= {"VAT": dice.choice(["20 %", "5 %", "8.1 %", "25 %"])} if dice.random() < 0.5 else {}
    keys |= {"least": sum_of(40_000)} if dice.random() < 0.2 else {}
    own: HouseMoney = money(**keys)
    needs = scaled(dice.choice(pool), dice.uniform(0.2, 4.0))
    names = [*needs.food, *needs.pieces, *(thing.name for thing in map(till.things.of_supply, till.things.supplies))]
    paid = {
        name: PaidPrice(
            day=DAY, price=Decimal(sum_of(20)), amount=Decimal(dice.randint(100, 500_000)).scaleb(-2), written="?"
        )
        for name in dict.fromkeys((*names, "egg"))
        if dice.random() < 0.9
    }
    minutes = dice.randint(0, 3000)
    hours = OrderHours(
        hands_min=minutes,
        least_min=minutes // 2,
        oven_min=dice.randint(0, 600),
        oven_least_min=0,
        own=0,
        logged=0,
        tasks=1,
    )
    margin = Fraction(own.margin or 0)
    kept = oracle.Kept(
        coin=Fraction(1, 10**places),
        an_hour=Fraction(own.an_hour.amount if own.an_hour else 0),
        kept_an_hour=Fraction(own.kept_up.an_hour.amount if own.kept_up and own.kept_up.an_hour else 0),
        oven_an_hour=Fraction(17, 10) * Fraction(2931, 10_000) if own.oven else Fraction(0),
        packaging=Fraction(own.packaging.amount if own.packaging else 0),
        wasted=Fraction(own.wasted or 0),
        mark_up=margin / (1 - margin) if own.margin is not None else Fraction(own.mark_up or 0),
        step=Fraction(own.round_up_to.amount if own.round_up_to else 0),
        vat=Fraction(own.vat or 0),
        least=Fraction(own.least.amount if own.least else 0),
        paid={name: (Fraction(each.price), Fraction(each.amount)) for name, each in paid.items()},
    )
    prices = PaidPrices(things=till.things, of={name: (each,) for name, each in paid.items()})
    return Case(needs, hours, replace(till, money=own, paid=prices), kept)


@pytest.fixture(scope="module")
def pool(orders_worked: dict[str, OrderWorked], till: Till) -> list[OrderNeeds]:
    return [needs_of(each, till.things) for each in orders_worked.values()]


@pytest.mark.long
def test_random_cakes_in_random_currencies_against_fractions(pool: list[OrderNeeds], till: Till) -> None:
    """Printed rows sum to the printed total, exact rows to the exact one, and all of it is what fractions say."""
    codes, unknown, lifted = set(), 0, 0

    def check(seed: int) -> None:
        nonlocal unknown, lifted
        case = random_case(seed, pool, till)
        found = cost_of_needs(case.needs, ORDER, case.hours, case.till)
        made = asked_for(found, case.till)
        # what is taken of what, from the shopping list: it has oracles of its own
        lines = shopping_list([case.needs], {case.needs.slug}, {}, till.book, till.facts).lines
        things = [(line.thing, line.needs) for line in lines if not line.from_eggs]
        taken = [((thing.name, thing.card), each, thing.unit == FOOD) for thing, each in things]
        exact = oracle.rows(taken, case.hours.hands_min, case.hours.oven_min, case.kept)
        spent, added, vat, asked = oracle.price(exact, case.kept)
        rows = [row.exact for row in found.rows if row.exact is not None]
        assert sum(map(Fraction, rows)) == Fraction(found.exact)
        assert sum(row.shown for row in found.rows if row.shown is not None) == found.shown
        assert abs(Fraction(found.exact) - sum(exact, Fraction(0))) < Fraction(len(exact) + 1, 10**20)
        assert Fraction(found.shown) == spent
        assert (Fraction(made.added), Fraction(made.vat), Fraction(made.price)) == (added, vat, asked)
        assert made.cost + made.added + made.rounding + made.vat == made.price
        assert found.least_shown <= found.shown
        codes.add(case.till.money.currency.places)
        unknown += bool(found.unknown)
        lifted += made.least

    check_every(range(SEEDS), check)
    assert codes >= {0, 2, 3} and unknown and lifted


def test_a_cost_is_linear_in_what_is_used_and_steps_with_packs(till_with: TillOf) -> None:
    """Twice as much costs twice as much; in packs it costs the same until the next pack is opened."""
    till = till_with((entry("butter", "250 g", "2.10"), entry("caster sugar", "1 kg", "1.45")), currency="GBP")
    base = OrderNeeds(slug="quay", handle="quay", day=DAY, food={"butter": 100.0, "caster sugar": 60.0})
    costs = {by: CostSum(rows=material_rows(scaled(base, by), till)) for by in (1.0, 2.0, 2.5, 3.0, 7.0)}
    for by, each in costs.items():
        assert each.exact == costs[1.0].exact * Decimal(str(by))
    butter = {by: next(row.bought for row in each.rows if row.of == "butter") for by, each in costs.items()}
    assert butter == {
        1.0: Decimal("2.10"),
        2.0: Decimal("2.10"),
        2.5: Decimal("2.10"),
        3.0: Decimal("4.20"),
        7.0: Decimal("6.30"),
    }


def test_no_cost_falls_when_a_price_rises(pool: list[OrderNeeds], till: Till) -> None:
    for needs in pool:
        before = CostSum(rows=material_rows(needs, till))
        for name, known in till.paid.of.items():
            if name not in needs.food:
                continue
            dearer = (*known[:-1], replace(known[-1], price=known[-1].price + Decimal("0.50")))
            paid = replace(till.paid, of={**till.paid.of, name: dearer})
            after = CostSum(rows=material_rows(needs, replace(till, paid=paid)))
            assert (
                after.exact > before.exact and after.shown >= before.shown and after.bought_shown >= before.bought_shown
            )


def test_whites_cost_the_eggs_they_come_out_of(till_with: TillOf, till: Till) -> None:
    """The whites of some eggs and as many of their yolks come out of the same eggs."""
    paid = till_with((entry("egg", "6", "2.40"),), currency="GBP")
    whites = OrderNeeds(slug="quay", handle="quay", day=DAY)
    white = next(name for name, card in till.book.cards.items() if card.each and card.each.part == "egg white")
    yolk = next(name for name, card in till.book.cards.items() if card.each and card.each.part == "egg yolk")
    one = {name: till.things.one(till.things.of_card(name), "count") for name in (white, yolk)}
    whites.food = {white: 3 * (one[white] or 0.0)}
    (row,) = material_rows(whites, paid)
    assert (row.of, row.shown, row.bought_shown) == ("egg", Decimal("1.20"), Decimal("2.40"))
    both = replace(whites, food={**whites.food, yolk: 2 * (one[yolk] or 0.0)})
    (same,) = material_rows(both, paid)
    assert same.shown == Decimal("1.20")


def test_what_has_no_price_is_named_and_never_nought(till_with: TillOf) -> None:
    till = till_with((entry("butter", "250 g", "2.50"),), currency="GBP")
    needs = OrderNeeds(slug="quay", handle="quay", day=DAY, food={"butter": 100.0, "salt": 5.0}, some=["gold leaf"])
    found = CostSum(rows=material_rows(needs, till))
    assert found.unknown == ("gold leaf", "salt") and found.shown == Decimal("1.00")
    assert [row.shown for row in found.rows if row.of in found.unknown] == [None, None]
    # of nothing that is known nothing is known to be wasted
    own = till_with((), currency="GBP", wasted="10 %")
    assert WASTED not in {row.of for row in material_rows(needs, own)}


def test_what_is_made_at_home_costs_what_its_recipe_does(till_with: TillOf, till: Till) -> None:
    """A card without a price that has a recipe of its own name; the price of a tub of it comes first."""
    prices = (entry("butter", "250 g", "2.50"), entry("icing sugar", "1 kg", "1.50"))
    slug = "american-buttercream"
    name = till.book.mixtures[slug].name
    cards = {**till.book.cards, name: till.book.cards["butter"].model_copy(update={"also": (), "packs": ()})}
    book = replace(till.book, cards=cards)
    own = replace(till_with(prices, currency="GBP"), things=replace(till.things, book=book, _made={}, _by_name={}))
    needs = OrderNeeds(slug="quay", handle="quay", day=DAY, food={name: 100.0})
    (row,) = material_rows(needs, own)
    lines, makes_g = recipe_rows(slug, own)
    known = [line.exact for line in lines if line.exact is not None]
    assert row.through == slug
    if len(known) == len(lines):
        assert row.exact is not None and abs(row.exact - sum(known) * 100 / makes_g) < Decimal("1e-18")
    else:
        assert row.exact is None


def test_what_is_wasted_is_counted_once_however_it_is_made(till_with: TillOf, till: Till) -> None:
    """A hundred grams by a card that its recipe makes cost what a hundred grams of the recipe do."""
    slug = "american-buttercream"
    name = till.book.mixtures[slug].name
    cards = {**till.book.cards, name: till.book.cards["butter"].model_copy(update={"also": (), "packs": ()})}
    every = tuple(entry(each, "100 g", "1.30") for each in till.book.cards if each != name)
    priced = till_with(every, currency="GBP", wasted="10 %")
    book = replace(till.book, cards=cards)
    own = replace(priced, things=replace(till.things, book=book, _made={}, _by_name={}))
    needs = OrderNeeds(slug="quay", handle="quay", day=DAY, food={name: 100.0})
    by_card = CostSum(rows=material_rows(needs, own))
    rows, makes_g = recipe_rows(slug, own)
    by_recipe = CostSum(rows=rows)
    assert not by_card.unknown and not by_recipe.unknown
    assert {row.through for row in by_card.rows} == {slug, ""} and WASTED in {row.of for row in by_card.rows}
    assert abs(by_card.exact - by_recipe.exact * 100 / makes_g) < Decimal("1e-15")


def test_money_that_says_nothing_costs_nothing_more(till_with: TillOf, orders_worked: dict[str, OrderWorked]) -> None:
    till = till_with((entry("butter", "250 g", "2.50"),))
    found = cost_of(orders_worked["light"], hours_of(orders_worked["light"], till), till)
    assert {row.group for row in found.rows} == {INGREDIENTS, BOARDS}
    assert not {WASTED, PACKAGING} & {row.of for row in found.rows}
    made = asked_for(found, till)
    assert made.price == found.shown == made.cost and not (made.added or made.rounding or made.vat)


def test_groups_share_out_every_row(orders_worked: dict[str, OrderWorked], till: Till) -> None:
    for worked in orders_worked.values():
        found = cost_of(worked, hours_of(worked, till), till)
        assert sum(found.of(group).shown for group in GROUPS) == found.shown
        assert {row.group for row in found.rows} <= set(GROUPS)


def test_a_month_is_shared_out_over_its_cakes(orders_worked: dict[str, OrderWorked], till_with: TillOf) -> None:
    till = till_with((), currency="GBP", kept_up={"a month": "100", "cakes a month": "8"})
    found = cost_of(orders_worked["light"], hours_of(orders_worked["light"], till), till)
    assert found.of("kept_up").shown == Decimal("12.50")


def test_the_road_is_there_and_back_and_unknown_without_a_distance(
    orders_worked: dict[str, OrderWorked], till_with: TillOf
) -> None:
    till = till_with((), currency="GBP", a_km="0.45")
    wedding = orders_worked["wedding"]
    assert "drive" in cost_of(wedding, hours_of(wedding, till), till).unknown
    far = replace(wedding, order=wedding.order.model_copy(update={"distance": Decimal("11.2")}))
    assert cost_of(far, hours_of(far, till), till).of("road").shown == Decimal("10.08")
