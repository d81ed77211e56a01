"""Whose figure counts: the cake's own, the house's, the trade's."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Finish, Made
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.finishing import FIGURES, THE_HOUSE, THIS_CAKE, finishing


def said(**keys: object) -> Finish:
    return Finish.model_validate({key.replace("_", " "): value for key, value in keys.items()})


def test_the_trade_speaks_where_nobody_else_does(facts: Facts) -> None:
    settled = finishing(Finish(), facts)
    for key, name in FIGURES.items():
        assert settled[key] == facts.numbers[name].value
        assert settled.figures[key].said_by == facts.numbers[name].source
    assert settled.heights_mm == (100.0,)
    assert settled.made == Made()


def test_the_cake_before_the_house_before_the_trade(facts: Facts) -> None:
    house = said(filling="6 mm", layers="3", heights=["9 cm", "12 cm"], **{"final coat": "none"})
    settled = finishing(house, facts, said(filling="8 mm"))
    assert (settled["filling"], settled.figures["filling"].said_by) == (8.0, THIS_CAKE)
    assert (settled.layers, settled.figures["layers"].said_by) == (3, THE_HOUSE)
    assert (spell(THIS_CAKE), spell(THE_HOUSE)) == ("for this cake", "our own figure")
    assert settled.heights_mm == (90.0, 120.0)
    assert settled["final_coat"] == 0.0
    assert settled.coats_mm == facts.numbers["crumb coat"].value


def test_made_with_is_filled_up_by_the_house(facts: Facts) -> None:
    house = said(made_with={"filling": "icing", "final coat": "ganache"})
    settled = finishing(house, facts, said(made_with={"filling": "curd"}))
    assert (settled.made.filling, settled.made.final_coat, settled.made.cover) == ("curd", "ganache", None)
