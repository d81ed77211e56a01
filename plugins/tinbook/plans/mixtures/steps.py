"""The times of steps, added up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tinbook.models import Step
from tinbook.units import Span


@dataclass(frozen=True, slots=True)
class StepTimes:
    """Hands-on and waiting minutes, each from the least to the most."""

    hands_on_low_min: float
    hands_on_high_min: float
    waiting_low_min: float
    waiting_high_min: float


def step_times(steps: Iterable[Step]) -> StepTimes:
    """The sums over all steps that give a time."""
    steps = tuple(steps)
    hands_on = _sum(step.hands_on for step in steps)
    waiting = _sum(step.waiting for step in steps)
    return StepTimes(*hands_on, *waiting)


def _sum(spans: Iterable[Span | None]) -> tuple[float, float]:
    known = [span for span in spans if span is not None]
    return sum(span.low.base for span in known), sum(span.high.base for span in known)
