"""What an order takes, against the lists of its own cakes: to the last digit."""

from __future__ import annotations

from math import fsum, isclose

import pytest
from tests.plans.orders.conftest import Worked

from tinbook.loading import Loaded
from tinbook.plans.base.weighing import weigh
from tinbook.plans.cakes.used import everything_used
from tinbook.plans.orders.asked import OrderWorked
from tinbook.plans.shopping.needs import OrderNeeds, needs_of
from tinbook.plans.shopping.things import Things


@pytest.mark.parametrize("slug", ["light", "wedding", "cups", "sponge"])
def test_food_is_what_its_cakes_say_is_used(
    slug: str, orders_worked: dict[str, OrderWorked], pool: dict[str, OrderNeeds], demo: Loaded
) -> None:
    told: dict[str, float] = {}
    measured: set[str] = set()
    by_name = {mixture.name: slug for slug, mixture in demo.book.mixtures.items()}

    def add(name: str, mass_g: float) -> None:
        told[name] = told.get(name, 0.0) + mass_g

    for cake in orders_worked[slug].cakes:
        used = everything_used(cake, demo.book, demo.facts)
        for each in used.ingredients:
            add(each.name, each.mass_g)
        for pot in used.pots:
            add(f"{pot.name}, {pot.shade}" if pot.shade else pot.name, pot.mass_g)
        for extra in used.besides:
            if extra.name in by_name and extra.amount.unit == "g":
                batch = weigh(by_name[extra.name], demo.book.mixtures[by_name[extra.name]], demo.book, demo.facts)
                for line in batch.ingredients:
                    add(line.name, line.mass_g * extra.amount.exact / batch.makes_g)
            elif extra.name in demo.book.cards:
                measured |= {name for name in pool[slug].food if name.split(",")[0] == extra.name}
    exact = {name: mass_g for name, mass_g in told.items() if name not in measured and mass_g > 0.0}
    assert len(exact) > 4 and {name: pool[slug].food[name] for name in exact} == pytest.approx(exact, rel=1e-12)
    # what is measured with a spoon stands beside what is mixed in
    assert all(mass_g >= told.get(name, 0.0) for name, mass_g in pool[slug].food.items() if name in measured)


@pytest.mark.parametrize("slug", ["light", "cups", "sponge"])
def test_with_nothing_made_besides_it_is_the_same_to_the_last_bit(
    slug: str, orders_worked: dict[str, OrderWorked], pool: dict[str, OrderNeeds], demo: Loaded
) -> None:
    (cake,) = orders_worked[slug].cakes
    used = everything_used(cake, demo.book, demo.facts)
    besides = {extra.name for extra in used.besides}
    same = {each.name: each.mass_g for each in used.ingredients if each.name not in besides and each.mass_g}
    assert same and {name: pool[slug].food[name] for name in same} == same


def test_a_tub_takes_its_recipe_so_many_times(pool: dict[str, OrderNeeds], demo: Loaded) -> None:
    batch = weigh("modelling-paste", demo.book.mixtures["modelling-paste"], demo.book, demo.facts)
    once = {line.name: line.mass_g for line in batch.ingredients}
    assert isclose(fsum(pool["tubs"].food.values()), 2 * fsum(once.values()), rel_tol=1e-9)
    for name, mass_g in pool["tubs"].food.items():
        if name in once:
            assert mass_g >= 2 * once[name] * (1 - 1e-9)


def test_boards_boxes_dowels_and_ribbon_are_found(pool: dict[str, OrderNeeds]) -> None:
    whats = {need.what: need for need in pool["wedding"].sized}
    assert {"drum", "card", "ribbon", "box"} <= set(whats)
    assert all(need.count > 0 and all(side > 0.0 for side in need.sides_mm) for need in pool["wedding"].sized)


def test_each_cup_has_its_case(pool: dict[str, OrderNeeds]) -> None:
    cases = {name: count for name, count in pool["cups"].pieces.items() if "cases" in name}
    assert list(cases.values()) == [48.0]


def test_a_class_has_materials_for_everybody_and_for_the_pieces(
    worked: Worked, pool: dict[str, OrderNeeds], things: Things
) -> None:
    boards = [need for need in pool["class"].sized if need.what == "drum"]
    assert sum(need.count for need in boards) >= 4
    more = {"class": {"techniques": ["rope-edge", "cover-a-board"], "people": "8", "lasts": "3 h"}}
    eight = needs_of(worked({**more, "hand over": "2026-12-08 14:00"}, "eight"), things)
    for name, mass_g in pool["class"].food.items():
        assert eight.food[name] > mass_g
