"""An order worked out: its cake in its size, what is different about it, recipes by themselves."""

from __future__ import annotations

import pytest
from tests.plans.orders.conftest import CUPS, LIGHT, Worked

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.cakes.tables import cake_asked


def test_a_cake_is_the_one_of_its_table(worked: Worked, demo: Loaded) -> None:
    """One question, one answer: the size that serves the guests, with the same figures."""
    table, _ = cake_asked(demo.book, demo.facts, Query(of="lighthouse-cake", guests=30))
    (cake,) = worked(LIGHT).cakes
    assert cake.tins == table.tins and cake.serves == table.serves >= 30
    assert cake.totals == table.totals


def test_what_is_different_replaces_what_the_cake_says(worked: Worked) -> None:
    change = {"filling": "lemon-buttercream", "tiers": ["20 cm", "15 cm"]}
    (cake,) = worked({"cake": "lighthouse-cake", "change": change}).cakes
    (own,) = worked({"cake": "lighthouse-cake"}).cakes
    assert [tin.name for tin in cake.tins] == ["round 20 cm", "round 15 cm"]
    assert {total.batch.slug for total in cake.mixtures} == {"lemon-buttercream", "american-buttercream"}
    assert {total.batch.slug for total in own.mixtures} == {"american-buttercream"}
    assert cake.design.decorations == own.design.decorations and cake.design.name == own.design.name


def test_recipes_by_themselves_are_plain_cakes_or_so_much_by_weight(worked: Worked, demo: Loaded) -> None:
    (cups,) = worked(CUPS).cakes
    assert cups.serves == 48 and not cups.mixtures and not cups.pastes
    found = worked(
        {"mixtures": [{"mixture": "madeira-cake", "count": "2", "tin": "round 20 cm"}, "american-buttercream"]}
    )
    (plain,) = found.cakes
    assert [tier.asked.tin.name for tier in plain.every_tier] == ["round 20 cm"] * 2
    assert plain.stacked.drum is None and not plain.mixtures
    (tub,) = found.tubs
    assert tub.mass_g == demo.book.mixtures["american-buttercream"].makes


def test_too_many_guests_are_told(worked: Worked) -> None:
    with pytest.raises(AskError, match="serves"):
        worked({"cake": "lighthouse-cake", "size": "small", "guests": "90"})
