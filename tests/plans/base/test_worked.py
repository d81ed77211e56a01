"""How things were worked out, wherever it is told, names sources that can be looked up."""

from __future__ import annotations

from dataclasses import FrozenInstanceError
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.shelf import shelf
from tinbook.plans.base.weighing import weigh_all
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.conversions import conversions
from tinbook.plans.mixtures.batches import weight_table


def told(book: Book, facts: Facts) -> list[Worked]:
    page: Any = conversions(book, facts)
    found = [getattr(page, name) for name in vars(page) if name.endswith("_worked")]
    assert len(found) == 6
    found.append(shelf(book).worked)
    for batch in weigh_all(book, facts).values():
        found += [batch.worked, weight_table(batch, facts).worked]
        if batch.tins:
            found.append(tin_table(batch, book, facts).worked)
    return found


def test_every_formula_is_told_with_inputs_and_known_sources(demo: Loaded) -> None:
    for worked in told(demo.book, demo.facts):
        assert worked.formula and all(worked.inputs)
        assert not set(worked.sources) - set(demo.facts.sources), worked


def test_it_does_not_change() -> None:
    with pytest.raises(FrozenInstanceError):
        Worked("a = b").formula = "a = c"  # type: ignore[misc]
