"""What whoever gets a cake is told."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.goes_along import cut_said, keeps_said
from tinbook.pages.cake.size_view import CakeInSize
from tinbook.pages.cake.view import CakeView
from tinbook.plans.cakes.sizes import cake_sizes
from tinbook.plans.cakes.whole import whole_cake


def made(slug: str, demo: Loaded) -> tuple[CakeView, CakeInSize]:
    desk = Desk(demo.book, demo.facts, demo.broken)
    design = demo.book.cakes[slug]
    size = cake_sizes(design, demo.book, demo.facts).written
    cake = whole_cake(slug, design, demo.book, demo.facts)
    return CakeView(slug=slug, desk=desk), CakeInSize(cake=cake, size=size, names=(), desk=desk)


def test_a_cake_is_cut_and_keeps_as_its_most_delicate_part(demo: Loaded) -> None:
    view, cake = made("night-watch-cake", demo)
    assert cut_said(view, cake).startswith("Dessert portions of 25") and cut_said(view, cake).endswith("24.")
    assert keeps_said(view) == "3 days in the fridge"


def test_what_is_eaten_one_by_one_is_not_cut(demo: Loaded) -> None:
    view, cake = made("night-watch-cake", demo)
    tier = cake.cake.tiers[0]
    cups = next(each for each in made("sea-garden-cups", demo)[1].cake.every_tier if each.asked.tin.kind.in_trays)
    one_by_one = replace(cake, cake=replace(cake.cake, tiers=(cups,)))
    assert not tier.asked.tin.kind.in_trays and cut_said(view, one_by_one) == ""
