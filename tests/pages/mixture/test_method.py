"""The method on a mixture's page."""

import re
from collections.abc import Callable
from dataclasses import replace
from html import unescape

from tinbook.models import House
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import minutes
from tinbook.pages.mixture.method import MethodView
from tinbook.pages.mixture.view import MixtureView
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.baking.oven import own_dial
from tinbook.plans.baking.tables import times
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import Query
from tinbook.plans.mixtures.steps import step_times

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


def test_the_bake_stands_in_its_step_with_the_house_own_dial(desk: Desk, filled: Filled) -> None:
    made = method(desk, "creamed-butter-sponge")
    text = unescape(filled("mixtures/creamed-butter-sponge"))
    assert f'at {made.heat}: <b class="tb-due">{made.due}</b>; ' in text and f"<b>Done when:</b> {made.done}" in text
    assert made.heat == f"160{N}°C (135{N}°C{N}fan on this oven's dial)"
    assert method(desk, "dark-ganache").heat == method(desk, "dark-ganache").due == ""


def test_an_oven_as_the_recipe_says_it_has_the_fan_beside_it(desk: Desk, house: Callable[..., House]) -> None:
    plain = Desk(replace(desk.book, house=house()), desk.facts, {})
    made = method(plain, "creamed-butter-sponge")
    assert made.heat == f"160{N}°C, fan 140{N}°C"
    assert "dial" not in "".join(piece.text for step in made.steps for piece in step.pieces)


def test_the_dial_stands_beside_every_heat_of_the_oven(desk: Desk) -> None:
    """In each recipe's steps: no heat of an oven without what is set here, large in the step that heats it."""
    told = 0
    for slug, batch in desk.batches.items():
        if (bake := batch.mixture.bake) is None:
            continue
        dial = formats.kept_together(spell(own_dial(bake.oven.celsius, desk.book, desk.facts) or ""))
        made = method(desk, slug)
        assert made.dial_first is None and sum(step.dial is not None for step in made.steps) == 1
        for step in made.steps:
            words = "".join(piece.text for piece in step.pieces)
            if f"{bake.oven.celsius:g} °C" not in words:
                continue
            large = step.dial is not None and f"{step.dial.figure}{N}{step.dial.fan}" == dial
            assert large != (f"{bake.oven.celsius:g} °C ({dial} on this oven's dial)" in words)
            told += 1
    assert told > 10
    noted = MixtureView(desk.batches["coffee-and-walnut-sponge"], desk).notes.written
    assert any(f"at 160 °C (135{N}°C{N}fan on this oven's dial) for" in note for note in noted)


def test_the_step_of_the_bake_has_the_time_of_the_table(desk: Desk) -> None:
    """For the tins a recipe is written for; and nothing else on the page says another."""
    for slug, batch in desk.batches.items():
        if batch.mixture.bake is None:
            continue
        view = MixtureView(batch, desk)
        assert view.baking is not None and view.baking.step is not None
        tin = batch.tins[0][1].full_name
        row = next(row for row in times(desk.book, desk.facts, Query(of=slug)).rows if row["tin"] == tin)
        low, high = row["low_min"], row["high_min"]
        span = f"{low:g}–{high:g}" if low != high else f"{low:g}"
        waits = view.method.steps[view.baking.step].times[-1]
        goes = view.baking.goes
        assert waits.words == (f"{goes} × " if goes > 1 else "") + f"{span}{N}min" == view.method.due, slug
        assert waits.minutes == row["check_min"]
        waiting = next(each for each in view.method.times if each.name == "Waiting")
        sums, own = step_times(batch.mixture.method), batch.mixture.method[view.baking.step].waiting
        assert own is not None
        rest = sums.waiting_low_min - own.low.base, sums.waiting_high_min - own.high.base
        assert waiting.rest == f"{rest[0]:g} {rest[1]:g}"
        assert waiting.words == minutes(rest[0] + goes * low, rest[1] + goes * high)


def test_fewer_tins_than_the_recipe_fills_go_in_one_after_the_other(desk: Desk) -> None:
    one = tuple(own.model_copy(update={"have": 1}) for own in desk.book.tins)
    small = Desk(replace(desk.book, tins=one), desk.facts, {})
    view = MixtureView(small.batches["creamed-butter-sponge"], small)
    assert view.baking is not None and view.baking.goes == 2
    assert view.method.due == f"2 × {view.baking.span}{N}min"
    (fit,) = scale(view.batch, small.book, small.facts, Query(of=view.batch.slug, tins=view.batch.tins)).fits
    assert spelled_all(fit.remarks) == ("you have 1: bake one after the other, half the mix in each",)
