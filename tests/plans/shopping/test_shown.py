"""What is asked for is never rounded below the need, and what is there never above it."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tinbook.plans.shopping.shown import home_shown, needed_shown
from tinbook.plans.shopping.things import Things

KINDS = ("butter", "milk", "egg", "ribbon, 15 mm", "lolly sticks")


@given(st.sampled_from(KINDS), st.floats(0.001, 5000.0))
def test_up_for_needs_and_down_for_home(things: Things, of: str, amount: float) -> None:
    thing = things.called(of)
    assert thing is not None
    asked, there = needed_shown(thing, amount), home_shown(thing, amount)
    exact = amount / thing.per
    step = 5.0 if thing.kind == "length" else 1.0
    assert exact - 1e-6 <= asked < exact + step + 1e-6
    assert exact - step - 1e-6 < there <= exact + 1e-6


def test_as_they_are_read(things: Things) -> None:
    butter, egg = things.of_card("butter"), things.of_card("egg")
    assert (needed_shown(butter, 12.01), home_shown(butter, 12.99)) == (13.0, 12.0)
    assert (needed_shown(butter, 0.61), home_shown(butter, 0.69)) == (0.7, 0.6)
    assert (needed_shown(egg, 2.1 * egg.per), home_shown(egg, 2.9 * egg.per)) == (3.0, 2.0)
