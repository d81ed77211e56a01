"""How long steps may stand or be done ahead: what several of them share is said once, above them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from tinbook.pages.base.shared import StepView
from tinbook.pages.technique.figures import runs

KEEPS = "keeps for "
"""How what is said about keeping begins: it is of the work after a step, not of the step."""


def shared_windows(steps: Iterable[StepView]) -> tuple[tuple[str, ...], tuple[StepView, ...]]:
    """What several steps share, in words; and the steps without it."""
    listed = tuple(steps)
    told = dict[str, list[int]]()
    for place, step in enumerate(listed):
        for window in step.windows:
            told.setdefault(window, []).append(place)
    shared = {window: places for window, places in told.items() if len(places) > 1}
    numbers = [str(number) for number, _ in enumerate(listed, 1)]
    lines = tuple(_of_many(window, runs(numbers, places)) for window, places in shared.items())
    bare = tuple(replace(step, windows=tuple(each for each in step.windows if each not in shared)) for step in listed)
    return lines, bare


def _of_many(window: str, steps: str) -> str:
    return f"After steps {steps} it {window}." if window.startswith(KEEPS) else f"Steps {steps} {window}."
