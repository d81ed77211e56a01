"""Self-raising flour from plain, against published rates."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.pages.spelling.sayings import inputs_of
from tinbook.plans.measures.flour import flour_rows, flour_worked


def test_self_raising_flour_adds_up_and_lies_in_the_published_range(facts: Facts, table: Any) -> None:
    """Spoons of powder to plain flour, rows S1 to S4 of formula_balance.csv: 1 tsp per 110 g to 2 tsp per 150 g."""
    published = []
    for row in table("formula_balance"):
        if row["id"] in ("S1", "S2", "S3", "S4"):
            spoons, flour = re.findall(r"([\d.]+) (?:tsp|g)", row["rule"])[:2]
            published.append(float(spoons) / float(flour))
    assert len(published) == 4
    for row in flour_rows(facts):
        assert row.plain_g + row.powder_g == row.self_raising_g
        assert min(published) <= row.powder_tsp / row.plain_g <= max(published), row
        assert row.powder_g / row.plain_g == pytest.approx(0.05, abs=0.5 / row.plain_g + 0.001)


def test_the_share_is_said_with_its_range_and_its_source(facts: Facts) -> None:
    share = facts.numbers["baking powder in self-raising"]
    worked = flour_worked(facts)
    assert inputs_of(worked)[0].startswith(f"the share is {share.value:.0%} of the plain flour")
    assert worked.sources == (share.source,)
