"""Self-raising flour from plain flour and baking powder."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.engine import rounding, scaling
from tinbook.facts import Facts
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked

SELF_RAISING_G = (100.0, 150.0, 200.0, 225.0, 250.0, 300.0, 400.0, 500.0)


@dataclass(frozen=True, slots=True)
class FlourRow:
    """Self-raising flour from plain: grams, and the spoons of powder."""

    self_raising_g: float
    plain_g: float
    powder_g: float
    powder_tsp: float


def flour_rows(facts: Facts) -> tuple[FlourRow, ...]:
    """Plain flour and baking powder for round weights of self-raising flour."""
    share = facts.numbers["baking powder in self-raising"].value
    teaspoon_g = facts.numbers["teaspoon of baking powder"].value
    rows = []
    for self_raising_g in SELF_RAISING_G:
        plain_g, powder_g = scaling.plain_for_self_raising(self_raising_g, share)
        rows.append(
            FlourRow(
                self_raising_g,
                rounding.half_up(plain_g, 1.0),
                rounding.half_up(powder_g, 1.0),
                rounding.spoon(powder_g / teaspoon_g),
            )
        )
    return tuple(rows)


def flour_worked(facts: Facts) -> Worked:
    """How it was worked out."""
    share = facts.numbers["baking powder in self-raising"]
    inputs = (saying("powder_share", share=share.value, low=share.low, high=share.high),)
    return Worked(saying("self_raising"), inputs, (share.source,))
