"""How things were worked out, wherever it is told, names sources that can be looked up."""

from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.pages.spelling.sayings import formula_of, inputs_of
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.shelf import shelf
from tinbook.plans.base.weighing import weigh_all
from tinbook.plans.base.worked import Worked
from tinbook.plans.measures.cups import cups_worked, spoons_worked
from tinbook.plans.measures.eggs import classes_worked
from tinbook.plans.measures.flour import flour_worked
from tinbook.plans.measures.heat import heat_worked, oven_worked
from tinbook.plans.mixtures.batches import weight_table


def told(book: Book, facts: Facts) -> list[Worked]:
    found = [make(facts) for make in (oven_worked, heat_worked, classes_worked, flour_worked)]
    found += [spoons_worked(book, facts), cups_worked(book, facts)]
    found.append(shelf(book).worked)
    for batch in weigh_all(book, facts).values():
        found += [batch.worked, weight_table(batch, facts).worked]
        if batch.tins:
            found.append(tin_table(batch, book, facts).worked)
    return found


def test_every_formula_is_told_with_inputs_and_known_sources(demo: Loaded) -> None:
    for worked in told(demo.book, demo.facts):
        assert formula_of(worked) and all(inputs_of(worked)) and worked.sources
        assert not set(worked.sources) - set(demo.facts.sources), worked


def test_it_does_not_change() -> None:
    with pytest.raises(FrozenInstanceError):
        Worked("a = b", ("b is 2",), ("common practice",)).formula = "a = c"  # type: ignore[misc]
