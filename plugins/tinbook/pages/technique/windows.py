"""How long steps may stand or be done ahead: what is the same for several of them is said once, above them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import groupby

from tinbook.pages.base.shared import StepView
from tinbook.pages.spelling import formats

FOR_MANY = {"keeps": "keep"}
"""A verb that is another one where several steps are told of."""


def shared_windows(steps: Iterable[StepView]) -> tuple[tuple[str, ...], tuple[StepView, ...]]:
    """What several steps share, in words; and the steps without it."""
    listed = tuple(steps)
    told = dict[str, list[int]]()
    for number, step in enumerate(listed, 1):
        for window in step.windows:
            told.setdefault(window, []).append(number)
    shared = {window: numbers for window, numbers in told.items() if len(numbers) > 1}
    lines = tuple(f"Steps {_numbers(numbers)} {_of_many(window)}" for window, numbers in shared.items())
    bare = tuple(
        replace(step, windows=tuple(each for each in step.windows if each not in shared)) for step in listed
    )
    return lines, bare


def _of_many(window: str) -> str:
    verb, space, rest = window.partition(" ")
    return f"{FOR_MANY.get(verb, verb)}{space}{rest}."


def _numbers(numbers: list[int]) -> str:
    """`1 to 7 and 9`: three or more in a row by their ends."""
    words = list[str]()
    for _, group in groupby(enumerate(numbers), lambda pair: pair[1] - pair[0]):
        run = [number for _, number in group]
        words += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(number) for number in run]
    return formats.sentence(words)
