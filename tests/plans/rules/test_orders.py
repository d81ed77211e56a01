"""Rules for orders: thirty bad ones, each with its message and its place; and old ones that are left alone."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.plans.cakes.conftest import bakes, design, made

from tinbook.loading import Loaded
from tinbook.models import Flaw, read_model
from tinbook.models.orders import STATES, Order
from tinbook.plans.rules.orders import LIKE_PERSONAL, handle_flaws, order_flaws

__all__ = ["bakes", "design", "made"]
TODAY = date(2026, 11, 30)
LIGHT = {"cake": "lighthouse-cake"}


def flaws(demo: Loaded, data: Mapping[str, Any], lost: tuple[str, ...] = ()) -> tuple[Flaw, ...]:
    whole = {"handle": "quay", "hand over": "2026-12-05 11:00", **data}
    order, unread = read_model(Order, whole, "an order", demo.book.house.spoons)
    assert order is not None, unread
    return order_flaws(order, demo.book, demo.facts, lost, TODAY)


BAD: tuple[tuple[dict[str, Any], tuple[str | int, ...], str], ...] = (
    ({}, (), "the order does not say what is to be made"),
    ({"cake": "lighthose-cake"}, ("cake",), 'the book has no cake "lighthose-cake"'),
    ({**LIGHT, "size": "huge"}, ("size",), 'there is no size "huge"'),
    ({**LIGHT, "size": "+9"}, ("size",), 'there is no size "+9"'),
    ({**LIGHT, "guests": "900"}, ("guests",), None),
    ({**LIGHT, "size": "small", "guests": "90"}, ("guests",), None),
    ({**LIGHT, "change": {"filling": "lemon-buttercreem"}}, ("change", "filling"), None),
    ({**LIGHT, "change": {"tiers": ["20 cm", "25 cm"]}}, ("change", "tiers", 1), None),
    ({**LIGHT, "change": {"colour": "puce"}}, ("change", "colour"), None),
    ({**LIGHT, "change": {"board": "10 cm"}}, ("change", "board"), None),
    ({**LIGHT, "change": {"mixture": "american-buttercream"}}, ("change", "mixture"), None),
    ({**LIGHT, "must be free from": ["dary"]}, ("must be free from", 0), '"dary" is neither an allergen nor'),
    ({**LIGHT, "must be free from": ["egg"], "state": "agreed"}, ("must be free from", 0), "the order must be free from egg, but has it in"),
    ({**LIGHT, "must be free from": ["sesame"], "state": "agreed"}, ("must be free from", 0), "nobody has said what is in"),
    ({**LIGHT, "must be free from": ["butter"], "state": "agreed"}, ("must be free from", 0), "free from butter, but has it in butter"),
    ({"mixtures": ["cupcaks"]}, ("mixtures", 0), 'the book has no mixture "cupcaks"'),
    ({"mixtures": [{"mixture": "american-buttercream", "tin": "round 20 cm"}]}, ("mixtures", 0, "tin"), "is made by weight, not in tins"),
    ({"mixtures": ["cupcakes"], "guests": "40"}, ("guests",), '"guests" is about a cake'),
    ({"mixtures": ["cupcakes"], "size": "small"}, ("size",), '"size" is about a cake'),
    ({"mixtures": ["cupcakes"], "change": {"filling": "none"}}, ("change",), '"change" is about a cake'),
    ({**LIGHT, "class": {"techniques": ["rope-edge"], "lasts": "3 h"}}, ("class",), "a class cannot be an order"),
    ({"class": {"techniques": ["rop-edge"], "lasts": "3 h"}}, ("class", "techniques", 0), "rop-edge"),
    ({"class": {"techniques": ["rope-edge"], "lasts": "3 h"}, "delivered": "5 min"}, ("class",), "a class cannot be an order"),
)  # fmt: skip


@pytest.mark.parametrize(("data", "path", "message"), BAD, ids=lambda each: None)
def test_a_bad_order_is_told_at_its_place(
    data: dict[str, Any], path: tuple[str | int, ...], message: str, demo: Loaded
) -> None:
    found = [flaw for flaw in flaws(demo, data) if not flaw.note]
    assert [flaw for flaw in found if flaw.path[: len(path)] == path and (message or "") in flaw.message], found
    assert all(flaw.hint for flaw in found)


def test_a_sound_order_has_nothing_to_mend(demo: Loaded) -> None:
    for data in (LIGHT, {**LIGHT, "guests": "30", "delivered": "20 min", "must be free from": ["instant coffee"]},
                 {"mixtures": [{"mixture": "cupcakes", "count": "48"}], "must be free from": ["sesame"], "state": "agreed"},
                 {"class": {"techniques": ["rope-edge"], "people": "4", "lasts": "3 h"}}):  # fmt: skip
        assert flaws(demo, data) == (), data


def test_what_is_only_asked_is_only_told(demo: Loaded) -> None:
    """A question stands in nobody's way; agreed, the same is an error."""
    (note,) = flaws(demo, {**LIGHT, "must be free from": ["egg"]})
    assert note.note and "egg" in note.message and "vegan-vanilla-sponge" in note.hint
    (error,) = flaws(demo, {**LIGHT, "must be free from": ["egg"], "state": "agreed"})
    assert not error.note


