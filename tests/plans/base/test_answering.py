"""A question answered: by eggs, by weight, in batches, by what is left; what does not fit says what to ask."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, read_take
from tinbook.pages.spelling.sayings import formula_of, inputs_of
from tinbook.plans.base.answering import scale
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.versions import Version
from tinbook.plans.base.weighing import Batch
from tinbook.tins import Tin, read_tin
from tinbook.units import METRIC

Batches = Callable[..., Batch]
MADE = {"tins": None, "bake": None, "kind": "buttercream", "makes": "790 g",
        "mix": ["250 g butter", "500 g caster sugar", "2 tbsp milk", "2 tsp vanilla extract"]}  # fmt: skip


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def exact_g(made: Batch, version: Version) -> dict[str, float]:
    """Exact grams of every line, whatever its unit; a line's name is used once in these tests."""
    return {
        line.name: line.mass_g * got.exact / (line.mass_g if got.unit == "g" else line.amount)
        for line, got in zip(made.ingredients, version.amounts, strict=True)
    }


def test_asked_by_eggs_weight_batches_and_more(batch: Batches, kitchen: Book, facts: Facts) -> None:
    made = batch()
    assert scale(made, kitchen, facts, Query(eggs=6)).exact.factor == 1.5
    assert scale(made, kitchen, facts, Query(weight_g=900)).exact.mass_g == pytest.approx(900)
    assert scale(made, kitchen, facts, Query(batches=2.5)).exact.factor == 2.5
    assert scale(made, kitchen, facts, Query(plus=0.1)).exact.factor == pytest.approx(1.1)
    assert scale(made, kitchen, facts, Query()).exact.factor == 1.0
    # A buttercream makes less than goes in: the weight asked for is what comes out.
    cream = batch(**{**MADE, "makes": "395 g"})
    assert scale(cream, kitchen, facts, Query(weight_g=790)).exact.factor == 2.0


def test_two_and_a_half_eggs_are_beaten(batch: Batches, kitchen: Book, facts: Facts) -> None:
    answer = scale(batch(), kitchen, facts, Query(eggs=2.5))
    assert answer.beaten
    assert answer.whole.amounts[2].unit == "g"
    assert answer.whole.amounts[2].exact == pytest.approx(2.5 * 68 * 0.885)


@every(
    ("left", "name"),
    [
        ("500 g butter", "butter"),
        ("500 g sweet butter", "butter"),
        ("3 eggs", "egg"),
        ("100 ml milk", "milk"),
        ("1 cup milk", "milk"),
        ("100 g milk", "milk"),
        ("1 tbsp vanilla extract", "vanilla extract"),
        ("120 g eggs", "egg"),
    ],
)
def test_what_is_left_is_used_up(batch: Batches, kitchen: Book, facts: Facts, left: str, name: str) -> None:
    made, take = batch(), read_take(left, kitchen.house.spoons)
    exact = exact_g(made, scale(made, kitchen, facts, Query(left=take)).exact)[name]
    one = next(line for line in made.ingredients if line.name == name)
    if take.quantity.dimension == "mass":
        assert exact == pytest.approx(take.quantity.base)
    elif take.quantity.dimension == "count":
        assert exact == pytest.approx(take.quantity.base * 68 * 0.885)
    else:
        assert exact * (one.volume_ml or 0) / one.mass_g == pytest.approx(take.quantity.base)


def test_what_is_left_covers_all_lines_of_it(batch: Batches, kitchen: Book, facts: Facts) -> None:
    parts = [{"take": "50 g butter", "part": "base"}, {"take": "150 g butter", "part": "top"}, "100 g caster sugar"]
    answer = scale(batch(mix=parts), kitchen, facts, Query(left=read_take("100 g butter", METRIC)))
    assert answer.exact.factor == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("query", "message"),
    [
        (Query(tins=((1, tin("round 20 cm")),)), "made by weight, not by tins"),
        (Query(eggs=3), "has no whole eggs"),
        (Query(left=read_take("100 g honey", METRIC)), '"honey" is not in'),
        (Query(left=read_take("100 g sand", METRIC)), '"sand" is not in'),
        (Query(left=read_take("3 butter", METRIC)), "cannot be compared with"),
    ],
)
def test_a_question_that_does_not_fit_says_what_to_ask(
    batch: Batches, kitchen: Book, facts: Facts, query: Query, message: str
) -> None:
    with pytest.raises(AskError, match=message) as told:
        scale(batch(**MADE), kitchen, facts, query)
    assert told.value.hint


@pytest.mark.parametrize("query", [Query(eggs=0), Query(weight_g=0), Query(batches=0), Query(plus=-1), Query(plus=-2)])
def test_nothing_at_all_is_no_question(batch: Batches, kitchen: Book, facts: Facts, query: Query) -> None:
    with pytest.raises(ValueError, match="two positive amounts"):
        scale(batch(), kitchen, facts, query)


@every(
    ("query", "formula"),
    [
        (Query(tins=((1, tin("round 20 cm")),)), "factor = batter wanted / batter in the recipe"),
        (Query(eggs=6), "factor = eggs wanted / eggs in the recipe"),
        (Query(weight_g=900), "factor = weight wanted / weight the mixture makes"),
        (Query(batches=2), "factor = number of batches"),
        (Query(plus=0.1), "factor = 1 + the share to add"),
        (Query(left=read_take("100 g butter", METRIC)), "factor = what is left / what the recipe asks for"),
        (Query(), "factor = 1, as in the recipe"),
    ],
)
def test_every_answer_says_how_it_was_worked_out(
    batch: Batches, kitchen: Book, facts: Facts, query: Query, formula: str
) -> None:
    answer = scale(batch(), kitchen, facts, query)
    assert formula_of(answer.worked) == formula
    assert inputs_of(answer.worked) == (f"factor {answer.exact.factor:.4f}",)
