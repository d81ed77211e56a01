"""The table of a price: its rows add up, and it says what it cannot answer."""

from __future__ import annotations

from decimal import Decimal

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.money.tables import price


def money(cell: object) -> Decimal:
    return Decimal(repr(cell))


@every("slug", ["lighthouse-cake", "estuary-wedding-cake", "sea-garden-cups"])
def test_rows_add_up_to_the_price(demo: Loaded, slug: str) -> None:
    rows = price(demo.book, demo.facts, Query(of=slug)).rows
    spent = [money(row["cost_money"]) for row in rows if row["group"] != "price" and row["cost_money"] is not None]
    told = {spell(row["what"]).partition(":")[0]: money(row["cost_money"]) for row in rows if row["group"] == "price"}  # type: ignore[arg-type]
    assert sum(spent) == told["cost"]
    asked = told.get("price") or told["price at least"]
    assert told["cost"] + told["added"] + told["rounding"] == asked


def test_a_mixture_has_no_size(demo: Loaded) -> None:
    rows = price(demo.book, demo.facts, Query(of="madeira-cake")).rows
    assert [spell(row["what"]) for row in rows[-3:]] == ["cost", "a hundred grams", "each round 20\xa0cm"]  # type: ignore[arg-type]
    with pytest.raises(AskError, match="for a cake"):
        price(demo.book, demo.facts, Query(of="madeira-cake", size="small"))


@every(
    ("asked", "message"),
    [
        (Query(), "needs a cake or a mixture"), (Query(of="lighthose-cake"), "no cake or mixture"),
        (Query(of="lighthouse-cake", size="small", guests=30), "together"), (Query(of="lighthouse-cake", size="vast"), "vast"),
    ],
)  # fmt: skip
def test_what_cannot_be_asked(demo: Loaded, asked: Query, message: str) -> None:
    with pytest.raises(AskError, match=message):
        price(demo.book, demo.facts, asked)
