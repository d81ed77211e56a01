"""finish.yaml and used.yaml, typed."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from tests.every import every

from tinbook.models import Finish, Used, UsedLog, read_model
from tinbook.units import METRIC


def test_a_finish_in_bench_spelling() -> None:
    finish, flaws = read_model(
        Finish,
        {
            "heights": "4 in", "layers": "4", "filling": "5 mm", "crumb coat": "none", "final coat": "1/4 in",
            "stays in the bowl": "5 %", "rise": {"creamed": "1.45"}, "board": "wide",
            "border": {"opening": "8 mm", "pitch": "14 mm", "stroke": "2 cm", "edges": "top and foot"},
            "made with": {"filling": "plain-icing"},
        },
        "it",
        METRIC,
    )  # fmt: skip
    assert not flaws
    assert finish is not None
    assert finish.heights == (pytest.approx(101.6),)
    assert (finish.crumb_coat, finish.final_coat) == (0.0, pytest.approx(6.35))
    assert finish.stays_in_the_bowl == 0.05
    assert finish.rise == {"creamed": 1.45}
    assert finish.border is not None
    assert (finish.border.marks, finish.border.stroke) == ("shells", 20.0)
    assert finish.made_with is not None
    assert finish.made_with.filling == "plain-icing"


def test_nothing_written_is_nothing_said() -> None:
    assert all(value in (None, (), False) for value in Finish().model_dump().values())


def test_an_entry_of_the_log() -> None:
    log, flaws = read_model(
        UsedLog,
        {"used": [{"day": "2026-05-02", "of": "icing", "cake": "round 8 in", "height": "4 in", "used": "2 lb"}]},
        "it",
        METRIC,
    )
    assert not flaws
    assert log is not None
    entry = log.used[0]
    assert (entry.day, entry.cake.name, entry.used) == (date(2026, 5, 2), "round 20 cm", pytest.approx(907.18474))


@every(
    ("key", "value"),
    [
        ("day", "02/05/2026"),
        ("height", "ten"),
        ("used", "-4 g"),
        ("cake", "3 round 20 cm"),
        ("layers", "0"),
        ("of", ""),
    ],
)
def test_an_entry_that_cannot_be(key: str, value: Any) -> None:
    entry = {"day": "2026-05-02", "of": "icing", "cake": "round 20 cm", "height": "10 cm", "used": "900 g", key: value}
    made, flaws = read_model(Used, entry, "it", METRIC)
    assert made is None
    assert [flaw.path for flaw in flaws] == [(key,)]
    assert flaws[0].hint


@pytest.mark.parametrize("count", ["0", "2", "21", "four", "4.5"])
def test_dowels_that_hold_nothing(count: str) -> None:
    """A tier on two dowels tips."""
    finish, flaws = read_model(Finish, {"dowels": count}, "finish.yaml", METRIC)
    assert finish is None
    (flaw,) = flaws
    assert "is not a whole number from 3 to 20" in flaw.message
    assert flaw.hint == f"write {'one from 3 to 20' if count.isdigit() else 'it in figures'}, such as 3"
