"""Entries of the bake log, read from plain data."""

from __future__ import annotations

from datetime import date

import pytest
from tests.every import every

from tinbook.models import Baked, BakeLog, read_model
from tinbook.models.bakes import by_mixture
from tinbook.tins import read_tin
from tinbook.units import METRIC

ENTRY = {
    "day": "2026-05-02", "of": "plain-sponge", "tin": "round 20 cm x 7.5 cm", "batter": "2 lb 4 oz",
    "oven": "140 °C fan", "done after": "1 h 5 min", "centre": "206.6 °F", "start": "8 °C", "baked": "6 cm", "out": "920 g",
}  # fmt: skip


def test_an_entry_as_written() -> None:
    entry, flaws = read_model(Baked, ENTRY, "a bake")
    assert entry is not None, flaws
    assert (entry.day, entry.of, entry.tin) == (date(2026, 5, 2), "plain-sponge", read_tin("round 20 cm x 7.5 cm")[1])
    assert entry.batter == pytest.approx(36 * 28.349523125)
    assert (entry.oven.celsius, entry.oven.fan, entry.done_after) == (160.0, True, 65.0)
    assert (entry.centre, entry.start, entry.baked, entry.out) == (pytest.approx(97.0), 8.0, 60.0, 920.0)
    assert entry.batter_depth is None and entry.note is None


def test_a_tin_of_the_house_goes_by_its_name() -> None:
    mine = read_tin("square 15 cm x 5 cm")[1]
    entry, flaws = read_model(Baked, {**ENTRY, "tin": "the tray"}, "a bake", METRIC, {"the tray": mine})
    assert entry is not None, flaws
    assert entry.tin == mine


@every(
    ("key", "value", "told"),
    [
        ("tin", "2 round 20 cm", "only one tin can go here"),
        ("done after", "2 min", "no cake bakes in 2 min"),
        ("done after", "13 h", "no cake bakes in 13 h"),
        ("done after", "65", 'no unit after "65"'),
        ("centre", "97", 'is "97" in °C or °F?'),
        ("centre", "97 °C or so", '"or so" is left over after the temperature'),
        ("oven", "97 g", '"97 g" is not an oven temperature'),
        ("baked", "-3 cm", '"-3" has a sign in front of it'),
        ("bakd", "3 cm", 'unknown key "bakd" in a bake'),
    ],
)
def test_what_cannot_be_read_is_told(key: str, value: str, told: str) -> None:
    entry, flaws = read_model(Baked, {**ENTRY, key: value}, "a bake")
    assert entry is None
    assert any(told in flaw.message for flaw in flaws), flaws
    assert all(flaw.hint for flaw in flaws)


def test_entries_by_mixture_keep_their_order() -> None:
    data = [{**ENTRY, "of": of, "done after": f"{minutes} min"} for of, minutes in (("a", 60), ("b", 50), ("a", 40))]
    log, flaws = read_model(BakeLog, {"bakes": data}, "the log")
    assert log is not None, flaws
    grouped = by_mixture(log.bakes)
    assert {slug: [entry.done_after for entry in entries] for slug, entries in grouped.items()} == {
        "a": [60.0, 40.0],
        "b": [50.0],
    }
