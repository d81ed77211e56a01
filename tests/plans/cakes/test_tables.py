"""The tables of a cake: rows by tier, all of it together, everything used; and questions that do not fit."""

from __future__ import annotations

from typing import Any

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result
from tinbook.plans.base.saying import Saying
from tinbook.plans.cakes.tables import cake_asked
from tinbook.plans.tables import TABLES

WEDDING = "estuary-wedding-cake"


def ask(demo: Loaded, name: str, **asked: Any) -> Result:
    return TABLES[name].rows(demo.book, demo.facts, Query(of=WEDDING, **asked))


def said(cell: object) -> str:
    return spell(cell) if isinstance(cell, Saying) else str(cell)


def test_tiers_from_the_bottom_and_all_of_it_last(demo: Loaded) -> None:
    rows = ask(demo, "cake").rows
    assert [said(row["tier"]) for row in rows] == [
        "base, round 25 cm",
        "middle, round 20 cm",
        "top, round 15 cm",
        "in all",
    ]
    *tiers, total = rows
    for key in (
        "filling_g",
        "coat_g",
        "paste_g",
        "portions_count",
        "eggs_count",
        "layers_count",
        "filling_shown_g",
    ):
        assert total[key] == pytest.approx(sum(float(row[key] or 0) for row in tiers)), key  # type: ignore[arg-type]
    weights = sum(float(row["weight_g"]) for row in tiers)  # type: ignore[arg-type]
    assert total["weight_g"] == pytest.approx(weights + float(total["board_weight_g"]))  # type: ignore[arg-type]
    assert total["high_mm"] == tiers[-1]["top_mm"] == 357.0


def test_a_size_is_asked_by_name_by_steps_or_by_guests(demo: Loaded) -> None:
    assert said(ask(demo, "cake").title) == "Estuary wedding cake, as written"
    assert said(ask(demo, "cake", size="-1").title) == "Estuary wedding cake, a step down"
    for guests, keep in ((60, False), (73, True), (90, True)):
        total = ask(demo, "cake", guests=guests, keep_top=keep).rows[-1]
        serves, spare = total["serves_count"], total["spare_count"]
        assert isinstance(serves, int) and serves >= guests and spare == serves - guests
    _, size = cake_asked(demo.book, demo.facts, Query(of="lighthouse-cake", size="for the slipway party"))
    assert size == "for the slipway party"


def test_everything_used_is_in_groups(demo: Loaded) -> None:
    rows = ask(demo, "used").rows
    groups = list(dict.fromkeys(row["group"] for row in rows))
    assert groups == ["ingredient", "technique", "colour", "tin", "tool", "cutter", "not food", "returned"]
    butter = next(row for row in rows if row["what"] == "butter")
    assert "Pilot's buttercream" in str(butter["for"]) and isinstance(butter["exact_g"], float)


@every(
    ("name", "asked", "message", "cure"),
    [
        ("cake", {"of": "estuary-weding-cake"}, "no cake", WEDDING),
        ("cake", {"of": "zzz"}, "no cake", WEDDING),
        ("cake", {"of": "lighthouse-cake", "keep_top": True}, "both cut and kept", "leave out"),
        ("cake", {"of": WEDDING, "size": "huge"}, 'no size "huge"', "ask for"),
        ("cake", {"of": WEDDING, "size": "+1", "guests": 40}, "used together", "one of them"),
        ("cake", {"of": WEDDING, "size": "+5"}, "cannot be made in round 28 cm", "another size"),
        ("cake", {"of": WEDDING, "guests": 900}, "serves 900", "the largest serves"),
        ("used", {"of": WEDDING, "keep_top": True}, "changes nothing here", "how many guests"),
        ("used", {"of": WEDDING, "portion": "finger"}, "changes nothing here", "how many guests"),
    ],
)
def test_a_question_that_does_not_fit(demo: Loaded, name: str, asked: Any, message: str, cure: str) -> None:
    with pytest.raises(AskError, match=message.replace("+", r"\+")) as told:
        TABLES[name].rows(demo.book, demo.facts, Query(**asked))
    assert cure in told.value.hint
