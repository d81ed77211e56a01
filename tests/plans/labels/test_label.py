"""A whole label, or why not; the rules it follows are in test_rules_by_hand."""

from __future__ import annotations

from datetime import date

import pytest

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError
from tinbook.plans.labels.label import batch_handle, label_of

DAY = date(2026, 12, 5)


def test_one_mixture_and_one_cake_of_the_demo_print_a_whole_label(demo: Loaded) -> None:
    for slug in ("madeira-cake", "night-watch-cake"):
        plan = label_of(slug, demo.book, demo.facts, DAY)
        assert plan.ready and plan.listed.complete and plan.until and plan.maker and plan.rules, slug


def test_the_batch_leads_back_to_the_log(demo: Loaded) -> None:
    for entry in demo.book.bakes:
        day, _, slug = batch_handle(entry.of, entry.day).partition(" ")
        assert (date.fromisoformat(day), slug) == (entry.day, entry.of)
    assert label_of("madeira-cake", demo.book, demo.facts, DAY).batch == "2026-12-05 madeira-cake"


def test_cross_contact_is_the_house_s_own(demo: Loaded) -> None:
    plan = label_of("madeira-cake", demo.book, demo.facts, DAY)
    assert plan.cross_contact == " ".join((demo.book.house.cross_contact or "").split())


def test_what_the_book_does_not_have(demo: Loaded) -> None:
    with pytest.raises(AskError):
        label_of("no-such-cake", demo.book, demo.facts, DAY)
