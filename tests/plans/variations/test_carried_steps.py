"""Steps of the base in a variation: what they name is in the mix, or they are told of."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from tinbook.models import Book, Change, Flaw, Mixture, Step, StepChange, read_model
from tinbook.plans.variations.carried_steps import carried_steps
from tinbook.plans.variations.changed_method import ChangedMethod
from tinbook.plans.variations.changed_mix import ChangedMix

STEPS = ["Beat <butter>.", "Beat in <eggs>.", {"do": "Fold in <1/2 self-raising flour>.", "called": "fold"}, "Bake."]
MIX = ["300 g butter", "300 g caster sugar", {"take": "4 eggs", "note": "beaten"}, "300 g self-raising flour"]


def read(cls: type[Any], data: Any) -> Any:
    model, flaws = read_model(cls, data, "it")
    assert model is not None, flaws
    return model


def carried(
    book: Book, base: Mixture, change: Sequence[Any] = (), method: Sequence[Any] = ()
) -> tuple[tuple[Step, ...], list[Flaw]]:
    mix = ChangedMix(base.mix, [read(Change, row) for row in change], book)
    steps = ChangedMethod(base.method, [read(StepChange, row) for row in method])
    assert not mix.flaws and not steps.flaws
    return carried_steps(mix, steps)


def test_parts_of_lines_and_names_of_steps_are_kept(kitchen: Book, mixture: Any) -> None:
    base = mixture(mix=MIX, method=STEPS)
    swap = [{"swap": "self-raising flour", "for": "plain flour"}]
    bake = [{"instead of": "4", "do": "Bake low.", "hands on": "1 min"}]
    steps, flaws = carried(kitchen, base, swap, bake)
    assert not flaws
    assert [step.do for step in steps][2:] == ["Fold in <1/2 plain flour>.", "Bake low."]
    steps, _ = carried(kitchen, base, method=[{"instead of": "fold", "do": "Stir in <self-raising flour>."}])
    assert steps[2].called == "fold"


def test_words_that_still_hold_are_left_alone(kitchen: Book, mixture: Any) -> None:
    """A step that says "milk" holds as long as any milk is in the mix."""
    base = mixture(mix=[*MIX, "60 ml milk"], method=["Warm the milk."])
    _, (flaw,) = carried(kitchen, base, [{"swap": "milk", "for": "water"}])
    assert flaw.path == ("change", 0, "swap") and "step 1 of the base mentions" in flaw.message
    assert not carried(kitchen, base, [{"amount": "90 ml milk"}])[1]
    twice = mixture(mix=[{"take": "60 ml milk", "part": "a"}, {"take": "50 ml milk", "part": "b"}, *MIX],
                    method=["Warm the milk."])  # fmt: skip
    assert not carried(kitchen, twice, [{"leave out": "milk", "part": "b"}])[1]


def test_steps_that_no_longer_hold_are_told_together(kitchen: Book, mixture: Any) -> None:
    base = mixture(mix=[*MIX, "60 ml milk"], method=["Warm the milk.", "Bake.", "Stir in <milk>."])
    _, (flaw,) = carried(kitchen, base, [{"leave out": "milk"}])
    assert flaw.message == "steps 1 and 3 of the base mention it, and so no longer fit"
    assert flaw.hint == 'write them again under "method:", with "instead of: 1"'


def test_a_step_written_here_names_what_is_in_the_mix_now(kitchen: Book, mixture: Any) -> None:
    base = mixture(mix=MIX, method=STEPS)
    stir = [{"instead of": "3", "do": "Stir in <self-raising flour>."}]
    _, (flaw,) = carried(kitchen, base, [{"swap": "self-raising flour", "for": "plain flour"}], stir)
    assert (flaw.path, flaw.hint) == (("method", 0, "do"), 'did you mean "<plain flour>"?')
    assert "Stir in <self-raising flour>."[flaw.start : flaw.end] == "self-raising flour"


def test_a_name_taken_over_by_something_new_is_told(kitchen: Book, mixture: Any) -> None:
    """<milk> was plain text in the base; with milk in the mix it would be an amount."""
    base = mixture(mix=MIX, method=["Beat <butter> until pale as <milk>."])
    _, (flaw,) = carried(kitchen, base, [{"add": "60 ml milk"}])
    assert flaw.path == ("change", 0, "add")
