"""The method of a variation: which step a change means, and where a new one goes."""

from __future__ import annotations

from typing import Any

from tests.every import every

from tinbook.models import Mixture, Variation, read_model
from tinbook.plans.variations.changed_method import ChangedMethod

STEPS = ["Beat <butter>.", "Beat in <eggs>.", {"do": "Fold in the flour.", "called": "fold"}, "Bake."]


def changed(method: list[Any]) -> ChangedMethod:
    mix = ["1 g butter"]
    base, _ = read_model(Mixture, {"name": "Base", "kind": "creamed", "mix": mix, "method": STEPS}, "it")
    variation, flaws = read_model(Variation, {"name": "A", "from": "base", "method": method}, "it")
    assert base is not None and variation is not None, flaws
    return ChangedMethod(base.method, variation.method)


def words(made: ChangedMethod) -> list[str]:
    assert not made.flaws
    return [slot.step.do for slot in made.standing if slot.step is not None]


def test_steps_go_in_where_they_are_said_to_go() -> None:
    method = [
        {"add after": "beat in eggs", "do": "A."}, {"add after": "2", "do": "B."}, {"add before": "1", "do": "C."},
        {"leave out": "Bake"},
    ]  # fmt: skip
    assert words(changed(method)) == ["C.", "Beat <butter>.", "Beat in <eggs>.", "A.", "B.", "Fold in the flour."]


def test_a_method_without_places_is_a_method_of_its_own() -> None:
    made = changed(["Mix all.", {"do": "Bake.", "waiting": "20 min"}])
    assert made.own and words(made) == ["Mix all.", "Bake."]
    assert not changed([]).own and words(changed([])) == [
        "Beat <butter>.",
        "Beat in <eggs>.",
        "Fold in the flour.",
        "Bake.",
    ]


def test_a_step_written_anew_keeps_nothing_but_its_name() -> None:
    (slot,) = [
        slot for slot in changed([{"instead of": "fold", "do": "Stir.", "hands on": "3 min"}]).slots if slot.change == 0
    ]
    assert slot.step is not None
    assert (slot.step.do, slot.step.called, slot.step.done) == ("Stir.", "fold", None)
    assert slot.step.hands_on is not None and slot.step.hands_on.low.base == 3.0


@every("word", ["0", "5", "1234", "beat", "stir", "²"])
def test_a_step_that_is_not_there_or_not_clear(word: str) -> None:
    (flaw,) = changed([{"leave out": word}]).flaws
    assert flaw.path == ("method", 0, "leave out") and flaw.hint
