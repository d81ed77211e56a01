"""What there is at home: counts win, sums since are exact, and nothing is below nothing."""

from __future__ import annotations

from datetime import date, timedelta
from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.plans.shopping.conftest import Entry, on

from tinbook.plans.shopping.needs import OrderNeeds
from tinbook.plans.shopping.stock import Lot, reckoned, taken_from
from tinbook.plans.shopping.things import Things

DAY = date(2026, 12, 1)


def takes(slug: str, day: int, **food: float) -> OrderNeeds:
    named = {name.replace("_", " "): mass_g for name, mass_g in food.items()}
    return OrderNeeds(slug=slug, handle=slug, day=DAY + timedelta(days=day), food=named)


def test_counted_then_bought_taken_and_used(entry: Entry, things: Things) -> None:
    log = [
        entry("butter", "2026-12-01", counted="500 g"),
        entry("butter", "2026-12-02", bought="4 x 250 g"),
        entry("butter", "2026-12-03", taken="200 g"),
    ]
    of = reckoned(log, [takes("cups", 4, butter=700.0)], things)["butter"]
    assert (of.counted, of.bought, of.taken, of.used, of.short) == (500.0, 1000.0, 200.0, [("cups", 700.0)], 0.0)
    assert of.left == 600.0 and of.entries == 3


def test_a_count_wins_over_sums(entry: Entry, things: Things) -> None:
    log = [entry("butter", "2026-12-01", counted="2 kg"), entry("butter", "2026-12-05", counted="300 g")]
    of = reckoned(log, [takes("cups", 2, butter=700.0)], things)["butter"]
    assert of.left == 300.0 and of.used == [] and of.counted_on == date(2026, 12, 5)
    again = reckoned([*log, entry("butter", "2026-12-06", counted="0")], [], things)["butter"]
    assert again.left == 0.0


def test_what_went_out_on_the_day_of_a_count_went_before_it(entry: Entry, things: Things) -> None:
    log = [entry("butter", "2026-12-05", counted="300 g")]
    assert reckoned(log, [takes("cups", 4, butter=100.0)], things)["butter"].left == 300.0
    assert reckoned(log, [takes("cups", 5, butter=100.0)], things)["butter"].left == 200.0


def test_more_than_was_known_of_leaves_nothing_and_is_said(entry: Entry, things: Things) -> None:
    of = reckoned([entry("butter", counted="300 g")], [takes("cups", 3, butter=500.0)], things)["butter"]
    assert (of.left, of.short) == (0.0, 200.0)


def test_of_what_nobody_counted_nothing_is_known(things: Things) -> None:
    assert reckoned([], [takes("cups", 3, butter=500.0)], things) == {}


def test_an_opened_pack_keeps_so_long(entry: Entry, things: Things) -> None:
    """Milk keeps three days once it is opened."""
    of = reckoned([entry("milk", "2026-12-02", counted="1 l", opened="2026-12-01", in_opened="400 ml")], [], things)
    opened, closed = of["milk"].lots
    assert opened.opened and opened.until == date(2026, 12, 4) and closed.until is None
    assert opened.amount / closed.amount == pytest.approx(400 / 600)
    got, _ = taken_from(of["milk"].lots, 1e9, date(2026, 12, 5), None)
    assert got == pytest.approx(closed.amount)


def test_whites_that_were_not_there_came_out_of_eggs(entry: Entry, things: Things) -> None:
    white, egg = (things.one(things.of_card(name), "count") or 0.0 for name in ("egg white", "egg"))
    used = [takes("royal", 3, egg_white=4 * white)]
    of = reckoned([entry("egg", counted="12")], used, things)["egg"]
    assert of.left == pytest.approx(8 * egg)
    both = reckoned([entry("egg", counted="12"), entry("egg white", counted=f"{4 * white} g")], used, things)
    assert both["egg"].left == pytest.approx(12 * egg) and both["egg white"].left == pytest.approx(0.0)


def test_boards_are_taken_off_by_size(entry: Entry, things: Things, pool: dict[str, OrderNeeds]) -> None:
    order = on(pool["light"], date(2026, 12, 11))
    drums = [need for need in order.sized if need.what == "drum"]
    assert drums
    wide = max(drums[0].sides_mm) / 10
    of = reckoned([entry(f"drum, round {wide:g} cm", counted="2")], [order], things)
    (name,) = of
    assert of[name].left == 1.0 and of[name].used == [("light", 1.0)]


amounts = st.floats(0.1, 4000.0)


@given(
    lots=st.lists(
        st.tuples(amounts, st.sampled_from((0.0, 250.0)), st.none() | st.integers(0, 9), st.booleans()), max_size=5
    ),
    wanted=amounts,
    day=st.integers(0, 9),
    keeps=st.none() | st.sampled_from((1440.0, 10080.0)),
)
def test_taking_loses_and_makes_nothing(
    lots: list[tuple[float, float, int | None, bool]], wanted: float, day: int, keeps: float | None
) -> None:
    before = [
        Lot(amount=amount, each=each, until=None if until is None else DAY + timedelta(days=until), opened=opened)
        for amount, each, until, opened in lots
    ]
    when = DAY + timedelta(days=day)
    got, left = taken_from(before, wanted, when, keeps)
    good = sum(lot.amount for lot in before if lot.until is None or lot.until >= when)
    assert isclose(got, min(good, wanted), rel_tol=1e-9, abs_tol=1e-9)
    assert all(lot.amount > 0.0 for lot in left)
    assert isclose(sum(lot.amount for lot in left) + got, sum(lot.amount for lot in before), rel_tol=1e-6)


@given(
    st.lists(
        st.tuples(st.sampled_from(("counted", "bought", "taken", "order")), st.integers(0, 9), st.integers(1, 2000)),
        max_size=12,
    )
)
def test_every_log_adds_up(entry: Entry, things: Things, log: list[tuple[str, int, int]]) -> None:
    """What was counted and bought is what was taken, used and is left."""
    entries = [
        entry("butter", (DAY + timedelta(days=day)).isoformat(), **{act: f"{amount} g"})
        for act, day, amount in log
        if act != "order"
    ]
    done = [takes(f"o{nth}", day, butter=float(amount)) for nth, (act, day, amount) in enumerate(log) if act == "order"]
    stock = reckoned(entries, done, things)
    if "butter" in stock:
        of = stock["butter"]
        gone = of.taken + sum(amount for _, amount in of.used)
        assert of.left >= 0.0 and of.short >= 0.0
        assert isclose((of.counted or 0.0) + of.bought, gone + of.left, rel_tol=1e-6, abs_tol=1e-5)
