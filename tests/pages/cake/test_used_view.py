"""Everything used, in lines: no thing is lost, what is not food is counted."""

from __future__ import annotations

from tests.pages.cake.conftest import FIGURED
from tests.plans.cakes.conftest import Made

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.jobs import together
from tinbook.pages.cake.used_view import not_food, used_groups
from tinbook.plans.cakes.used import everything_used


def test_every_thing_has_its_line(desk: Desk, made: Made) -> None:
    every = everything_used(made(FIGURED), desk.book, desk.facts)
    groups = {group.title: group.lines for group in used_groups(every, "cm", desk)}
    assert len(groups["Ingredients"]) == len(every.ingredients)
    assert len(groups["Colours"]) == len(every.pots) and len(groups["Tins"]) == len(every.tins)
    assert len(groups["Not food: count in, count out"]) == len(list(together(every.cut))) + len(every.not_food)
    assert all(line.flag == "not food" for line in groups["Not food: count in, count out"])


def test_eggs_are_counted_and_the_rest_is_weighed(desk: Desk, made: Made) -> None:
    cake = made({"tiers": "20 cm", "mixture": "creamed-butter-sponge", "height": "10 cm"})
    lines = used_groups(everything_used(cake, desk.book, desk.facts), "cm", desk)[0].lines
    eggs = next(line for line in lines if line.name.startswith("egg"))
    assert (eggs.figure, eggs.unit, eggs.name) == (f"{cake.totals.eggs:g}", "", "eggs") and " g" in eggs.note.replace(
        "\u00a0", " "
    )
    assert all(line.unit == "g" for line in lines if line is not eggs)
    assert eggs.link and eggs.link.address.startswith("ingredients/")


def test_what_is_not_food_is_counted_by_whether_it_is_hidden(desk: Desk, made: Made) -> None:
    cake = made(FIGURED)
    said = not_food(everything_used(cake, desk.book, desk.facts))
    below, above = (each.plan.count for each in cake.stacked.dowels if each)
    assert said.hidden.startswith(f"{below}\u00a0pillars, {above}\u00a0dowels") and "lolly stick" in said.hidden
    assert "1\u00a0drum" in said.shown and "pillar" not in said.shown
