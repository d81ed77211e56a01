"""Rules for supplies and stock: each bad line with its message, its place and what to write instead."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.models import Flaw, read_model
from tinbook.models.stock import StockEntry
from tinbook.models.supplies import Supply
from tinbook.plans.rules.fields import FOLLOWS, Spoilt
from tinbook.plans.rules.stock import stock_flaws, supply_flaws
from tinbook.plans.shopping.things import Things

TODAY = date(2026, 12, 5)


def flaws(demo: Loaded, data: dict[str, Any], spoilt: Spoilt | None = None) -> list[Flaw]:
    whole = {"day": "2026-12-01", "of": "butter", **data}
    entry, unread = read_model(StockEntry, whole, "this entry", demo.book.house.spoons)
    assert entry is not None, unread
    return list(stock_flaws(entry, Things(demo.book, demo.facts), spoilt or Spoilt(), TODAY))


BAD: tuple[tuple[dict[str, Any], tuple[str, ...], str, str], ...] = (
    ({}, ("of",), "this does not say how much", 'add "counted'),
    ({"counted": "1 kg", "bought": "1 kg"}, ("bought",), "an entry says either counted or bought", "an entry for each"),
    ({"counted": "1 kg", "day": "2026-12-06"}, ("day",), "2026-12-06 is still to come", "the day on which"),
    ({"counted": "1 kg", "opened": "2026-12-02"}, ("opened",), "opened after this day", "2026-12-01"),
    ({"of": "buter", "counted": "1 kg"}, ("of",), "neither an ingredient", 'did you mean "butter"?'),
    ({"of": "anchor chain", "counted": "1 kg"}, ("of",), "neither an ingredient", "give it a card"),
    ({"counted": "2"}, ("counted",), "does not say what one weighs", "500 g"),
    ({"of": "powder food colour", "counted": "2 ml"}, ("counted",), "what a millilitre of it weighs", '"weighs:"'),
    ({"counted": "3 m"}, ("counted",), "butter is not measured by length", "500 g"),
    (
        {"of": "drum, round 30 cm", "counted": "500 g"},
        ("counted",),
        "is not measured by weight",
        "write something like 2",
    ),
    ({"of": "ribbon, 15 mm", "bought": "2"}, ("bought",), "measured by length", "3 m"),
    ({"bought": "0 g"}, ("bought",), '"0 g" is nothing', "leave the entry out"),
    ({"bought": "1 kg", "in opened": "1 g"}, ("in opened",), "counted and is opened", 'add "opened'),
    (
        {"counted": "1 kg", "in opened": "2 kg", "opened": "2026-12-01"},
        ("in opened",),
        "more than the 1 kg",
        "how much",
    ),
    ({"counted": "1 kg", "in opened": "2", "opened": "2026-12-01"}, ("in opened",), "what one weighs", "500 g"),
)


@pytest.mark.parametrize(("data", "path", "message", "hint"), BAD)
def test_each_is_told_at_its_place(
    demo: Loaded, data: dict[str, Any], path: tuple[str, ...], message: str, hint: str
) -> None:
    (flaw,) = flaws(demo, data)
    assert flaw.path == path and message in flaw.message and hint in flaw.hint


@pytest.mark.parametrize(
    "data",
    [
        {"counted": "500 g"},
        {"counted": "0"},
        {"counted": "0 g"},
        {"of": "egg", "bought": "2 x 6"},
        {"of": "milk", "counted": "1 l", "opened": "2026-11-30", "in opened": "300 ml"},
        {"of": "gel food colour, puce", "counted": "10 g"},
        {"of": "drum, round 33 cm", "counted": "1"},
        {"of": "ribbon, 15 mm", "taken": "1.5 m"},
    ],
)
def test_sound_ones_are_let_through(demo: Loaded, data: dict[str, Any]) -> None:
    assert flaws(demo, data) == []


def test_a_card_lost_by_a_slip_is_not_told_twice(demo: Loaded) -> None:
    (flaw,) = flaws(demo, {"of": "sea salt", "counted": "1 kg"}, Spoilt(names={"sea salt": "sea salt"}))
    assert flaw.code == FOLLOWS


SUPPLIES: tuple[tuple[dict[str, Any], tuple[str | int, ...], str], ...] = (
    ({"what": "drum"}, ("what",), "chooses a drum by its size"),
    ({"what": "box", "size": "30 cm"}, ("size",), "is not the size of a box"),
    ({"what": "dowel", "size": "round 6 mm x 30 cm"}, ("size",), "is not the size of a dowel"),
    ({"what": "ribbon", "size": "15 mm", "packs": ["12"]}, ("packs", 0), "a reel of ribbon has a length"),
    ({"what": "lolly sticks", "packs": ["50", "5 m"]}, ("packs", 1), "a pack of lolly sticks has a number"),
    ({"what": "card", "size": "round 20 cm"}, ("what",), "in the list already"),
)


@pytest.mark.parametrize(("data", "path", "message"), SUPPLIES)
def test_supplies_that_cannot_be(data: dict[str, Any], path: tuple[str | int, ...], message: str) -> None:
    supply, unread = read_model(Supply, data, "this thing")
    before, _ = read_model(Supply, {"what": "card", "size": "round 20 cm"}, "this thing")
    assert supply is not None and before is not None, unread
    (flaw,) = supply_flaws(supply, [before])
    assert flaw.path == path and message in flaw.message and flaw.hint
