"""How much a mixture rises and what it loses in the oven: as usual for its kind, as the house wrote, or as its bakes
showed."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log
from typing import NamedTuple

from tinbook.engine import baking
from tinbook.facts import Facts, Kind
from tinbook.models import Finish


class LearnedFrom(NamedTuple):
    """How many bakes a mixture's rise and loss were learned from."""

    rises: int = 0
    losses: int = 0


class Risen(NamedTuple):
    """Baked depth over batter depth, the share of the weight lost in the oven, and how many bakes both come from."""

    rise: float
    loss: float
    learned: LearnedFrom


def rise_said(kind: str, house: Finish, own: Finish | None) -> float | None:
    """Baked depth over batter depth as this cake or this house has found it, or None."""
    for finish in (own, house):
        if finish and finish.rise and kind in finish.rise:
            return finish.rise[kind]
    return None


def risen(kind: Kind, written: float | None, rises: Sequence[float], losses: Sequence[float], facts: Facts) -> Risen:
    """Rise and loss of a mixture of this kind.

    `written` is the rise the house wrote down, None for the usual one; the `rises` and `losses` of its bakes, as ratios
    and shares, move both. For a kind without a range for them nothing is learned.
    """
    rise = written or (kind.rise.typical if kind.rise else 1.0)
    loss = kind.loss.typical if kind.loss else 0.0
    if not kind.rise or not kind.loss:
        return Risen(rise, loss, LearnedFrom())
    if rises:
        wide = baking.spread(log(kind.rise.low), log(kind.rise.high))
        scatter = facts.numbers["rise scatter"].value
        rise = exp(baking.settled(log(rise), wide, [log(ratio) for ratio in rises], scatter))
    if losses:
        wide = baking.spread(kind.loss.low, kind.loss.high)
        loss = max(0.0, baking.settled(loss, wide, losses, facts.numbers["loss scatter"].value))
    return Risen(rise, loss, LearnedFrom(len(rises), len(losses)))
