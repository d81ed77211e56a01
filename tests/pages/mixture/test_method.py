"""The method on a mixture's page."""

import re
from collections.abc import Callable
from dataclasses import replace

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.method import MethodView
from tinbook.pages.mixture.view import MixtureView

N = "\u00a0"
Filled = Callable[[str], str]


def method(desk: Desk, slug: str) -> MethodView:
    return MixtureView(desk.batches[slug], desk).method


def test_steps_say_their_amounts(filled: Filled) -> None:
    text = filled("mixtures/american-buttercream")
    assert re.search(rf'<b data-line="1" data-share="0.5">250{N}g</b> icing sugar', text)


def test_a_line_named_in_a_step_is_a_line_of_the_mix(desk: Desk) -> None:
    named = 0
    for slug, batch in desk.batches.items():
        for step in method(desk, slug).steps:
            for piece in step.pieces:
                if piece.line is not None:
                    assert desk.book.house_word(piece.text) == batch.ingredients[piece.line].name
                    assert piece.amount and 0.0 < piece.share <= 1.0
                    named += 1
    assert named > 50


def test_tins_in_a_step_are_the_written_ones(desk: Desk) -> None:
    batch = desk.batches["creamed-butter-sponge"]
    step = batch.mixture.method[0].model_copy(update={"do": "Line <tins>."})
    lined = replace(batch, mixture=batch.mixture.model_copy(update={"method": (step,)}))
    (shown,) = MixtureView(lined, desk).method.steps
    assert [(piece.text, piece.tins) for piece in shown.pieces] == [
        ("Line ", False), (f"2 × round 15{N}cm", True), (".", False),
    ]  # fmt: skip


def test_the_bake_stands_below_with_the_house_own_dial(desk: Desk, filled: Filled) -> None:
    made = method(desk, "creamed-butter-sponge")
    text = filled("mixtures/creamed-butter-sponge")
    assert "<b>Bake</b> at" in text
    assert ("(on this dial" in text) == bool(made.own_dial)
    assert method(desk, "dark-ganache").own_dial == ""
    for name, time in made.times:
        assert f"<b>{name}</b> {time}" in text
