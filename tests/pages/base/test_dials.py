"""Texts that name an oven's heat, with the house's own dial beside it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tinbook.facts import Facts
from tinbook.models import Book, House, Step, read_model
from tinbook.pages.base.dials import dialled, dialled_step
from tinbook.pages.base.page import Desk

N = "\u00a0"


def test_every_heat_has_the_dial_behind_it(kitchen: Book, house: Callable[..., House], facts: Facts) -> None:
    desk = Desk(replace(kitchen, house=house(oven={"kind": "gas"})), facts, {})
    said = f"Heat the oven to 180 °C (gas{N}mark{N}4 on this oven's dial), then line the tin."
    assert dialled("Heat the oven to 180 °C, then line the tin.", None, desk) == said
    assert dialled("Chill it to 5 °C.", None, desk) == "Chill it to 5 °C."
    step, flaws = read_model(Step, {"do": "Wait.", "done": "The oven shows 180 °C."}, "it")
    assert step is not None, flaws
    told = dialled_step(step, None, desk)
    assert (told.do, told.done) == ("Wait.", f"The oven shows 180 °C (gas{N}mark{N}4 on this oven's dial).")
    plain = Desk(kitchen, facts, {})
    assert dialled_step(step, None, plain) is step
