"""What differs from a base: by the record of how the mixture came from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Mixture, Variation, read_model
from tinbook.plans.base.weighing import weigh
from tinbook.plans.variations.differences import Differences, differences
from tinbook.plans.variations.written_out import vary

Make = Callable[..., Mixture]


@pytest.fixture
def differ(mixture: Make, kitchen: Book, facts: Facts) -> Callable[..., Differences]:
    """`differ(change=[...])`: what a variation of a plain sponge has other than it."""

    def made(**keys: Any) -> Differences:
        base = mixture(method=["Beat <butter>.", "Bake."])
        data = {"name": "A", "from": "base", **{key.replace("_", " "): value for key, value in keys.items()}}
        variation, flaws = read_model(Variation, data, "it")
        assert variation is not None, flaws
        done = vary(variation, base, kitchen, facts)
        assert done.mixture is not None, done.flaws
        book = replace(kitchen, mixtures={"base": base, "a": done.mixture}, varies={"a": done.varies})
        found = differences(weigh("a", done.mixture, book, facts), book, facts)
        assert found is not None
        return found

    return made


def names(found: Differences) -> list[tuple[str | None, str | None]]:
    return [tuple(each and f"{each.line.amount:g} {each.line.name}" for each in pair) for pair in found.lines]  # type: ignore[misc]


def test_lines_stand_beside_what_they_were(differ: Callable[..., Differences]) -> None:
    change = [
        {"leave out": "milk"}, {"swap": "vanilla extract", "for": "4 tsp instant coffee"}, {"amount": "5 eggs"},
        {"add": "20 g cocoa powder", "before": "butter"},
    ]  # fmt: skip
    found = differ(change=change)
    assert names(found) == [
        (None, "20 cocoa powder"), ("4 egg", "5 egg"), ("2 vanilla extract", "4 instant coffee"), ("60 milk", None),
    ]  # fmt: skip
    assert not found.keys and not found.steps


def test_steps_by_their_places(differ: Callable[..., Differences]) -> None:
    method = [{"add before": "1", "do": "Sift."}, {"instead of": "2", "do": "Bake low."}]
    assert differ(method=method).steps == ((None, 0), (1, 2))
    found = differ(method=["Mix and bake."])
    assert found.anew and not found.steps


def test_keys_that_say_other_things(differ: Callable[..., Differences]) -> None:
    bake = {"oven": "160 °C", "time": "55-65 min"}
    assert differ(bake={**bake, "done": "Firm."}, tags=["new"]).keys == frozenset()
    assert differ(bake={**bake, "oven": "150 °C"}).keys == {"bake"}
    assert differ(tins="round 23 cm x 10 cm", kind="madeira").keys == {"tins", "kind"}


def test_no_base_no_differences(kitchen: Book, facts: Facts, mixture: Make) -> None:
    assert differences(weigh("base", mixture(), kitchen, facts), kitchen, facts) is None


def test_steps_that_are_held_back_are_not_told_of(demo: Loaded) -> None:
    book, slug = demo.book, "ginger-sponge"
    base = book.varies[slug].base
    bare = book.mixtures[base].model_copy(update={"method": ()})
    held = replace(book, mixtures={**book.mixtures, base: bare})
    for kept, steps in ((book, 3), (held, 0)):
        found = differences(weigh(slug, kept.mixtures[slug], kept, demo.facts), kept, demo.facts)
        assert found is not None and len(found.steps) == steps and len(found.lines) == 3
