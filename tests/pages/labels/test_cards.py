"""The card that goes with a cake, and the one for a table."""

from __future__ import annotations

from datetime import date, datetime

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import CakeSheet
from tinbook.pages.labels.cards import goes_with, table_card
from tinbook.pages.orders.job_sheet import job_sheets
from tinbook.pages.orders.week import kitchen_week
from tinbook.plans.labels.label import label_of


def test_the_card_says_what_the_job_sheet_cuts_off(demo: Loaded) -> None:
    """The same function: what is not food, how it keeps and what it is cut into are one answer."""
    desk = Desk(demo.book, demo.facts, demo.broken, datetime(2026, 12, 5, 8, 0))
    week = kitchen_week(desk, datetime(2026, 12, 5, 8, 0))
    line = next(each for each in week.orders if each.slug == "2026-12-11-slipway-birthday")
    (sheet,) = job_sheets(line, week, desk)
    assert isinstance(sheet, CakeSheet) and sheet.job is not None
    card = goes_with(label_of("lighthouse-cake", demo.book, demo.facts, date(2026, 12, 5)), desk)
    assert card.keeps == sheet.job.keeps and card.cut and card.shown and card.hidden
    assert card.cut.partition(":")[0] == sheet.job.cut.partition(":")[0]


def test_a_mixture_has_a_card_without_cutting(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, demo.broken)
    card = goes_with(label_of("madeira-cake", demo.book, demo.facts, date(2026, 12, 5)), desk)
    assert (card.cut, card.shown, card.hidden, card.carry) == ("", "", "", ()) and card.words.runs


def test_unknown_is_told_and_is_no_no(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, demo.broken)
    card = table_card(["lighthouse-cake", "coffee-and-walnut-sponge"], desk, "England")
    rows = dict(card.rows)
    answers = dict(zip(card.heads, rows["Lighthouse cake"], strict=True))
    assert answers["milk"] == "yes" and answers["walnut"] == "not known"
    assert card.cross_contact.startswith("One bench")
