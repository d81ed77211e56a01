"""The tables of labels."""

from __future__ import annotations

from datetime import date

import pytest

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.labels.tables import allergens, column, ingredients_list


def test_a_list_row_by_row(demo: Loaded) -> None:
    result = ingredients_list(demo.book, demo.facts, Query(of="madeira-cake", made=date(2026, 12, 20)))
    weights = [row["weight_g"] for row in result.rows]
    assert weights == sorted(weights, key=lambda mass: -float(str(mass)))
    assert any("folic acid" in spell(row["ingredient"]) for row in result.rows)  # type: ignore[arg-type]
    assert sum(float(str(row["share_percent"])) for row in result.rows) > 100.0  # more goes in than comes out
    before = ingredients_list(demo.book, demo.facts, Query(of="madeira-cake", made=date(2026, 12, 1)))
    assert not any("folic acid" in spell(row["ingredient"]) for row in before.rows)  # type: ignore[arg-type]


def test_what_is_missing_is_a_row(demo: Loaded) -> None:
    result = ingredients_list(demo.book, demo.facts, Query(of="lighthouse-cake"))
    told = [spell(row["ingredient"]) for row in result.rows]  # type: ignore[arg-type]
    assert "not complete" in spell(result.title)
    assert any(text.startswith("not complete: the card for") and "sugarpaste" in text for text in told)


def test_allergens_of_one_and_of_all(demo: Loaded) -> None:
    one = allergens(demo.book, demo.facts, Query(of="lighthouse-cake")).rows
    assert {"allergen": "unknown", "from": "sugarpaste"} in one
    every = allergens(demo.book, demo.facts, Query()).rows
    assert len(every) == len(demo.book.mixtures) + len(demo.book.cakes)
    with pytest.raises(AskError, match="no mixture or cake"):
        allergens(demo.book, demo.facts, Query(of="no-such-cake"))


def test_a_column_is_a_plain_key() -> None:
    assert column("Brazil nut") == "brazil_nut"
