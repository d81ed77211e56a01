"""What a cake weighs, what holds it up and how it goes out, as its page tells it: the figures of the tables."""

from __future__ import annotations

from tests.every import check_every
from tests.plans.cakes.conftest import Made

from tinbook.pages.base.page import Desk
from tinbook.pages.cake.carrying import CarriedView, carried_view
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.spelling.making import heavy
from tinbook.plans.cakes.weights import cake_weights
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.making.held import held_up
from tinbook.plans.making.journey import journey

THREE = {"tiers": ["25 cm", "20 cm", "15 cm"], "mixture": "madeira-cake", "height": "10 cm", "cover": "sugarpaste"}


def view_of(cake: WholeCake, desk: Desk) -> CarriedView:
    weights = cake_weights(cake, desk.book, desk.facts)
    return carried_view(weights, held_up(cake, weights), journey(cake, weights, desk.book, desk.facts))


def test_the_figures_are_those_of_the_sums(in_sizes: list[CakeInSize]) -> None:
    def check(size: CakeInSize) -> None:
        weights = cake_weights(size.cake, size.desk.book, size.desk.facts)
        figures = [f"{line.figure}\N{NO-BREAK SPACE}{line.unit}" for line in size.carried.weights]
        assert heavy(weights.whole.mass_g) in figures
        for tier in weights.tiers if len(weights.tiers) > 1 else ():
            assert heavy(tier.whole.mass_g) in figures
        dowels = sum(int(line.figure) for line in size.carried.held if " under the " in line.name)
        assert dowels == size.cake.totals.dowels

    check_every(in_sizes, check)


def test_three_tiers(made: Made, desk: Desk) -> None:
    view = view_of(made(THREE), desk)
    assert [line.name for line in view.weights] == ["top", "middle", "base", "board", "all of it"]
    assert [line.name for line in view.held] == [
        "dowels under the top tier", "dowels under the middle tier", "base and everything above it",
    ]  # fmt: skip
    note = view.held[0].note.replace("\N{NO-BREAK SPACE}", " ")
    assert note.startswith("about 111 mm: measure on the cake; 38 mm in from its edge")
    assert "published charts say 3–6; 5 is our own number" in note and "15 cm card under it" in note
    assert any("ask somebody who builds cakes like that" in words for words in view.held_notes)
    assert view.weight_notes == ("It takes two people to lift it: at arm's length it is too heavy for one.",)
    assert [line.name for line in view.boxes] == [
        "box for all of it", "box for the base tier", "box for the middle tier", "box for the top tier",
    ]  # fmt: skip
    assert view.steps[0].startswith("Box each tier on its own")


def test_driven_whole_pillars_and_foam(made: Made, desk: Desk) -> None:
    whole = view_of(made({**THREE, "travels": "whole"}), desk)
    assert whole.held[-1].name == "centre dowel" and "about 333\N{NO-BREAK SPACE}mm" in whole.held[-1].note
    air = view_of(
        made({**THREE, "tiers": ["25 cm", {"tier": "20 cm", "on pillars": "8 cm"}, {"tier": "15 cm", "dummy": "yes"}]}),
        desk,
    )
    assert [line.name for line in air.held][1] == "pillars under the middle tier"
    assert " separator plate under it" in air.held[1].note
    foam = view_of(made({**THREE, "tiers": ["25 cm", {"tier": "20 cm", "dummy": "yes"}, "15 cm"]}), desk)
    assert "on the foam below" in foam.held[0].note


def test_one_tier_and_cups(made: Made, desk: Desk) -> None:
    one = view_of(made({"tiers": "20 cm", "mixture": "madeira-cake"}), desk)
    assert one.held == () and [line.name for line in one.weights] == ["all of it"] and len(one.boxes) == 1
    assert one.weight_notes == ("One person can lift it, close to the body, both hands under the board.",)
    cups = view_of(made({"tiers": "24 standard cups", "mixture": "cupcakes"}), desk)
    assert cups.boxes == () and cups.held == ()
