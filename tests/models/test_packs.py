"""Packs and amounts as they are written, and what to write instead."""

from __future__ import annotations

import pytest

from tinbook.models.packs import read_amount, read_pack
from tinbook.units import METRIC, Misread

FOOD, THINGS = ("mass", "volume", "count"), ("count", "length")


@pytest.mark.parametrize(
    ("text", "want", "amount", "kind"),
    [
        ("250 g", FOOD, 250.0, "mass"),
        ("1 kg", FOOD, 1000.0, "mass"),
        ("1 l", FOOD, 1000.0, "volume"),
        ("6", FOOD, 6.0, "count"),
        ("5 m", THINGS, 5000.0, "length"),
        ("2.5 metres", THINGS, 2500.0, "length"),
    ],
)
def test_a_pack(text: str, want: tuple[str, ...], amount: float, kind: str) -> None:
    pack = read_pack(text, METRIC, want)
    assert (pack.amount, pack.kind, pack.written) == (pytest.approx(amount), kind, text)


@pytest.mark.parametrize("text", ["0", "0 g", "-250 g", "0.4 g", "2.5", "some", "250", "", "5 min", "1 g g"])
def test_no_pack(text: str) -> None:
    if text == "250":
        assert read_pack(text, METRIC).kind == "count"
        return
    with pytest.raises(Misread) as told:
        read_pack(text, METRIC)
    assert told.value.message and told.value.hint


@pytest.mark.parametrize(
    ("text", "total", "each", "kind"),
    [
        ("500 g", 500.0, 500.0, "mass"),
        ("4 x 250 g", 1000.0, 250.0, "mass"),
        ("4 × 250 g", 1000.0, 250.0, "mass"),
        ("3x1 l", 3000.0, 1000.0, "volume"),
        ("12", 12.0, 12.0, "count"),
        ("2 x 6", 12.0, 6.0, "count"),
        ("2 x 5 m", 10000.0, 5000.0, "length"),
        ("0", 0.0, 0.0, "count"),
    ],
)
def test_an_amount(text: str, total: float, each: float, kind: str) -> None:
    found = read_amount(text, METRIC)
    assert (found.total, found.each, found.kind) == (pytest.approx(total), pytest.approx(each), kind)


@pytest.mark.parametrize("text", ["-500 g", "4 x", "x 250 g", "1.5", "2 x 2.5", "lots", "500 gg", "4 x -2"])
def test_no_amount_says_where(text: str) -> None:
    with pytest.raises(Misread) as told:
        read_amount(text, METRIC)
    assert told.value.hint and 0 <= told.value.start <= told.value.end <= len(text)
