"""The table of dowels says what the plan at actual size says, and what the house's own technique sets out."""

from __future__ import annotations

import re

import pytest

from tinbook.loading import Loaded
from tinbook.models import Finish
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.tables import TABLES
from tinbook.plans.true_size.dowelling import dowel_plan
from tinbook.tins import Tin, read_tin


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def ask(demo: Loaded, **asked: object) -> list[dict[str, object]]:
    return [dict(row) for row in TABLES["dowels"].rows(demo.book, demo.facts, Query(**asked)).rows]  # type: ignore[arg-type]


def test_one_pair_has_one_count(demo: Loaded) -> None:
    """In the plan to print, in the table, and in the words of the house's technique for two tiers."""
    (row,) = ask(demo, tins=((1, tin("round 20 cm")),), above=tin("round 15 cm"))
    plan = dowel_plan(tin("round 20 cm"), tin("round 15 cm"), demo.book.finish, demo.facts)
    assert row["dowels"] == plan.count == demo.book.finish.dowels
    assert (row["published_low"], row["published_high"]) == (plan.low, plan.high) == (3, 6)
    technique = demo.book.techniques["stack-two-tiers"]
    told = [re.search("([0-9]+) dowels", material.take.written) for material in technique.materials]
    assert [int(found[1]) for found in told if found] == [plan.count]


def test_every_cake_has_its_usual_tier_and_a_cake_asked_for_all_of_them(demo: Loaded) -> None:
    every = ask(demo)
    assert {"round 20 cm", "square 30 cm", "heart 25 cm"} <= {str(row["cake"]) for row in every}
    (usual,) = [row for row in every if row["cake"] == "round 25 cm"]
    assert usual["above"] == "round 20 cm"
    tiers = ask(demo, tins=((1, tin("round 25 cm")),))
    assert [row["above"] for row in tiers] == [
        "round 10 cm",
        "round 13 cm",
        "round 15 cm",
        "round 18 cm",
        "round 20 cm",
    ]
    assert usual == tiers[-1]
    assert not [row for row in every if str(row["cake"]).startswith(("ball", "dome", "standard"))]


def test_a_wider_tier_never_asks_for_fewer_by_what_is_published(demo: Loaded) -> None:
    tiers = TABLES["dowels"].rows(
        demo.book.__class__(**{**vars_of(demo), "finish": Finish()}), demo.facts, Query(tins=((1, tin("round 40 cm")),))
    )
    counts = [int(str(row["dowels"])) for row in tiers.rows]
    assert counts == sorted(counts) and counts[0] < counts[-1]


def vars_of(demo: Loaded) -> dict[str, object]:
    return {name: getattr(demo.book, name) for name in demo.book.__dataclass_fields__}


@pytest.mark.parametrize(
    ("cake", "above", "told"),
    [
        ("round 15 cm", "round 20 cm", "is wider than"),
        ("ball 15 cm", None, "dowels cannot go"),
        ("round 10 cm", None, "is sold"),
    ],
)
def test_what_cannot_stand_is_told(demo: Loaded, cake: str, above: str | None, told: str) -> None:
    with pytest.raises(AskError, match=told):
        ask(demo, tins=((1, tin(cake)),), above=tin(above) if above else None)


def test_a_tier_stands_on_a_cake(demo: Loaded) -> None:
    with pytest.raises(AskError, match="cannot use --above without --tin"):
        ask(demo, above=tin("round 15 cm"))
