"""The steps of a method or a technique as stints: what is done in one go, and how long it then has to be left."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from tinbook.models import Step
from tinbook.models.steps import FRIDGE

LONGEST_MIN = 120.0
"""How much is done in one go, if it can be put down between two steps (our own judgement)."""


@dataclass(kw_only=True)
class Stint:
    """Steps done one after another. Minutes: hands on, at the most and at the least, then left alone for at least
    `wait_min`; it can be done `ahead_min` before it goes out, None for on the day; what comes next has to follow within
    `within_min`, if that is said. `after`: the places of the stints that come first. `chilled`: it is left in the
    fridge."""

    hands_min: float = 0.0
    least_min: float = 0.0
    wait_min: float = 0.0
    ahead_min: float | None = None
    within_min: float | None = None
    chilled: bool = False
    after: tuple[int, ...] = ()
    steps: list[Step] = field(default_factory=list)


def stints(steps: Iterable[Step]) -> tuple[Stint, ...]:
    """The stints of some steps, each with those that come before it by their places.

    A stint ends where something is left to stand, where a step waits for another than the one before it, and where
    the next cannot be done nearly as far ahead. The hands are counted at the most a step says, the wait at the least.
    """
    found: list[Stint] = []
    where: dict[str, int] = {}
    open_ = False
    for step in steps:
        waits_for = [where[name] for name in step.after if name in where]
        ahead = step.ahead.minutes if step.ahead else None
        current = found[-1] if open_ else None
        hands = step.hands_on.high.base if step.hands_on else 0.0
        elsewhere = bool(step.after) and waits_for != [len(found) - 1]
        if (
            current is None
            or elsewhere
            or (ahead or 0.0) < (current.ahead_min or 0.0) / 2.0
            or (current.ahead_min is None and ahead is not None)
            or current.hands_min + hands > LONGEST_MIN
        ):
            before = tuple(dict.fromkeys(waits_for)) if step.after else (len(found) - 1,) if found else ()
            current = Stint(ahead_min=ahead, after=before)
            found.append(current)
        current.steps.append(step)
        current.hands_min += hands
        current.least_min += step.hands_on.low.base if step.hands_on else 0.0
        if ahead is not None and current.ahead_min is not None:
            current.ahead_min = min(current.ahead_min, ahead)
        if step.called:
            where[step.called] = len(found) - 1
        left_min = (step.waiting.low.base if step.waiting else 0.0) + (step.stands.minutes if step.stands else 0.0)
        if step.keeps:
            current.within_min = step.keeps.minutes
        if left_min:
            current.wait_min, current.chilled = left_min, step.waits_in == FRIDGE
        open_ = not left_min
    return tuple(found)