def test_agreed_for_yesterday_is_told(demo: Loaded) -> None:
    (note,) = flaws(demo, {**LIGHT, "hand over": "2026-11-29 10:00", "state": "agreed"})
    assert note.path == ("hand over",) and note.message == 'the order is still "agreed", but it was due on 2026-11-29'
    assert flaws(demo, {**LIGHT, "hand over": "2026-11-30 10:00", "state": "agreed"}) == ()


def test_what_has_gone_out_is_left_alone(demo: Loaded) -> None:
    """Past orders stay valid for ever, whatever becomes of the book."""
    for state in STATES[2:]:
        gone = {
            "cake": "no-longer-made",
            "size": "huge",
            "hand over": "2020-02-29 10:00",
            "must be free from": ["kelp"],
        }
        assert flaws(demo, {**gone, "state": state}) == ()


def test_what_is_broken_elsewhere_follows(demo: Loaded) -> None:
    found = flaws(demo, {"cake": "tide-cake"}, lost=("tide-cake",))
    assert [flaw.code for flaw in found] == ["follows"]


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("ring 01632 960 123", "a telephone number"),  # Ofcom, numbers for drama: https://www.ofcom.org.uk
        ("+44 1632 960123", "a telephone number"), ("hello@quay.example.org", "an e-mail address"),
        ("3 Shingle Lane", "an address"), ("leave it at ZZ99 3WZ", "an address"), ("Mrs Tern", "a person's name"),
        ("Ann Tern", "a person's name"),
    ],
)  # fmt: skip
def test_what_looks_like_a_person_is_answered_with_a_handle(text: str, what: str, demo: Loaded) -> None:
    for data in ({"handle": text}, {"notes": [text]}):
        found = flaws(demo, {**LIGHT, **data})
        assert [flaw.message for flaw in found] == [f"this looks like {what}"] and found[0].note
        assert "use a handle" in found[0].hint


@pytest.mark.parametrize(
    "text", ["slipway birthday", "regatta club", "2026-12-05 lighthouse", "40 candles", "the 11:00 one"]
)
def test_a_handle_is_not_a_person(text: str) -> None:
    assert not any(pattern.search(text) for pattern in LIKE_PERSONAL.values())


def test_one_handle_for_two_open_orders(demo: Loaded) -> None:
    def order(handle: str, state: str = "asked") -> Order:
        read, _ = read_model(
            Order, {"handle": handle, "cake": "x", "hand over": "2026-12-05 11:00", "state": state}, "it"
        )
        assert read is not None
        return read

    found = handle_flaws({"a": order("quay"), "b": order("Quay "), "c": order("quay", "gone"), "d": order("pier")})
    assert set(found) == {"b"} and "orders/a.yaml" in found["b"].message
    (called,) = handle_flaws({"shopping": order("quay", "gone"), "shopping-list": order("pier")}).values()
    assert called.message == 'the kitchen\'s book has a page called "shopping"'
    assert called.hint == 'give the file another name, such as "2026-12-05-shopping.yaml"'


WORDS = st.sampled_from(
    ["lighthouse-cake", "cupcakes", "american-buttercream", "rope-edge", "x", "small", "+1", "egg", "20 cm", "none"]
)


@given(
    st.fixed_dictionaries(
        {"hand over": st.datetimes().map(lambda each: each.strftime("%Y-%m-%d %H:%M") if each.year > 999 else "2026-12-05 11:00")},
        optional={
            "cake": WORDS, "size": WORDS, "guests": st.integers(1, 999).map(str), "state": st.sampled_from(STATES),
            "change": st.dictionaries(st.sampled_from(["filling", "coat", "cover", "mixture", "colour", "tiers", "board"]), WORDS, max_size=2),
            "mixtures": st.lists(WORDS, max_size=2), "must be free from": st.lists(WORDS, max_size=2), "delivered": st.just("20 min"),
        },
    )
)  # fmt: skip
def test_random_orders_are_read_or_told(demo: Loaded, data: dict[str, Any]) -> None:
    order, unread = read_model(Order, {"handle": "quay", **data}, "an order", demo.book.house.spoons)
    for flaw in unread if order is None else order_flaws(order, demo.book, demo.facts, (), TODAY):
        assert flaw.message and flaw.hint
